import { createMemo, type JSX, Show } from "solid-js";
import type { HourRateInputs, Machine } from "../../../core/shop/machine.ts";
import type { PurchaseCase } from "../../../core/shop/purchase-case.ts";
import { EntryFields } from "../../components/entry/entry-fields.tsx";
import { type ValueColumn, valueColumns } from "../../components/entry/value-columns.ts";
import { Check } from "../../components/field.tsx";
import { Select } from "../../components/select.tsx";
import { useStores } from "../../store/stores.ts";
import {
  heatFields,
  identityFields,
  paceFields,
  roomFields,
  timeFields,
} from "../machines/machine-fields.ts";
import { NozzleList } from "../machines/nozzle-list.tsx";
import { machineIds, newMachineLike } from "./new-candidate.ts";
import { UnattendedCaution } from "./unattended-caution.tsx";

interface NewMachineProps {
  readonly machine: Machine;
  readonly purchaseCase: PurchaseCase;
  readonly rowKey: string;
  readonly onPut: (next: Machine, what: string) => void;
}

/** A machine that is not there yet: the figures of one that is, then the few that matter, then all others. */
export function NewMachine(props: NewMachineProps): JSX.Element {
  const { shop } = useStores();
  const fields = createMachineFields();
  const alike = createMemo(() => [
    { value: "", label: "Choose a machine" },
    ...shop.shop().machines.map(({ id, name }) => ({ value: id, label: `${id} · ${name}` })),
  ]);
  const takeFrom = (machineId: string): void => {
    const like = shop.shop().machines.find(({ id }) => id === machineId);
    if (!like) return;
    const { id, name } = props.machine;
    const taken = machineIds(shop.shop(), props.purchaseCase.candidates);
    props.onPut({ ...newMachineLike(like, taken), id, name }, "figures of a machine");
  };
  return (
    <>
      <Select label="Take all figures from" choices={alike()} value="" onChange={takeFrom} />
      <Of {...props} columns={fields.first} />
      <Show when={typeof props.machine.hourRate === "number" ? null : props.machine.hourRate}>
        {(inputs) => (
          <EntryFields
            row={inputs()}
            rowKey={`${props.rowKey}/rate`}
            columns={fields.rate}
            onPut={(next, column) =>
              props.onPut({ ...props.machine, hourRate: next }, column.title.toLowerCase())
            }
          />
        )}
      </Show>
      <Check
        label="Reckon that it may run with nobody there"
        checked={props.machine.unattended}
        onChange={(unattended) => props.onPut({ ...props.machine, unattended }, "running with nobody there")}
      />
      <Show when={props.machine.unattended}>
        <UnattendedCaution />
      </Show>
      <details class="more">
        <summary>Nozzles</summary>
        <NozzleList machine={props.machine} onPut={props.onPut} />
      </details>
      <details class="more">
        <summary>All other figures</summary>
        <Of {...props} columns={fields.others} />
      </details>
    </>
  );
}

function Of(props: NewMachineProps & { readonly columns: readonly ValueColumn<Machine>[] }): JSX.Element {
  return (
    <EntryFields
      row={props.machine}
      rowKey={props.rowKey}
      columns={props.columns}
      onPut={(next, column) => props.onPut(next, column.title.toLowerCase())}
    />
  );
}

function createMachineFields() {
  const { shop, format } = useStores();
  const make = valueColumns<Machine>(format);
  const calendars = createMemo(() =>
    shop.shop().calendars.map(({ id, name }) => ({ value: id, label: name })),
  );
  const is = identityFields(make, calendars);
  const room = roomFields(make);
  const heat = heatFields(make);
  const time = timeFields(make);
  return {
    first: [
      is.name,
      is.id,
      is.process,
      is.calendar,
      room.x,
      room.y,
      room.z,
      heat.nozzle,
      heat.platform,
      heat.chamber,
      is.hardened,
      is.mixed,
    ],
    rate: rateFields(),
    others: [
      room.edge,
      room.gap,
      time.setUp,
      time.unload,
      ...time.others,
      ...paceFields(make, () => format().length),
    ],
  };
}

/** What of the hour rate is paid in cash beside its price. */
function rateFields(): ValueColumn<HourRateInputs>[] {
  const { number } = valueColumns<HourRateInputs>(useStores().format);
  return [
    number({
      id: "powerKW",
      title: "Power in use",
      unit: "kW",
      get: (row) => row.powerKW,
      set: (row, powerKW) => ({ ...row, powerKW }),
    }),
    number({
      id: "floorM2",
      title: "Floor it takes",
      unit: "m²",
      get: (row) => row.floorM2,
      set: (row, floorM2) => ({ ...row, floorM2 }),
    }),
    number({
      id: "maintenancePctPerYear",
      title: "Maintenance",
      unit: "% of price a year",
      get: (row) => row.maintenancePctPerYear,
      set: (row, maintenancePctPerYear) => ({ ...row, maintenancePctPerYear }),
    }),
  ];
}

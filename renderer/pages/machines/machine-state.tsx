import { Index, type JSX, Show } from "solid-js";
import { instantOf, minuteOf } from "../../../core/shop/instants.ts";
import type { Machine } from "../../../core/shop/machine.ts";
import { MIN_PER_DAY } from "../../../core/units/conversions.ts";
import { Button } from "../../components/button.tsx";
import { EntryFields, FieldGroup } from "../../components/entry/entry-fields.tsx";
import { type ValueColumn, valueColumns } from "../../components/entry/value-columns.ts";
import { Select } from "../../components/select.tsx";
import { instantColumn } from "../../components/entry/time-columns.ts";
import { useStores } from "../../store/stores.ts";
import { usualStart } from "../../store/usual-start.ts";
import type { PutMachine } from "./machine-panel.tsx";

interface StateProps {
  readonly machine: Machine;
  readonly onPut: PutMachine;
}

const NOTHING = "";

/** What the machine has loaded now: the first changeover of a plan starts from it. */
export function LoadedNow(props: StateProps): JSX.Element {
  const { shop } = useStores();
  const grades = () => [
    { value: NOTHING, label: "nothing" },
    ...shop
      .shop()
      .feedstocks.filter(({ form }) => form === props.machine.process)
      .map(({ id, name }) => ({ value: id, label: name })),
  ];
  const nozzles = () => props.machine.nozzles.map(({ id }) => ({ value: id, label: id }));
  const put = (loaded: Machine["loaded"]): void =>
    props.onPut({ ...props.machine, loaded }, `what ${props.machine.id} has loaded`);
  const chooseGrade = (feedstockId: string): void => {
    const nozzleId = props.machine.loaded?.nozzleId ?? props.machine.nozzles[0]?.id ?? "";
    put(feedstockId === NOTHING ? null : { feedstockId, nozzleId });
  };
  return (
    <FieldGroup title="Loaded now">
      <div class="fields">
        <Select
          label="Feedstock"
          choices={grades()}
          value={props.machine.loaded?.feedstockId ?? NOTHING}
          onChange={chooseGrade}
        />
        <Show when={props.machine.loaded}>
          {(loaded) => (
            <Select
              label="Nozzle in it"
              choices={nozzles()}
              value={loaded().nozzleId}
              onChange={(nozzleId) => put({ ...loaded(), nozzleId })}
            />
          )}
        </Show>
      </div>
    </FieldGroup>
  );
}

type Outage = Machine["outOfService"][number];

/** Times at which the machine cannot be used. */
export function OutOfService(props: StateProps): JSX.Element {
  const { shop } = useStores();
  const columns = createOutageColumns();
  const put = (outOfService: Outage[], what: string): void =>
    props.onPut({ ...props.machine, outOfService }, `${what} of ${props.machine.id}`);
  const add = (): void => {
    const from = usualStart(shop.shop(), shop.opened.isDemo, Date.now());
    put([...props.machine.outOfService, { from, to: dayLater(from), reason: "" }], "time out of service");
  };
  return (
    <FieldGroup
      title="Out of service"
      tools={
        <Button icon="add" onClick={add}>
          New time
        </Button>
      }
    >
      <Show when={props.machine.outOfService.length === 0}>
        <p class="quiet">No time is set at which it cannot be used.</p>
      </Show>
      <Index each={props.machine.outOfService}>
        {(outage, place) => (
          <div class="entry-card">
            <EntryFields
              row={outage()}
              rowKey={`${props.machine.id}/${place}`}
              columns={columns}
              group={`Time out of service ${place + 1}`}
              onPut={(next) => put(props.machine.outOfService.with(place, next), "time out of service")}
            />
            <div>
              <Button
                look="plain"
                icon="remove"
                onClick={() =>
                  put(props.machine.outOfService.toSpliced(place, 1), "removal of a time out of service")
                }
              >
                Remove this time
              </Button>
            </div>
          </div>
        )}
      </Index>
    </FieldGroup>
  );

  function dayLater(from: string): string {
    const { timeZone } = shop.shop();
    return instantOf(minuteOf(from, timeZone) + MIN_PER_DAY, timeZone);
  }
}

function createOutageColumns(): ValueColumn<Outage>[] {
  const { format } = useStores();
  return [
    instantColumn<Outage>(format, {
      id: "from",
      title: "From",
      get: (row) => row.from,
      set: (row, from) => ({ ...row, from }),
    }),
    instantColumn<Outage>(format, {
      id: "to",
      title: "Until",
      get: (row) => row.to,
      set: (row, to) => ({ ...row, to }),
    }),
    valueColumns<Outage>(format).text({
      id: "reason",
      title: "Reason",
      isOptional: true,
      get: (row) => row.reason,
      set: (row, reason) => ({ ...row, reason }),
    }),
  ];
}

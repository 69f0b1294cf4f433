import { Index, type JSX } from "solid-js";
import type { Machine, Nozzle } from "../../../core/shop/machine.ts";
import { Button } from "../../components/button.tsx";
import { EntryFields, FieldGroup } from "../../components/entry/entry-fields.tsx";
import { type ValueColumn, valueColumns } from "../../components/entry/value-columns.ts";
import { useStores } from "../../store/stores.ts";
import type { PutMachine } from "./machine-panel.tsx";
import { idsOf, newNozzle } from "./machine-rows.ts";

/** The nozzles of a machine: what each lays down. */
export function NozzleList(props: { readonly machine: Machine; readonly onPut: PutMachine }): JSX.Element {
  const columns = createNozzleColumns();
  const put = (nozzles: Nozzle[], what: string, loaded = props.machine.loaded): void =>
    props.onPut({ ...props.machine, nozzles, loaded }, `${what} of ${props.machine.id}`);
  const replace = (place: number, next: Nozzle): void => {
    const before = props.machine.nozzles[place];
    const { loaded } = props.machine;
    const isLoaded = loaded !== null && before !== undefined && loaded.nozzleId === before.id;
    put(
      props.machine.nozzles.with(place, next),
      `nozzle ${next.id}`,
      isLoaded ? { ...loaded, nozzleId: next.id } : loaded,
    );
  };
  const add = (): void => {
    const { nozzles } = props.machine;
    put([...nozzles, newNozzle(nozzles.at(-1), idsOf(nozzles))], "new nozzle");
  };
  return (
    <FieldGroup
      title="Nozzles"
      tools={
        <Button icon="add" onClick={add}>
          New nozzle
        </Button>
      }
    >
      <Index each={props.machine.nozzles}>
        {(nozzle, place) => (
          <div class="entry-card">
            <EntryFields
              row={nozzle()}
              rowKey={`${props.machine.id}/${place}`}
              columns={columns}
              group={`Nozzle ${nozzle().id}`}
              onPut={(next) => replace(place, next)}
            />
            <div class="entry-card-head">
              <span class="quiet">
                {props.machine.loaded?.nozzleId === nozzle().id ? "In the machine now" : ""}
              </span>
              <Button
                look="plain"
                icon="remove"
                disabled={props.machine.nozzles.length === 1}
                onClick={() =>
                  put(props.machine.nozzles.toSpliced(place, 1), `removal of nozzle ${nozzle().id}`)
                }
              >
                Remove nozzle {nozzle().id}
              </Button>
            </div>
          </div>
        )}
      </Index>
    </FieldGroup>
  );
}

function createNozzleColumns(): ValueColumn<Nozzle>[] {
  const make = valueColumns<Nozzle>(useStores().format);
  const range = (field: "beadWidthMm" | "layerHeightMm", end: "min" | "max", title: string) =>
    make.length({
      id: `${field}/${end}`,
      title,
      above: 0,
      get: (row) => row[field][end],
      set: (row, value) => ({ ...row, [field]: { ...row[field], [end]: value } }),
    });
  return [
    make.text({
      id: "id",
      title: "Name",
      mostChars: 64,
      get: (row) => row.id,
      set: (row, text) => ({ ...row, id: text }),
    }),
    make.length({
      id: "diameterMm",
      title: "Bore",
      above: 0,
      get: (row) => row.diameterMm,
      set: (row, value) => ({ ...row, diameterMm: value }),
    }),
    make.flow({
      id: "flowCm3PerH",
      title: "Melts at most",
      above: 0,
      get: (row) => row.flowCm3PerH,
      set: (row, value) => ({ ...row, flowCm3PerH: value }),
    }),
    range("beadWidthMm", "min", "Narrowest bead"),
    range("beadWidthMm", "max", "Widest bead"),
    range("layerHeightMm", "min", "Thinnest layer"),
    range("layerHeightMm", "max", "Thickest layer"),
  ];
}

import { type Accessor, Index, type JSX } from "solid-js";
import { ownLabel } from "../../../core/shop/direction.ts";
import type { Part } from "../../../core/shop/part.ts";
import { Button } from "../../components/button.tsx";
import { EntryFields, FieldGroup } from "../../components/entry/entry-fields.tsx";
import { type ValueColumn, valueColumns } from "../../components/entry/value-columns.ts";
import type { Unfit } from "../../components/grid/grid-column.ts";
import type { Format } from "../../format/format.ts";
import { remeasure } from "../../store/body-files.ts";
import { nextId } from "../../store/next-id.ts";
import { useStores } from "../../store/stores.ts";

/** A direction of the part's own that may point up. */
type BuildDirection = NonNullable<Part["buildDirections"]>[number];

/** Larger numbers say nothing more about a direction. */
const MOST = 1_000_000;

/** Directions beside the part's axes in which its mesh is measured too; each change measures it again. */
export function DirectionList(props: { readonly part: Part }): JSX.Element {
  const stores = useStores();
  const directions = (): readonly BuildDirection[] => props.part.buildDirections ?? [];
  const columns = createDirectionColumns(stores.format, () => directions().map(({ label }) => label));
  const put = (next: readonly BuildDirection[], what: string): void =>
    void remeasure(props.part, { buildDirections: [...next] }, `${what} of ${props.part.id}`, stores);
  const add = (): void => {
    const taken = new Set(directions().map(({ label }) => label));
    const label = taken.has("tilted") ? nextId("tilted", taken) : "tilted";
    put([...directions(), { label, x: 0, y: 1, z: 1 }], "new direction up");
  };
  return (
    <FieldGroup
      title="Its own directions up"
      tools={
        <Button icon="add" onClick={add}>
          New direction
        </Button>
      }
    >
      <p class="quiet">
        Beside its six axis directions, in the part's own axes, of any length. Sides up under Needs may name
        them.
      </p>
      <Index each={directions()}>
        {(direction, place) => (
          <div class="entry-card">
            <EntryFields
              row={direction()}
              rowKey={`${props.part.id}/${place}`}
              columns={columns}
              group={`Direction ${direction().label}`}
              onPut={(next) => put(directions().with(place, next), `direction ${next.label}`)}
            />
            <div class="entry-card-head">
              <span />
              <Button
                look="plain"
                icon="remove"
                onClick={() =>
                  put(directions().toSpliced(place, 1), `removal of direction ${direction().label}`)
                }
              >
                Remove direction {direction().label}
              </Button>
            </div>
          </div>
        )}
      </Index>
    </FieldGroup>
  );
}

/** Name and the three numbers of a direction; `labels` are those that the part has. */
export function createDirectionColumns(
  format: Accessor<Format>,
  labels: () => readonly string[],
): ValueColumn<BuildDirection>[] {
  const make = valueColumns<BuildDirection>(format);
  const along = (axis: "x" | "y" | "z"): ValueColumn<BuildDirection> => {
    const column = make.number({
      id: axis,
      title: `Along ${axis}`,
      least: -MOST,
      most: MOST,
      get: (row) => row[axis],
      set: (row, value) => ({ ...row, [axis]: value }),
    });
    return { ...column, put: (row, text) => notNowhere(column.put(row, text)) };
  };
  const label = make.text({
    id: "label",
    title: "Called",
    get: (row) => row.label,
    set: (row, text) => ({ ...row, label: text }),
  });
  return [
    {
      ...label,
      put: (row, text) => (labelFault(text.trim(), row, labels()) ?? label.put(row, text)) as BuildDirection,
    },
    along("x"),
    along("y"),
    along("z"),
  ];
}

/** What is wrong with a name in a sentence; null: nothing. */
function labelFault(text: string, { label }: BuildDirection, taken: readonly string[]): Unfit | null {
  const judged = ownLabel.safeParse(text);
  if (!judged.success) return { unfit: `Called: it ${judged.error.issues[0]?.message}.` };
  if (text !== label && taken.includes(text))
    return { unfit: `Called: another direction is called ${text} already; write another name.` };
  return null;
}

function notNowhere(next: BuildDirection | Unfit): BuildDirection | Unfit {
  if ("unfit" in next || next.x !== 0 || next.y !== 0 || next.z !== 0) return next;
  return { unfit: "With 0 along x, y and z it points nowhere: write another number in one of them." };
}

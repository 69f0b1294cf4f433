import { FLAME_CLASSES, type FlameClass } from "../../../core/shop/feedstock.ts";
import type { CellChoice } from "../grid/grid-column.ts";
import type { ValueColumn, ValueColumns } from "./value-columns.ts";

/** Nothing in a works is colder. */
export const COLDEST_C = -60;

const MOST_ID_CHARS = 64;
const NO_CLASS = "";
const FLAMES: readonly CellChoice[] = [
  { value: NO_CLASS, label: "none" },
  ...FLAME_CLASSES.map((name) => ({ value: name, label: name })),
];

interface NameOptions {
  /** one of what the rows are: "Machine" */
  readonly title: string;
  readonly idPx: number;
  readonly namePx: number;
}

/** The id by which others refer to an entry, and its name. */
export function nameColumns<Row extends { readonly id: string; readonly name: string }>(
  make: ValueColumns<Row>,
  { title, idPx, namePx }: NameOptions,
): Readonly<Record<"id" | "name", ValueColumn<Row>>> {
  return {
    id: make.text({
      id: "id",
      title,
      widthPx: idPx,
      isSticky: true,
      mostChars: MOST_ID_CHARS,
      get: (row) => row.id,
      set: (row, text) => ({ ...row, id: text }),
    }),
    name: make.text({
      id: "name",
      title: "Name",
      widthPx: namePx,
      get: (row) => row.name,
      set: (row, text) => ({ ...row, name: text }),
    }),
  };
}

/** What carries a flame class among other properties; none: the key is absent. */
interface Flammable {
  readonly flameClass?: FlameClass | undefined;
}

interface FlameOptions<Row, Held extends Flammable> {
  readonly id: string;
  readonly get: (row: Row) => Held;
  readonly set: (row: Row, held: Held) => Row;
}

/** The flame class by UL 94, or none. */
export function flameColumn<Row, Held extends Flammable>(
  make: ValueColumns<Row>,
  { id, get, set }: FlameOptions<Row, Held>,
): ValueColumn<Row> {
  return make.choice({
    id,
    title: "Flame class (UL 94)",
    choices: () => FLAMES,
    get: (row) => get(row).flameClass ?? NO_CLASS,
    set: (row, value) => {
      const { flameClass: _, ...others } = get(row);
      const flameClass = FLAME_CLASSES.find((one) => one === value);
      return set(row, (flameClass ? { ...others, flameClass } : others) as Held);
    },
  });
}

import { type Accessor, createComputed, createMemo, createSignal, on } from "solid-js";
import type { GridColumn } from "./grid-column.ts";
import { type CellPlace, type CellRange, contains, rangeBetween } from "./ranges.ts";
import { keptOrder, orderOf, type Sifts, type Sorting } from "./view-order.ts";

/** The cell that is being edited: the text it starts with. */
export interface Editing extends CellPlace {
  readonly text: string;
  /** the caret goes behind the text; false: all of it is selected */
  readonly isTyped: boolean;
}

export interface GridStateOptions<Row> {
  readonly columns: readonly GridColumn<Row>[];
  readonly rows: Accessor<readonly Row[]>;
  readonly keyOf: (row: Row) => string;
}

/** Row of the head, above the first row. */
export const HEAD_ROW = -1;

/** What a grid shows and what is chosen in it. Rows are counted as shown; `placeAt` gives the place in the list. */
export interface GridState<Row> extends GridStateOptions<Row> {
  readonly order: Accessor<readonly number[]>;
  readonly count: Accessor<number>;
  readonly placeAt: (row: number) => number | undefined;
  readonly rowAt: (row: number) => Row | undefined;
  readonly sorting: Accessor<Sorting | null>;
  readonly sifts: Accessor<Sifts>;
  readonly sort: (sorting: Sorting | null) => void;
  readonly sift: (columnId: string, text: string) => void;
  readonly active: Accessor<CellPlace>;
  /** where a selection started that ends at the active cell */
  readonly anchor: Accessor<CellPlace>;
  readonly ranges: Accessor<readonly CellRange[]>;
  readonly isSelected: (row: number, col: number) => boolean;
  /** makes a cell the active one; extend: the selection reaches from the anchor to it; add: what is selected stays */
  readonly goTo: (place: CellPlace, how?: "extend" | "add") => void;
  readonly select: (range: CellRange) => void;
  readonly editing: Accessor<Editing | null>;
  readonly setEditing: (editing: Editing | null) => void;
}

export function createGridState<Row>(options: GridStateOptions<Row>): GridState<Row> {
  const { columns, rows, keyOf } = options;
  const [sorting, setSorting] = createSignal<Sorting | null>(null);
  const [sifts, setSifts] = createSignal<Sifts>({});
  const [active, setActive] = createSignal<CellPlace>({ row: 0, col: 0 }, { equals: isSamePlace });
  const [anchor, setAnchor] = createSignal<CellPlace>({ row: 0, col: 0 }, { equals: isSamePlace });
  const [added, setAdded] = createSignal<readonly CellRange[]>([]);
  const [editing, setEditing] = createSignal<Editing | null>(null);
  const order = createOrder(rows, sorting, sifts, columns, keyOf);
  const count = createMemo(() => order().length);
  const clamped = (place: CellPlace): CellPlace => ({
    row: Math.max(HEAD_ROW, Math.min(place.row, count() - 1)),
    col: Math.max(0, Math.min(place.col, columns.length - 1)),
  });
  // Rows may have gone: the active cell and the anchor stay within what is there.
  createComputed(
    on(count, () => {
      setActive(clamped);
      setAnchor(clamped);
      setAdded([]);
    }),
  );
  const main = createMemo(() => rangeBetween(anchor(), active()));
  const ranges = createMemo(() => [...added(), main()].filter((range) => range.bottom >= 0));
  return {
    ...options,
    order,
    count,
    placeAt: (row) => order()[row],
    rowAt: (row) => rows()[order()[row] ?? -1],
    sorting,
    sifts,
    sort: (next) => void setSorting(next),
    sift: (columnId, text) => void setSifts((before) => ({ ...before, [columnId]: text })),
    active,
    anchor,
    ranges,
    isSelected: (row, col) => ranges().some((range) => contains(range, row, col)),
    goTo: (place, how) => {
      if (how === "add") setAdded((before) => [...before, main()]);
      else if (how !== "extend") setAdded([]);
      setActive(clamped(place));
      if (how !== "extend") setAnchor(active());
    },
    select: ({ top, left, bottom, right }) => {
      setAdded([]);
      setAnchor(clamped({ row: top, col: left }));
      setActive(clamped({ row: bottom, col: right }));
    },
    editing,
    setEditing: (next) => void setEditing(next),
  };
}

/** Sorted and sifted anew only when somebody asks; edits leave rows where they are. */
function createOrder<Row>(
  rows: Accessor<readonly Row[]>,
  sorting: Accessor<Sorting | null>,
  sifts: Accessor<Sifts>,
  columns: readonly GridColumn<Row>[],
  keyOf: (row: Row) => string,
): Accessor<readonly number[]> {
  interface Made {
    readonly rows: readonly Row[];
    readonly sorting: Sorting | null;
    readonly sifts: Sifts;
    readonly order: readonly number[];
  }
  const made = createMemo((before: Made | undefined): Made => {
    const now = { rows: rows(), sorting: sorting(), sifts: sifts() };
    const isPlain = now.sorting === null && Object.values(now.sifts).every((sift) => sift.trim() === "");
    const isKept = before?.sorting === now.sorting && before.sifts === now.sifts && !isPlain;
    const order = isKept
      ? keptOrder(before.order, before.rows, now.rows, keyOf)
      : isPlain && before?.order.length === now.rows.length && before.sorting === null
        ? before.order
        : orderOf(now.rows, columns, now.sorting, now.sifts);
    return { ...now, order };
  });
  return createMemo(() => made().order);
}

function isSamePlace(a: CellPlace, b: CellPlace): boolean {
  return a.row === b.row && a.col === b.col;
}

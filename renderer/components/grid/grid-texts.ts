import { editTextOf, withTexts } from "./cell-edits.ts";
import type { GridColumn, GridEdit } from "./grid-column.ts";
import type { GridState } from "./grid-state.ts";
import { type CellRange, rowsOf } from "./ranges.ts";

interface Listed {
  readonly id: string;
}

/** Texts for cells, by row as shown and by column. Rows beyond the last are new ones. */
export type Texts = Map<number, Map<string, string>>;

/** One text for one cell. */
export function oneText(row: number, columnId: string, text: string): Texts {
  return new Map([[row, new Map([[columnId, text]])]]);
}

/** The same text for every cell of some ranges. */
export function sameText<Row>(state: GridState<Row>, text: string): Texts {
  const texts: Texts = new Map();
  for (const range of state.ranges()) {
    for (const row of rowsOf([range])) {
      for (let col = range.left; col <= range.right; col += 1)
        add(texts, row, state.columns[col]?.id ?? "", text);
    }
  }
  return texts;
}

/** Texts that fill a range from the rows of another, again and again. Rows of the source stay out. */
export function filledTexts<Row extends Listed>(
  state: GridState<Row>,
  range: CellRange,
  source: CellRange,
): Texts {
  const texts: Texts = new Map();
  const height = source.bottom - source.top + 1;
  for (const row of rowsOf([range])) {
    if (row >= source.top && row <= source.bottom) continue;
    const from = state.rowAt(source.top + ((((row - source.top) % height) + height) % height));
    for (const column of state.columns.slice(range.left, range.right + 1)) {
      if (from) add(texts, row, column.id, editTextOf(from, column));
    }
  }
  return texts;
}

/** Texts of the chosen cells; several ranges stand below each other. */
export function selectedTexts<Row extends Listed>(state: GridState<Row>): string[][] {
  return state.ranges().flatMap((range) => {
    const shown = state.columns.slice(range.left, range.right + 1);
    return rowsOf([range]).map((row) => {
      const entry = state.rowAt(row);
      return shown.map((column) => (entry ? editTextOf(entry, column) : ""));
    });
  });
}

/** Where pasted texts go: from the top left of the selection on; one text alone fills the whole selection. */
export function pastedTexts<Row>(
  state: GridState<Row>,
  pasted: readonly (readonly string[])[],
  canAdd: boolean,
): Texts {
  const rows = withoutTitles(pasted, state.columns);
  const single = rows.length === 1 && rows[0]?.length === 1 ? rows[0][0] : undefined;
  if (single !== undefined && state.count() > 0) return sameText(state, single);
  const texts: Texts = new Map();
  const range = state.ranges().at(-1) ?? { top: 0, left: 0, bottom: 0, right: 0 };
  for (const [down, cells] of rows.entries()) {
    const row = range.top + down;
    if (row >= state.count() && !canAdd) break;
    for (const [across, text] of cells.entries()) {
      const column = state.columns[range.left + across];
      if (column) add(texts, row, column.id, text.trim());
    }
  }
  return texts;
}

/** What putting texts into cells does to the list; null: nothing. */
export function editOfTexts<Row extends Listed>(
  state: GridState<Row>,
  label: string,
  texts: Texts,
  newRow: ((like: Row | undefined, taken: ReadonlySet<string>) => Row) | undefined,
): GridEdit<Row> | null {
  const columns = new Map(state.columns.map((column) => [column.id, column]));
  const taken = takenIds(state);
  const replaced: { place: number; row: Row }[] = [];
  const inserted: { place: number; row: Row }[] = [];
  const end = state.rows().length;
  let like = state.rowAt(state.count() - 1);
  for (const [shown, cells] of texts) {
    const pairs = [...cells].map(([columnId, text]) => ({ columnId, text }));
    const place = state.placeAt(shown);
    const row = place === undefined ? newRow?.(like, taken) : state.rows()[place];
    if (!row) continue;
    const next = withTexts(row, pairs, columns);
    if (place === undefined) {
      like = next ?? row;
      taken.add(like.id);
      inserted.push({ place: end, row: like });
    } else if (next) replaced.push({ place, row: next });
  }
  return replaced.length + inserted.length > 0 ? { label, replaced, inserted, removed: [] } : null;
}

/** Ids that the rows have. */
export function takenIds<Row extends Listed>(state: GridState<Row>): Set<string> {
  return new Set(state.rows().map(({ id }) => id));
}

function add(texts: Texts, row: number, columnId: string, text: string): void {
  const cells = texts.get(row) ?? new Map<string, string>();
  cells.set(columnId, text);
  texts.set(row, cells);
}

/** A first row that holds nothing but titles of columns is the head of the copied table, not data. */
function withoutTitles<Row>(
  rows: readonly (readonly string[])[],
  columns: readonly GridColumn<Row>[],
): readonly (readonly string[])[] {
  const titles = new Set(columns.map(({ title }) => title.toLowerCase()));
  const isHead =
    (rows[0]?.length ?? 0) > 1 && rows[0]?.every((text) => titles.has(text.trim().toLowerCase()));
  return isHead ? rows.slice(1) : rows;
}

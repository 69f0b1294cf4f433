import type { GridEdit } from "./grid-column.ts";
import type { GridState } from "./grid-state.ts";
import {
  editOfTexts,
  filledTexts,
  oneText,
  pastedTexts,
  sameText,
  selectedTexts,
  takenIds,
  type Texts,
} from "./grid-texts.ts";
import { cellCount, type CellRange, rowsOf } from "./ranges.ts";
import { readTabText, writeTabText } from "./tab-text.ts";

export interface GridActionsOptions<Row> {
  /** "order", "orders" */
  readonly words: readonly [one: string, many: string];
  readonly onEdit: (edit: GridEdit<Row>) => void;
  /** a fresh row like another, with an id that is not taken; absent: rows cannot be added */
  readonly newRow?: ((like: Row | undefined, taken: ReadonlySet<string>) => Row) | undefined;
  /** the same row under an id that is not taken */
  readonly copyRow?: ((row: Row, taken: ReadonlySet<string>) => Row) | undefined;
}

/** Everything that changes rows. Each is one edit and one step of undo. */
export interface GridActions {
  /** puts a text into one cell */
  put(row: number, col: number, text: string): void;
  clear(): void;
  /** the first row of the selection into the others; of one row alone: the row above */
  fillDown(): void;
  /** fills the cells of a range from the selection, as the handle does */
  fillTo(range: CellRange): void;
  copyText(): string;
  paste(text: string): void;
  addRow(): void;
  duplicate(): void;
  remove(): void;
}

export function createGridActions<Row extends { readonly id: string }>(
  state: GridState<Row>,
  options: GridActionsOptions<Row>,
): GridActions {
  return new ListActions(state, options);
}

const MOST_LABEL_CHARS = 80;

class ListActions<Row extends { readonly id: string }> implements GridActions {
  private readonly state: GridState<Row>;
  private readonly options: GridActionsOptions<Row>;

  constructor(state: GridState<Row>, options: GridActionsOptions<Row>) {
    this.state = state;
    this.options = options;
  }

  put(row: number, col: number, text: string): void {
    const column = this.state.columns[col];
    const label = `${column?.title.toLowerCase()} of ${this.options.words[0]} ${this.state.rowAt(row)?.id ?? ""}`;
    this.putTexts(label.slice(0, MOST_LABEL_CHARS), oneText(row, column?.id ?? "", text));
  }

  clear(): void {
    this.putTexts(`clearing of ${cellCount(this.state.ranges())} cells`, sameText(this.state, ""));
  }

  fillDown(): void {
    const range = this.state.ranges().at(-1);
    if (!range) return;
    const top = range.top === range.bottom ? range.top - 1 : range.top;
    if (top < 0) return;
    this.putTexts("filling down", filledTexts(this.state, range, { ...range, top, bottom: top }));
  }

  fillTo(range: CellRange): void {
    const source = this.state.ranges().at(-1);
    if (source) this.putTexts("filling", filledTexts(this.state, range, source));
  }

  copyText(): string {
    return writeTabText(selectedTexts(this.state));
  }

  paste(text: string): void {
    const texts = pastedTexts(this.state, readTabText(text), this.options.newRow !== undefined);
    this.putTexts(`paste of ${this.countWords(texts.size)}`, texts);
  }

  addRow(): void {
    const shown = this.state.active().row;
    const row = this.options.newRow?.(this.state.rowAt(shown), takenIds(this.state));
    const place = (this.state.placeAt(shown) ?? this.state.rows().length - 1) + 1;
    if (row) this.insert(`new ${this.options.words[0]}`, [{ place, row }]);
  }

  duplicate(): void {
    const taken = takenIds(this.state);
    const rows = rowsOf(this.state.ranges()).flatMap((shown) => {
      const [place, row] = [this.state.placeAt(shown), this.state.rowAt(shown)];
      const copy = row && this.options.copyRow?.(row, taken);
      if (place === undefined || !copy) return [];
      taken.add(copy.id);
      return [{ place: place + 1, row: copy }];
    });
    const inOrder = rows.toSorted((a, b) => a.place - b.place);
    this.insert(`duplicate of ${this.countWords(rows.length)}`, inOrder);
  }

  remove(): void {
    const removed = rowsOf(this.state.ranges())
      .flatMap((shown) => this.state.placeAt(shown) ?? [])
      .toSorted((a, b) => a - b);
    const label = `removal of ${this.countWords(removed.length)}`;
    if (removed.length > 0) this.options.onEdit({ label, replaced: [], inserted: [], removed });
  }

  private putTexts(label: string, texts: Texts): void {
    const edit = editOfTexts(this.state, label, texts, this.options.newRow);
    if (edit) this.options.onEdit(edit);
  }

  private insert(label: string, inserted: GridEdit<Row>["inserted"]): void {
    if (inserted.length > 0) this.options.onEdit({ label, replaced: [], inserted, removed: [] });
  }

  private countWords(count: number): string {
    const [one, many] = this.options.words;
    return `${count} ${count === 1 ? one : many}`;
  }
}

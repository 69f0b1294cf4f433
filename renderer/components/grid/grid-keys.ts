import type { GridActions } from "./grid-actions.ts";
import { editTextOf } from "./cell-edits.ts";
import { type GridState, HEAD_ROW } from "./grid-state.ts";
import type { CellPlace } from "./ranges.ts";

export interface GridKeysOptions<Row> {
  readonly state: GridState<Row>;
  readonly actions: GridActions;
  /** rows of one page */
  readonly pageRows: () => number;
  /** sorts by the column whose head is active: up, down, not at all */
  readonly cycleSort: (columnId: string) => void;
  readonly openSift: (columnId: string) => void;
}

/** Starts editing the active cell, with its text or with what was typed. Cells that cannot be edited stay as they are. */
export function startEditing<Row extends object>(state: GridState<Row>, typed: string | null): void {
  const { row, col } = state.active();
  const [entry, column] = [state.rowAt(row), state.columns[col]];
  if (!entry || !column?.put) return;
  state.goTo({ row, col });
  state.setEditing({ row, col, text: typed ?? editTextOf(entry, column), isTyped: typed !== null });
}

/** The keys of a grid by the W3C pattern (ARIA Authoring Practices, "Grid", 2023), and those of a spreadsheet. True: taken. */
export function onGridKey<Row extends object>(event: KeyboardEvent, options: GridKeysOptions<Row>): boolean {
  const { state } = options;
  if (state.editing() || event.isComposing) return false;
  const target = targetOf(event, state, options.pageRows());
  if (target) {
    state.goTo(target, event.shiftKey ? "extend" : undefined);
    return true;
  }
  if (state.active().row === HEAD_ROW) return onHeadKey(event, options);
  if (event.ctrlKey || event.metaKey) return onControlKey(event, options);
  return onPlainKey(event, options);
}

/** The cell that a moving key goes to; null for other keys. */
function targetOf<Row>(event: KeyboardEvent, state: GridState<Row>, pageRows: number): CellPlace | null {
  const { row, col } = state.active();
  const isFar = event.ctrlKey || event.metaKey;
  const [lastRow, lastCol] = [state.count() - 1, state.columns.length - 1];
  // With Shift the selection stays within the rows.
  const first = event.shiftKey ? 0 : HEAD_ROW;
  switch (event.key) {
    case "ArrowUp":
      return { row: isFar ? 0 : Math.max(first, row - 1), col };
    case "ArrowDown":
      return event.altKey ? null : { row: isFar ? lastRow : row + 1, col };
    case "ArrowLeft":
      return { row, col: isFar ? 0 : col - 1 };
    case "ArrowRight":
      return { row, col: isFar ? lastCol : col + 1 };
    case "Home":
      return { row: isFar ? 0 : row, col: 0 };
    case "End":
      return { row: isFar ? lastRow : row, col: lastCol };
    case "PageUp":
      return { row: Math.max(0, row - pageRows), col };
    case "PageDown":
      return { row: Math.max(0, row) + pageRows, col };
    default:
      return null;
  }
}

function onHeadKey<Row>(event: KeyboardEvent, { state, cycleSort, openSift }: GridKeysOptions<Row>): boolean {
  const column = state.columns[state.active().col];
  if (!column) return false;
  if (event.key === "Enter" || event.key === " ") cycleSort(column.id);
  else if (event.key === "F2" || (event.altKey && event.key === "ArrowDown")) openSift(column.id);
  else return false;
  return true;
}

function onControlKey<Row>(event: KeyboardEvent, { state, actions }: GridKeysOptions<Row>): boolean {
  const { row, col } = state.active();
  const [bottom, right] = [state.count() - 1, state.columns.length - 1];
  const key = event.key.toLowerCase();
  if (key === "a") state.select({ top: 0, left: 0, bottom, right });
  else if (key === "d" && event.shiftKey) actions.duplicate();
  else if (key === "d") actions.fillDown();
  else if (key === " ") state.select({ top: 0, left: col, bottom, right: col });
  else if (key === "delete") actions.remove();
  else if (key === "backspace") state.goTo({ row, col });
  else return false;
  return true;
}

function onPlainKey<Row extends object>(
  event: KeyboardEvent,
  { state, actions }: GridKeysOptions<Row>,
): boolean {
  const { row } = state.active();
  if (event.key === " " && event.shiftKey) {
    state.select({ top: row, left: 0, bottom: row, right: state.columns.length - 1 });
  } else if (event.key === "Insert") actions.addRow();
  else if (event.key === "Delete" || event.key === "Backspace") actions.clear();
  else if (event.key === "F2" || event.key === "Enter") startEditing(state, null);
  else if (event.altKey && event.key === "ArrowDown") startEditing(state, null);
  else if (event.key === "Escape") state.goTo(state.active());
  else if (event.key.length === 1 && !event.altKey) startEditing(state, event.key);
  else return false;
  return true;
}

import { createMemo, For, type JSX, Show } from "solid-js";
import { shortText } from "../../../core/report/plain-text.ts";
import type { Finding } from "../../../core/shop/finding.ts";
import type { GridColumn } from "./grid-column.ts";
import type { GridState } from "./grid-state.ts";
import { rejectionAt } from "./rejections.ts";

interface GridRowProps<Row> {
  readonly index: number;
  readonly state: GridState<Row>;
  readonly gridId: string;
  readonly rowPx: number;
  readonly columnPx: (col: number) => number;
  readonly findingAt: ((row: Row, columnId: string) => Finding | undefined) | undefined;
}

/** No column shows more. */
const MOST_CHARS = 120;

/** One row of a grid: its number and its cells. */
export function GridRow<Row extends { readonly id: string }>(props: GridRowProps<Row>): JSX.Element {
  const row = createMemo(() => props.state.rowAt(props.index));
  return (
    <div
      class="grid-row"
      role="row"
      aria-rowindex={props.index + 2}
      style={{ top: `${props.index * props.rowPx}px` }}
    >
      <div
        class="grid-number"
        role="rowheader"
        aria-colindex={1}
        data-row={props.index}
        data-selected={
          props.state.isSelected(props.index, 0) &&
          props.state.isSelected(props.index, props.state.columns.length - 1)
            ? ""
            : undefined
        }
      >
        {(props.state.placeAt(props.index) ?? 0) + 1}
      </div>
      <Show when={row()}>
        {(shown) => (
          <For each={props.state.columns}>
            {(column, col) => <GridCell {...props} row={shown()} column={column} col={col()} />}
          </For>
        )}
      </Show>
    </div>
  );
}

interface GridCellProps<Row> extends GridRowProps<Row> {
  readonly row: Row;
  readonly column: GridColumn<Row>;
  readonly col: number;
}

function GridCell<Row extends { readonly id: string }>(props: GridCellProps<Row>): JSX.Element {
  const rejection = () => rejectionAt(props.row, props.column.id);
  const finding = (): Finding | undefined => props.findingAt?.(props.row, props.column.id);
  const isActive = (): boolean =>
    props.state.active().row === props.index && props.state.active().col === props.col;
  const text = (): string => shownText(rejection()?.text ?? props.column.text(props.row));
  return (
    <div
      id={`${props.gridId}-${props.index}-${props.col}`}
      class="grid-cell"
      classList={{ "grid-sticky": props.column.isSticky ?? false }}
      role="gridcell"
      dir="auto"
      aria-colindex={props.col + 2}
      aria-selected={props.state.isSelected(props.index, props.col)}
      aria-readonly={props.column.put ? undefined : true}
      aria-invalid={rejection() || finding()?.severity === "error" ? true : undefined}
      data-long={mayBeLong(text(), props.columnPx(props.col), props.rowPx) ? "" : undefined}
      data-severity={finding()?.severity}
      data-active={isActive() ? "" : undefined}
      data-align={props.column.align}
      data-fixed={props.column.put ? undefined : ""}
      data-row={props.index}
      data-col={props.col}
      style={{ width: `var(--c${props.col})` }}
    >
      <Show when={props.column.draw && !rejection()} fallback={text()}>
        {props.column.draw?.(props.row)}
      </Show>
    </div>
  );
}

/** Short plain texts, nearly all of them, need no look at every character. */
function shownText(text: string): string {
  return /^[\x20-\x7e]{0,119}$/.test(text) ? text : shortText(text, MOST_CHARS);
}

/** Width of a letter and of the space at both ends, in heights of a row. Few texts of plain letters are wider. */
const LETTER_ROWS = 0.33;
const ENDS_ROWS = 0.55;

/** True where a text could be wider than its column, so that it must be clipped. */
function mayBeLong(text: string, columnPx: number, rowPx: number): boolean {
  const isPlain = /^[\x20-\x7e]*$/.test(text) && !/[A-Z@%]{3}/.test(text);
  return !isPlain || text.length * LETTER_ROWS + ENDS_ROWS > columnPx / rowPx;
}

import { For, type JSX } from "solid-js";
import { Icon } from "../icon.tsx";
import type { GridColumn } from "./grid-column.ts";
import type { GridLayout } from "./grid-layout.ts";
import { type GridState, HEAD_ROW } from "./grid-state.ts";

interface GridHeadProps<Row> {
  readonly state: GridState<Row>;
  readonly layout: GridLayout;
  readonly gridId: string;
  readonly onSort: (columnId: string) => void;
  readonly onSift: (columnId: string) => void;
  readonly onWidth: ((columnId: string, widthPx: number) => void) | undefined;
}

/** The heads of the columns: a press sorts, the funnel sifts, the edge sets the width. */
export function GridHead<Row>(props: GridHeadProps<Row>): JSX.Element {
  return (
    <div class="grid-head" role="row" aria-rowindex={1}>
      <div class="grid-number" role="columnheader" aria-colindex={1} data-all="" title="Choose all">
        <span class="unseen">Line</span>
        <span aria-hidden="true">#</span>
      </div>
      <For each={props.state.columns}>
        {(column, col) => <GridTitle {...props} column={column} col={col()} />}
      </For>
    </div>
  );
}

interface GridTitleProps<Row> extends GridHeadProps<Row> {
  readonly column: GridColumn<Row>;
  readonly col: number;
}

function GridTitle<Row>(props: GridTitleProps<Row>): JSX.Element {
  const sorted = () => {
    const sorting = props.state.sorting();
    if (sorting?.columnId !== props.column.id) return "none";
    return sorting.isDown ? "descending" : "ascending";
  };
  const sift = (): string => props.state.sifts()[props.column.id]?.trim() ?? "";
  const isActive = (): boolean =>
    props.state.active().row === HEAD_ROW && props.state.active().col === props.col;
  return (
    <div
      id={`${props.gridId}-${HEAD_ROW}-${props.col}`}
      class="grid-title"
      classList={{ "grid-sticky": props.column.isSticky ?? false }}
      role="columnheader"
      aria-colindex={props.col + 2}
      aria-sort={sorted()}
      data-align={props.column.align}
      data-active={isActive() ? "" : undefined}
      data-sifted={sift() === "" ? undefined : ""}
      style={{ width: `var(--c${props.col})` }}
      onClick={() => props.onSort(props.column.id)}
    >
      <span class="grid-title-text">
        {props.column.title}
        {sorted() === "ascending" ? " ▲" : sorted() === "descending" ? " ▼" : ""}
        <small>{sift() === "" ? (props.column.unit?.() ?? "") : `only ${sift()}`}</small>
      </span>
      <button
        type="button"
        class="grid-sift"
        tabindex="-1"
        aria-label={`Sift by ${props.column.title}`}
        title={`Sift by ${props.column.title}`}
        onClick={(event) => {
          event.stopPropagation();
          props.onSift(props.column.id);
        }}
      >
        <Icon name="sift" />
      </button>
      <Stretcher {...props} />
    </div>
  );
}

/** The edge between two heads. Widths are no content: by keyboard every text is read in the line below the grid. */
function Stretcher<Row>(props: GridTitleProps<Row>): JSX.Element {
  let startX = 0;
  let startPx = 0;
  return (
    <span
      class="grid-stretch"
      aria-hidden="true"
      onClick={(event) => event.stopPropagation()}
      onPointerDown={(event) => {
        event.stopPropagation();
        event.currentTarget.setPointerCapture(event.pointerId);
        startX = event.clientX;
        startPx = props.layout.columnPx(props.col);
      }}
      onPointerMove={(event) => {
        if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
        props.layout.setColumnPx(props.column.id, startPx + event.clientX - startX);
      }}
      onPointerUp={() => props.onWidth?.(props.column.id, props.layout.columnPx(props.col))}
    />
  );
}

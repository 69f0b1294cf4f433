import { createEffect, createSignal, createUniqueId, For, type JSX, onMount, Show, untrack } from "solid-js";
import type { Finding } from "../../../core/shop/finding.ts";
import { useStores } from "../../store/stores.ts";
import { CellEditor } from "./cell-editor.tsx";
import { FillHandle } from "./fill-handle.tsx";
import { createGridActions, type GridActions } from "./grid-actions.ts";
import type { GridColumn, GridEdit } from "./grid-column.ts";
import { GridFoot } from "./grid-foot.tsx";
import { GridHead } from "./grid-head.tsx";
import { onGridKey } from "./grid-keys.ts";
import { createGridLayout } from "./grid-layout.ts";
import { createGridPointer } from "./grid-pointer.ts";
import { GridRow } from "./grid-row.tsx";
import { createRowsInSight } from "./rows-in-sight.ts";
import { addGridShortcuts } from "./grid-shortcuts.ts";
import { createGridState, type GridState } from "./grid-state.ts";
import { Sifter } from "./sifter.tsx";

export interface GridProps<Row extends { readonly id: string }> {
  /** what it lists, for assistive technology */
  readonly label: string;
  /** one and many of what a row is: "order", "orders" */
  readonly words: readonly [one: string, many: string];
  readonly columns: readonly GridColumn<Row>[];
  readonly rows: readonly Row[];
  readonly onEdit: (edit: GridEdit<Row>) => void;
  readonly newRow?: (like: Row | undefined, taken: ReadonlySet<string>) => Row;
  readonly copyRow?: (row: Row, taken: ReadonlySet<string>) => Row;
  /** what is wrong with a cell, shown in it and below */
  readonly findingAt?: (row: Row, columnId: string) => Finding | undefined;
  /** told which row is looked at */
  readonly onActive?: (row: Row | null) => void;
  /** gives the page the state and the actions, for its buttons */
  readonly handle?: (handle: GridHandle<Row>) => void;
  /** pasted text that the page would rather read itself; true: it does */
  readonly onPaste?: (text: string) => boolean;
  /** widths that somebody set, by column, and where to keep them */
  readonly widths?: Readonly<Record<string, number>>;
  readonly onWidth?: (columnId: string, widthPx: number) => void;
}

export interface GridHandle<Row> {
  readonly state: GridState<Row>;
  readonly actions: GridActions;
  /** puts the focus into the grid, on a cell where one is given */
  readonly focus: (row?: number, col?: number) => void;
}

/**
 * A list that is edited like a spreadsheet: only the rows in sight and the active one are drawn; keys by the W3C grid pattern.
 * Focus stays on the grid, the active cell is named by aria-activedescendant.
 */
export function Grid<Row extends { readonly id: string }>(props: GridProps<Row>): JSX.Element {
  const parts = createParts(props);
  const { state, layout, actions, setScroller, sifting, setSifting, focus } = parts;
  return (
    <div class="grid-box" style={layout.variables()}>
      <div class="grid-scroll" ref={setScroller}>
        <Table {...props} parts={parts} />
        <FillHandle state={state} layout={layout} actions={actions} />
        <Show when={state.editing()} keyed>
          {(editing) => (
            <CellEditor
              editing={editing}
              state={state}
              layout={layout}
              actions={actions}
              onDone={() => focus()}
            />
          )}
        </Show>
        <Show when={sifting()} keyed>
          {(columnId) => (
            <Sifter
              columnId={columnId}
              state={state}
              layout={layout}
              onDone={() => (setSifting(null), focus())}
            />
          )}
        </Show>
      </div>
      <GridFoot state={state} words={props.words} findingAt={props.findingAt} />
    </div>
  );
}

/** The working parts of one grid. */
function createParts<Row extends { readonly id: string }>(props: GridProps<Row>) {
  const [scroller, setScroller] = createSignal<HTMLDivElement | null>(null);
  const [sifting, setSifting] = createSignal<string | null>(null);
  const [element, setElement] = createSignal<HTMLDivElement | null>(null);
  const keyOf = ({ id }: Row): string => id;
  const state = createGridState<Row>({ columns: props.columns, rows: () => props.rows, keyOf });
  const layout = createGridLayout({ state, scroller, widths: () => props.widths ?? {} });
  const actions = createGridActions(state, {
    words: props.words,
    newRow: props.newRow,
    copyRow: props.copyRow,
    onEdit: (edit) => props.onEdit(edit),
  });
  const active = (): number => state.active().row;
  const indexes = createRowsInSight({ scroller, count: state.count, active, ...layout });
  const focus = (row?: number, col = 0): void => {
    if (row !== undefined) state.goTo({ row, col });
    element()?.focus({ preventScroll: true });
  };
  layout.followActive();
  untrack(() => addGridShortcuts(useStores().shortcuts));
  onMount(() => props.handle?.({ state, actions, focus }));
  createEffect(() => props.onActive?.(state.rowAt(active()) ?? null));
  return {
    gridId: createUniqueId(),
    state,
    layout,
    actions,
    indexes,
    focus,
    element,
    setElement,
    setScroller,
    sifting,
    setSifting,
  };
}

interface TableProps<Row extends { readonly id: string }> extends GridProps<Row> {
  readonly parts: ReturnType<typeof createParts<Row>>;
}

/** Head and rows, which take keys, pointers and the clipboard. */
function Table<Row extends { readonly id: string }>(props: TableProps<Row>): JSX.Element {
  const { state, layout, gridId, indexes, setElement, setSifting, focus } = props.parts;
  const pointer = createGridPointer({ state, focus });
  const hands = createHands(props);
  return (
    <div
      ref={setElement}
      class="grid"
      role="grid"
      tabindex="0"
      aria-label={props.label}
      aria-multiselectable="true"
      aria-rowcount={state.count() + 1}
      aria-colcount={props.columns.length + 1}
      aria-activedescendant={`${gridId}-${state.active().row}-${state.active().col}`}
      style={{ width: `${layout.widthPx()}px` }}
      onKeyDown={hands.key}
      onPaste={hands.paste}
      onCopy={(event) => hands.copy(event, false)}
      onCut={(event) => hands.copy(event, true)}
      onPointerDown={pointer.down}
      onPointerMove={pointer.move}
      onPointerUp={pointer.up}
      onDblClick={pointer.doubleClick}
    >
      <GridHead
        state={state}
        gridId={gridId}
        onSort={(columnId) => cycleSort(state, columnId)}
        onSift={setSifting}
        onWidth={props.onWidth}
        layout={layout}
      />
      <div class="grid-canvas" role="rowgroup" style={{ height: `${state.count() * layout.rowPx()}px` }}>
        <For each={indexes()}>
          {(index) => (
            <GridRow
              index={index}
              state={state}
              gridId={gridId}
              rowPx={layout.rowPx()}
              columnPx={layout.columnPx}
              findingAt={props.findingAt}
            />
          )}
        </For>
      </div>
    </div>
  );
}

/** Keys and clipboard, while the grid itself has the focus. */
function createHands<Row extends { readonly id: string }>(props: TableProps<Row>) {
  const { state, actions, layout, setSifting, element } = props.parts;
  return {
    key: (event: KeyboardEvent): void => {
      if (event.target !== element()) return;
      const sort = (columnId: string): void => cycleSort(state, columnId);
      const taken = onGridKey(event, {
        state,
        actions,
        pageRows: layout.pageRows,
        cycleSort: sort,
        openSift: setSifting,
      });
      if (taken) event.preventDefault();
    },
    paste: (event: ClipboardEvent): void => {
      const text = event.clipboardData?.getData("text/plain") ?? "";
      if (event.target !== element() || text === "") return;
      event.preventDefault();
      if (!props.onPaste?.(text)) actions.paste(text);
    },
    copy: (event: ClipboardEvent, isCut: boolean): void => {
      if (event.target !== element()) return;
      event.preventDefault();
      event.clipboardData?.setData("text/plain", actions.copyText());
      if (isCut) actions.clear();
    },
  };
}

/** Sorts up, then down, then not at all. */
function cycleSort<Row>(state: GridState<Row>, columnId: string): void {
  const now = state.sorting();
  if (now?.columnId !== columnId) state.sort({ columnId, isDown: false });
  else state.sort(now.isDown ? null : { columnId, isDown: true });
}

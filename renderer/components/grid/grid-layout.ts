import {
  type Accessor,
  createEffect,
  createMemo,
  createSignal,
  type JSX,
  on,
  onCleanup,
  onMount,
} from "solid-js";
import type { GridState } from "./grid-state.ts";
import { HEAD_ROW } from "./grid-state.ts";
import type { CellPlace } from "./ranges.ts";
import { spreadWidths, type WantedWidth } from "./spread-widths.ts";

/** Heights in the root's font size; rows are the same height everywhere, so that a row's place follows from its number. */
const ROW_REM = 1.875;
const HEAD_REM = 3;
const NUMBER_REM = 3.4;
const LEAST_COLUMN_PX = 44;
const USUAL_FONT_PX = 16;

export interface CellBox {
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Where everything of a grid is, px. */
export interface GridLayout {
  readonly rowPx: Accessor<number>;
  readonly headPx: Accessor<number>;
  readonly widthPx: Accessor<number>;
  readonly columnPx: (col: number) => number;
  readonly setColumnPx: (columnId: string, widthPx: number) => void;
  readonly variables: Accessor<JSX.CSSProperties>;
  readonly boxOf: (place: CellPlace) => CellBox;
  readonly pageRows: () => number;
  /** scrolls to the active cell whenever it changes; call once */
  readonly followActive: () => void;
}

interface LayoutOptions<Row> {
  readonly state: GridState<Row>;
  readonly scroller: Accessor<HTMLDivElement | null>;
  readonly widths: () => Readonly<Record<string, number>>;
}

export function createGridLayout<Row>({ state, scroller, widths }: LayoutOptions<Row>): GridLayout {
  const fontPx = createFontSize();
  const [own, setOwn] = createSignal<Readonly<Record<string, number>>>({});
  const rowPx = createMemo(() => Math.round(fontPx() * ROW_REM));
  const headPx = createMemo(() => Math.round(fontPx() * HEAD_REM));
  const numberPx = createMemo(() => Math.round(fontPx() * NUMBER_REM));
  const roomPx = createRoom(scroller);
  const wanted = (): WantedWidth[] =>
    state.columns.map(({ id, widthPx }) => {
      const setPx = own()[id] ?? widths()[id];
      const usualPx = Math.round((widthPx * fontPx()) / USUAL_FONT_PX);
      return { widthPx: setPx ?? usualPx, isSet: setPx !== undefined };
    });
  const columnsPx = createMemo(() => spreadWidths(wanted(), roomPx() - numberPx()));
  const leftsPx = createMemo(() => {
    let leftPx = numberPx();
    return columnsPx().map((width) => (leftPx += width) - width);
  });
  const widthPx = createMemo(() => columnsPx().reduce((sum, width) => sum + width, numberPx()));
  const columnPx = (col: number): number => columnsPx()[col] ?? 0;
  const stickyPx = (): number => numberPx() + (state.columns[0]?.isSticky ? columnPx(0) : 0);
  const boxOf = ({ row, col }: CellPlace): CellBox => ({
    leftPx: leftsPx()[col] ?? 0,
    topPx: row === HEAD_ROW ? 0 : headPx() + row * rowPx(),
    widthPx: columnPx(col),
    heightPx: row === HEAD_ROW ? headPx() : rowPx(),
  });
  const pageRows = (): number =>
    Math.max(1, Math.floor(((scroller()?.clientHeight ?? 0) - headPx()) / rowPx()) - 1);

  function show(place: CellPlace): void {
    const box = scroller();
    if (!box || place.row < 0) return;
    const { leftPx, topPx, widthPx: cellPx, heightPx } = boxOf(place);
    if (topPx - headPx() < box.scrollTop) box.scrollTop = topPx - headPx();
    else if (topPx + heightPx > box.scrollTop + box.clientHeight)
      box.scrollTop = topPx + heightPx - box.clientHeight;
    if (place.col === 0 && state.columns[0]?.isSticky) return;
    if (leftPx - stickyPx() < box.scrollLeft) box.scrollLeft = leftPx - stickyPx();
    else if (leftPx + cellPx > box.scrollLeft + box.clientWidth)
      box.scrollLeft = leftPx + cellPx - box.clientWidth;
  }

  return {
    rowPx,
    headPx,
    widthPx,
    columnPx,
    setColumnPx: (columnId, next) =>
      void setOwn((before) => ({ ...before, [columnId]: Math.max(LEAST_COLUMN_PX, Math.round(next)) })),
    variables: createMemo(() => ({
      "--row-px": `${rowPx()}px`,
      "--head-px": `${headPx()}px`,
      "--number-px": `${numberPx()}px`,
      ...Object.fromEntries(columnsPx().map((width, col) => [`--c${col}`, `${width}px`])),
    })),
    boxOf,
    pageRows,
    followActive: () => createEffect(on(state.active, show, { defer: true })),
  };
}

/** Width that the grid has to itself, px: 0 until it is on the screen. */
function createRoom(scroller: Accessor<HTMLDivElement | null>): Accessor<number> {
  const [roomPx, setRoomPx] = createSignal(0);
  createEffect(() => {
    const box = scroller();
    if (!box) return;
    const watch = new ResizeObserver(() => void setRoomPx(box.clientWidth));
    watch.observe(box);
    onCleanup(() => watch.disconnect());
  });
  return roomPx;
}

/** The root's font size, px: it follows the width of the window. */
function createFontSize(): Accessor<number> {
  const [fontPx, setFontPx] = createSignal(readFontSize());
  const onResize = (): void => void setFontPx(readFontSize());
  onMount(() => window.addEventListener("resize", onResize));
  onCleanup(() => window.removeEventListener("resize", onResize));
  return fontPx;
}

function readFontSize(): number {
  return Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || USUAL_FONT_PX;
}

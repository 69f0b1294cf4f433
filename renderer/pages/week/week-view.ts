import { type Accessor, createSignal } from "solid-js";
import type { Stretch } from "../../../core/plan/plan-problem.ts";
import { heldScroll, type RowPlaces, scrollToRow } from "./row-places.ts";
import { fitted, heldTo, panned, shifted, type TimeScale, zoomed } from "./time-scale.ts";
import type { WeekBuild, WeekPicture } from "./week-picture.ts";

const ROW_PX = 50;
const STEP = 1.35;

/** What of the week is in sight, and the ways to change it. */
export interface WeekView {
  readonly scale: Accessor<TimeScale>;
  readonly rows: Accessor<RowPlaces>;
  /** size of the picture's body; it fits the week when it first hears of it */
  readonly setSize: (widthPx: number, heightPx: number) => void;
  readonly widthPx: Accessor<number>;
  readonly heightPx: Accessor<number>;
  /** closer (+1) or farther (-1), round a place or the middle */
  readonly zoom: (steps: number, xPx?: number) => void;
  readonly pan: (byPx: number, downPx: number) => void;
  readonly fit: () => void;
  /** brings a build into sight */
  readonly reveal: (place: Pick<WeekBuild, "row" | "setUpMin" | "endMin">) => void;
}

/** The view of one page; `sizeFactor` is the size of the root's font over the usual 15 px. */
export function createWeekView(picture: Accessor<WeekPicture>, sizeFactor: Accessor<number>): WeekView {
  const [scale, setScale] = createSignal<TimeScale>({ fromMin: 0, pxPerMin: 0.1 });
  const [scrollPx, setScrollPx] = createSignal(0);
  const [size, setSize] = createSignal({ widthPx: 0, heightPx: 0 });
  let isFitted = false;
  const rows = (): RowPlaces => ({
    count: picture().rows.length,
    heightPx: Math.round(ROW_PX * sizeFactor()),
    scrollPx: scrollPx(),
  });
  const bounds = (): Stretch => picture().bounds;
  const take = (next: TimeScale): void => void setScale(heldTo(next, bounds(), size().widthPx));
  const scrollTo = (next: number): void =>
    void setScrollPx(heldScroll({ ...rows(), scrollPx: next }, size().heightPx));
  const fit = (): void => void setScale(fitted(picture().planned, size().widthPx));
  return {
    scale,
    rows,
    widthPx: () => size().widthPx,
    heightPx: () => size().heightPx,
    setSize: (widthPx, heightPx) => {
      setSize({ widthPx, heightPx });
      if (!isFitted && widthPx > 0) {
        isFitted = true;
        fit();
      }
      scrollTo(scrollPx());
    },
    zoom: (steps, xPx = size().widthPx / 2) => take(zoomed(scale(), STEP ** steps, xPx)),
    pan: (byPx, downPx) => {
      if (byPx !== 0) take(panned(scale(), byPx));
      if (downPx !== 0) scrollTo(scrollPx() - downPx);
    },
    fit,
    reveal: ({ row, setUpMin, endMin }) => {
      setScale(shifted(scale(), { startMin: setUpMin, endMin }, size().widthPx));
      scrollTo(scrollToRow(rows(), row, size().heightPx));
    },
  };
}

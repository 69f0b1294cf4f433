import { type Accessor, createEffect, createMemo, createSignal, onCleanup } from "solid-js";

interface RowsInSightOptions {
  readonly scroller: Accessor<HTMLElement | null>;
  readonly count: Accessor<number>;
  readonly rowPx: Accessor<number>;
  readonly headPx: Accessor<number>;
  /** this row is drawn wherever it is, so that assistive technology finds it */
  readonly active: Accessor<number>;
}

/** Rows drawn above and below what is in sight, so that a quick pull shows no gap. */
const MORE_ROWS = 8;
/** Where nothing has a height, as before the first layout. */
const LEAST_HEIGHT_PX = 600;

/** Numbers of the rows to be drawn, rising: those in sight, a few around them, and the active one. All rows are equally high. */
export function createRowsInSight({
  scroller,
  count,
  rowPx,
  headPx,
  active,
}: RowsInSightOptions): Accessor<readonly number[]> {
  const [topPx, setTopPx] = createSignal(0);
  const [heightPx, setHeightPx] = createSignal(LEAST_HEIGHT_PX);
  createEffect(() => {
    const box = scroller();
    if (!box) return;
    const onScroll = (): void => void setTopPx(box.scrollTop);
    const watcher = new ResizeObserver(() => setHeightPx(Math.max(box.clientHeight, rowPx())));
    box.addEventListener("scroll", onScroll, { passive: true });
    watcher.observe(box);
    onCleanup(() => {
      box.removeEventListener("scroll", onScroll);
      watcher.disconnect();
    });
  });
  const first = createMemo(() => Math.max(0, Math.floor(topPx() / rowPx()) - MORE_ROWS));
  const last = createMemo(() =>
    Math.min(count() - 1, Math.ceil((topPx() + heightPx() - headPx()) / rowPx()) + MORE_ROWS),
  );
  return createMemo(() => {
    const rows = Array.from({ length: Math.max(0, last() - first() + 1) }, (_, at) => first() + at);
    const far = active();
    if (far < 0 || far >= count() || (far >= first() && far <= last())) return rows;
    return far < first() ? [far, ...rows] : [...rows, far];
  });
}

import type { WeekView } from "./week-view.ts";

const LINE_PX = 40;
/** So many px of the wheel are one step closer. */
const STEP_PX = 200;

/** The wheel: with Ctrl closer, with Shift along the time, else down the machines, or along the time where all are in sight. */
export function turnWheel(view: WeekView, event: WheelEvent): void {
  event.preventDefault();
  const unitPx = event.deltaMode === 1 ? LINE_PX : 1;
  const [across, down] = [event.deltaX * unitPx, event.deltaY * unitPx];
  if (event.ctrlKey || event.metaKey) {
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
    return view.zoom(-down / STEP_PX, event.clientX - box.left);
  }
  if (event.shiftKey) return view.pan(-(across || down), 0);
  const { count, heightPx } = view.rows();
  const isTall = count * heightPx > view.heightPx();
  view.pan(-(across + (isTall ? 0 : down)), isTall ? -down : 0);
}

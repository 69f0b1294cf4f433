import { type Accessor, createSignal } from "solid-js";
import { type Hit, hitAt } from "./hit-test.ts";
import type { MoveHand } from "./move-hand.ts";
import type { WeekBuild } from "./week-picture.ts";
import type { WeekState } from "./week-state.ts";
import { turnWheel } from "./wheel.ts";
import type { WeekView } from "./week-view.ts";

/** A place in the picture's body, px from its corner. */
interface Place {
  readonly xPx: number;
  readonly yPx: number;
}

/** What a tip is shown for and where, px from the picture's corner, head included. */
export interface TipPlace extends Place {
  readonly build: WeekBuild;
  readonly widthPx: number;
}

interface PointerParts {
  readonly week: WeekState;
  readonly view: WeekView;
  readonly hand: MoveHand;
  readonly onChosen: () => void;
}

/** So far a pointer may go before a press counts as a drag, px. */
const SLACK_PX = 4;
/** A build is dropped on whole multiples of so many minutes. */
const GRID_MIN = 5;

/** A button held down: on what, where last, and what it has become. */
interface Press {
  readonly from: Place;
  readonly hit: Hit;
  readonly kind: "press" | "pan" | "move";
  readonly last: Place;
}

type CanvasEvent = PointerEvent & { currentTarget: HTMLElement };

/** What the pointer does to the picture: choose, push it about, take a build to another place, turn the wheel. */
export function createPointer(parts: PointerParts, headPx: Accessor<number>) {
  const { week, view, hand } = parts;
  const [hovered, setHovered] = createSignal<WeekBuild | null>(null);
  const [tip, setTip] = createSignal<TipPlace | null>(null);
  const [press, setPress] = createSignal<Press | null>(null);
  const hit = (place: Place): Hit => hitAt(week.picture(), view.scale(), view.rows(), place);
  const showTip = (build: WeekBuild | null, { xPx, yPx }: Place): void =>
    void setTip(build && { build, xPx, yPx: yPx + headPx(), widthPx: view.widthPx() });
  const hover = (place: Place): void => {
    setHovered(place.yPx < 0 ? null : hit(place).build);
    showTip(hovered(), place);
  };
  const carry = ({ hit: { build, atMin } }: Press, place: Place): void => {
    const now = hit(place);
    if (build) hand.carry(now.row ?? build.row, onGrid(build.setUpMin + now.atMin - atMin));
    showTip(build, place);
  };
  const end = (): void => void (setPress(null), setTip(null));
  return {
    hovered,
    tip,
    isPanning: () => press()?.kind === "pan",
    onDown: (event: CanvasEvent): void => {
      if (event.button !== 0) return;
      const place = placeOf(event, headPx());
      event.currentTarget.setPointerCapture(event.pointerId);
      const found = hit(place);
      setPress({ from: place, hit: found, kind: "press", last: place });
      if (found.build) week.choose(found.build);
    },
    onMove: (event: CanvasEvent): void => {
      const place = placeOf(event, headPx());
      const before = press();
      if (!before) return hover(place);
      const kind = before.kind === "press" ? begun(before, place, hand) : before.kind;
      if (kind === "pan") view.pan(place.xPx - before.last.xPx, place.yPx - before.last.yPx);
      if (kind === "move") carry(before, place);
      setPress({ ...before, kind, last: place });
    },
    onUp: (): void => {
      const held = press();
      if (held?.kind === "move") hand.drop();
      if (held?.kind === "press" && held.hit.row !== null && !held.hit.build)
        week.chooseMachine(week.picture().rows[held.hit.row]?.machineId ?? "");
      if (held && held.kind !== "pan") parts.onChosen();
      end();
    },
    onCancel: (): void => {
      if (press()?.kind === "move") hand.letGo();
      end();
    },
    onLeave: (): void => {
      if (press()) return;
      setHovered(null);
      setTip(null);
    },
    onWheel: (event: WheelEvent): void => turnWheel(view, event),
  };
}

function onGrid(atMin: number): number {
  return Math.round(atMin / GRID_MIN) * GRID_MIN;
}

function placeOf(event: CanvasEvent, headPx: number): Place {
  const box = event.currentTarget.getBoundingClientRect();
  return { xPx: event.clientX - box.left, yPx: event.clientY - box.top - headPx };
}

/** What a press becomes once it has gone far enough: a build that may be moved is taken, anything else pushes the picture. */
function begun({ from, hit }: Press, to: Place, hand: MoveHand): Press["kind"] {
  if (Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx) <= SLACK_PX) return "press";
  return hit.build && hand.take(hit.build) ? "move" : "pan";
}

import type { WeekActions } from "./week-actions.ts";
import type { MoveHand } from "./move-hand.ts";
import type { WeekState } from "./week-state.ts";
import type { WeekView } from "./week-view.ts";

interface KeyParts {
  readonly week: WeekState;
  readonly view: WeekView;
  readonly hand: MoveHand;
  readonly actions: WeekActions;
}

const STEP_MIN = 15;
const PAN_PX = 120;

/** Keys of the week beyond going about, as the help lists them. */
export const WEEK_KEYS = [
  ["Alt+← →", "Take the chosen build in hand: earlier, later"],
  ["Alt+↑ ↓", "Take the chosen build in hand: machine above, below"],
  ["Enter", "Put the build down and commit it there"],
  ["Escape", "Leave the build where it was"],
  ["C", "Commit the chosen build, or let it go"],
  ["P", "Pin its orders to its machine, or free them"],
  ["+", "Look closer"],
  ["−", "Look from farther off"],
  ["0", "The whole week"],
  ["Shift+← →", "Earlier or later times"],
] as const;

/** What a key does to the week; false: nothing. */
export function pressWeekKey({ week, view, hand, actions }: KeyParts, event: KeyboardEvent): boolean {
  const isHeld = hand.carried() !== null;
  if (isHeld && event.key === "Enter") return done(hand.drop());
  if (isHeld && event.key === "Escape") return done(hand.letGo());
  const arrow = ARROWS[event.key];
  if (arrow && event.altKey) {
    const chosen = week.chosen();
    if (!chosen || (!isHeld && !hand.take(chosen))) return true;
    return done(hand.nudge(arrow.rows, arrow.steps * STEP_MIN));
  }
  if (arrow && event.shiftKey) return done(view.pan(-arrow.steps * PAN_PX, -arrow.rows * PAN_PX));
  if (event.altKey || event.ctrlKey || event.metaKey) return false;
  if (event.key === "+" || event.key === "=") return done(view.zoom(1));
  if (event.key === "-") return done(view.zoom(-1));
  if (event.key === "0") return done(view.fit());
  const chosen = week.chosen();
  if (!chosen) return false;
  if (event.key === "c") return done(actions.commitOrLetGo(chosen));
  if (event.key === "p") return done(actions.pinMachine(chosen));
  return false;
}

const ARROWS: Readonly<Record<string, { readonly rows: number; readonly steps: number }>> = {
  ArrowLeft: { rows: 0, steps: -1 },
  ArrowRight: { rows: 0, steps: 1 },
  ArrowUp: { rows: -1, steps: 0 },
  ArrowDown: { rows: 1, steps: 0 },
};

function done(_result: unknown): true {
  return true;
}

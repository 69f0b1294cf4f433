import type { PlannedBuild } from "../plan/plan-document.ts";
import type { Stretch } from "../plan/plan-problem.ts";
import { durationText } from "../shop/time-words.ts";
import { type Html, html, nothing } from "./html-escape.ts";
import { percent, type SheetContext } from "./sheet-parts.ts";
import type { OrderOutcome } from "./week-facts.ts";

/** Where the marks of one row stand, px from its top. */
const MARK_Y = 5;
export const DIAMOND = "M0-4.5L4.5 0L0 4.5L-4.5 0Z";
export const TRIANGLE = "M-6-4.5H6L0 5.5Z";

/**
 * Marks above a machine's bars: an empty diamond where an order is due, on the row of its last build; a filled triangle where
 * a late one ends, with a broken line from the due date.
 */
export function orderMarks(builds: readonly PlannedBuild[], week: Stretch, context: SheetContext): Html[] {
  return builds.flatMap((build) =>
    build.items.flatMap((item) => {
      const order = context.outcomeOf(item.orderId);
      return order && isLastBuild(build, order, context) ? [markOf(order, build, week, context)] : [];
    }),
  );
}

function isLastBuild(build: PlannedBuild, order: OrderOutcome, { display }: SheetContext): boolean {
  return order.finishedAt !== null && display.minute(build.unloadEnd) === display.minute(order.finishedAt);
}

function markOf(order: OrderOutcome, build: PlannedBuild, week: Stretch, { display }: SheetContext): Html {
  const dueMin = display.minute(order.dueAt);
  const endMin = display.minute(build.unloadEnd);
  const title = `${order.orderId} due ${display.dateTime(dueMin)}${order.lateMin > 0 ? `, late by ${durationText(order.lateMin)}` : ", in time"}`;
  const due = inside(dueMin, week) ? placed(dueMin, week, "due", DIAMOND) : nothing;
  if (order.lateMin === 0) return html`<g><title>${title}</title>${due}</g>`;
  const end = inside(endMin, week) ? placed(endMin, week, "late", TRIANGLE) : nothing;
  return html`<g><title>${title}</title>${lateLine(dueMin, endMin, week)}${due}${end}</g>`;
}

function lateLine(dueMin: number, endMin: number, week: Stretch): Html {
  const from = position(Math.max(dueMin, week.startMin), week);
  const to = position(Math.min(endMin, week.endMin), week);
  if (to <= from) return nothing;
  return html`<line class="late-line" x1="${percent(from)}" x2="${percent(to)}" y1="${MARK_Y}" y2="${MARK_Y}"/>`;
}

function placed(atMin: number, week: Stretch, look: string, shape: string): Html {
  return html`<svg class="${look}" x="${percent(position(atMin, week))}" y="${MARK_Y}" overflow="visible"><path d="${shape}"/></svg>`;
}

/** Where a minute lies in the week, in per cent of its length. */
export function position(atMin: number, week: Stretch): number {
  return (100 * (atMin - week.startMin)) / (week.endMin - week.startMin);
}

function inside(atMin: number, week: Stretch): boolean {
  return atMin >= week.startMin && atMin <= week.endMin;
}

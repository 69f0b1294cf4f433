import type { ViewRow } from "../../cost/cost-views.ts";
import { roundMoney } from "../../units/money.ts";
import type { Unplannable } from "../compile/compile-problem.ts";
import type { LineOutcome } from "./line-outcomes.ts";
import type { PlanDocument, PlannedBuild } from "../plan-document.ts";
import type { PlanSource } from "./plan-source.ts";
import { whyLate } from "./why-late.ts";

export type OrderOutcome = PlanDocument["orders"][number];

export interface OrderOutcomesInput {
  readonly source: PlanSource;
  readonly lines: readonly LineOutcome[];
  readonly fixed: readonly PlannedBuild[];
  readonly unplanned: readonly Unplannable[];
  readonly prices: PlanDocument["prices"];
  readonly costByOrder: readonly ViewRow[];
}

/**
 * Every order that is not finished: when its last copy is off the machine or delivered (fixed builds count too), how late,
 * what that costs in this plan, and why. Orders that were set aside because their entry cannot be used are not among them.
 */
export function orderOutcomes(input: OrderOutcomesInput): OrderOutcome[] {
  const lines = new Map(input.lines.map((outcome) => [outcome.line.orderId, outcome]));
  const costs = new Map(input.costByOrder.map(({ id, total }) => [id, total]));
  const fixedEnds = fixedEnd(input);
  const open = new Set([
    ...lines.keys(),
    ...fixedEnds.keys(),
    ...input.unplanned.map(({ orderId }) => orderId),
  ]);
  return input.source.shop.orders
    .filter((order) => open.has(order.id))
    .map((order) =>
      outcomeOf(input, order.id, lines.get(order.id), fixedEnds.get(order.id), costs.get(order.id)),
    );
}

function outcomeOf(
  input: OrderOutcomesInput,
  orderId: string,
  outcome: LineOutcome | undefined,
  fixedEndMin: number | undefined,
  cost: number | undefined,
): OrderOutcome {
  const { source } = input;
  const { dueAt } = source.order(orderId);
  const dueMin = source.minute(dueAt);
  const ends = [outcome?.lateness.finishedMin, fixedEndMin].filter((end) => typeof end === "number");
  const finishedMin = ends.length > 0 ? Math.max(...ends) : null;
  return {
    orderId,
    finishedAt: finishedMin === null ? null : source.instant(finishedMin),
    dueAt: source.instant(dueMin),
    lateMin: finishedMin === null ? 0 : Math.max(0, finishedMin - dueMin),
    lateCost: roundMoney(outcome?.lateCost ?? 0, source.shop.currency),
    cost: cost ?? 0,
    why: [
      ...(outcome && outcome.lateness.lateMin > 0 ? whyLate(source, outcome, input.prices) : []),
      ...lateByFixed(source, dueMin, fixedEndMin),
      ...unplannedWords(input.unplanned, orderId),
    ],
  };
}

function fixedEnd({ source, fixed }: OrderOutcomesInput): Map<string, number> {
  const ends = new Map<string, number>();
  for (const build of fixed) {
    const endMin = source.minute(build.unloadEnd);
    for (const { orderId } of build.items) ends.set(orderId, Math.max(ends.get(orderId) ?? endMin, endMin));
  }
  return ends;
}

function lateByFixed(source: PlanSource, dueMin: number, fixedEndMin: number | undefined): string[] {
  if (fixedEndMin === undefined || fixedEndMin <= dueMin) return [];
  return [
    `A committed build ends only on ${source.when(fixedEndMin)}, after the due date; what that costs is not in this plan.`,
  ];
}

function unplannedWords(unplanned: readonly Unplannable[], orderId: string): string[] {
  return unplanned
    .filter((entry) => entry.orderId === orderId)
    .flatMap(({ copies, reasons }) => {
      const shown = reasons.slice(0, SHOWN).map(({ sentence }) => sentence);
      const more =
        reasons.length > SHOWN
          ? [`${reasons.length - SHOWN} more reasons are listed with the copies not planned.`]
          : [];
      return [`${copies} ${copies === 1 ? "copy is" : "copies are"} not planned.`, ...shown, ...more];
    });
}

const SHOWN = 3;

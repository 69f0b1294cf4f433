import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { boughtOutCopies, reasonsAndHelp, withoutPlace } from "../../../core/report/week-facts.ts";
import { minuteOf } from "../../../core/shop/instants.ts";

/** What the plan says of one order. */
export type OutcomeKind = "late" | "no-place" | "bought-out" | "in-time" | "nothing-to-do" | "not-planned";

export interface Outcome {
  readonly kind: OutcomeKind;
  /** how late, or how early; 0 where nothing is known, min */
  readonly marginMin: number;
  /** copies without a place or bought out */
  readonly copies: number;
  readonly reasons: readonly string[];
  readonly help: readonly string[];
  readonly finishedAt: string | null;
  readonly cost: number | null;
}

export const NOT_PLANNED: Outcome = {
  kind: "not-planned",
  marginMin: 0,
  copies: 0,
  reasons: [],
  help: [],
  finishedAt: null,
  cost: null,
};

/** Outcomes by order. What needs a person comes first: an order that is late and partly bought out counts as late. */
export function outcomesOf(plan: PlanDocument | null): ReadonlyMap<string, Outcome> {
  if (!plan) return new Map();
  const noPlace = new Map(withoutPlace(plan).map((entry) => [entry.orderId, entry]));
  const bought = boughtOutCopies(plan);
  return new Map(
    plan.orders.map((order) => {
      const { reasons, help } = reasonsAndHelp(order.why);
      const missing = noPlace.get(order.orderId);
      const boughtOut = bought.get(order.orderId) ?? 0;
      const earlyMin =
        order.finishedAt === null
          ? 0
          : minuteOf(order.dueAt, plan.timeZone) - minuteOf(order.finishedAt, plan.timeZone);
      const kind: OutcomeKind = missing
        ? "no-place"
        : order.lateMin > 0
          ? "late"
          : boughtOut > 0
            ? "bought-out"
            : order.finishedAt === null
              ? "nothing-to-do"
              : "in-time";
      const outcome: Outcome = {
        kind,
        marginMin: order.lateMin > 0 ? -order.lateMin : earlyMin,
        copies: missing?.copies ?? boughtOut,
        reasons: [...new Set([...(missing?.sentences ?? []), ...reasons])],
        help,
        finishedAt: order.finishedAt,
        cost: order.cost,
      };
      return [order.orderId, outcome];
    }),
  );
}

const SIGNS: Readonly<Record<OutcomeKind, string>> = {
  late: "▼",
  "no-place": "✕",
  "bought-out": "⇥",
  "in-time": "●",
  "nothing-to-do": "○",
  "not-planned": "·",
};

/** The outcome in a few words with a sign of its own shape. Example: late by 400 min gives "▼ 6 h 40 min late". */
export function outcomeWords(outcome: Outcome, duration: (min: number) => string): string {
  const sign = SIGNS[outcome.kind];
  switch (outcome.kind) {
    case "late":
      return `${sign} ${duration(-outcome.marginMin)} late`;
    case "no-place":
      return `${sign} no place for ${outcome.copies}`;
    case "bought-out":
      return `${sign} ${outcome.copies} bought out`;
    case "in-time":
      return `${sign} ${duration(outcome.marginMin)} early`;
    case "nothing-to-do":
      return `${sign} nothing to do`;
    default:
      return `${sign} not planned`;
  }
}

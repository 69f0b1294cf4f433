import type { Feedstock } from "../shop/feedstock.ts";
import type { Machine } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import { bestRoute } from "./best-route.ts";
import { routeCautions } from "./cautions.ts";
import { findWays } from "./find-ways.ts";
import type { LaidRoute } from "./lay-down.ts";
import type { Route, RouteAnswer } from "./route.ts";

export interface RouteOptions {
  /**
   * true: every reason is wanted. Feedstocks in the other form are answered too, refused with reason "form", and layer times
   * are judged even where the feedstock does not suit the part or the machine, which costs time
   */
  readonly withOtherForms?: boolean;
  /**
   * chooses among the routes of a part from a mesh, one for each direction up; none: `bestRoute` does. A part known by
   * measures alone, whose directions differ by a guess only, is always left to that
   */
  readonly choose?: RouteChoice;
}

/** Picks the best of several ways with the same machine, nozzle and feedstock. */
type RouteChoice = <Way extends { readonly route: Route }>(ways: readonly Way[]) => Way | undefined;

/**
 * One answer for each nozzle of a machine and each feedstock of its form: the best route of a part over directions up, beads
 * and layer heights, or the reasons why there is none. Nothing is left out silently.
 * Example: a machine with one nozzle and a shop with 7 filaments and 5 kinds of pellets give 7 answers.
 */
export function findRoutes(
  part: Part,
  machine: Machine,
  feedstocks: readonly Feedstock[],
  options: RouteOptions = {},
): RouteAnswer[] {
  const choose = (isMeasured(part) ? options.choose : undefined) ?? bestRoute;
  return routesOf(part, machine, feedstocks, options, (laid) => {
    const best = choose(laid);
    return best ? [best] : [];
  });
}

/**
 * As `findRoutes`, but of a part from a mesh every direction up that works is answered with its best route, not the best of
 * them alone. Example: a part that stands four ways, one nozzle and one feedstock: 4 answers.
 */
export function findEveryRoute(
  part: Part,
  machine: Machine,
  feedstocks: readonly Feedstock[],
  options: Omit<RouteOptions, "choose"> = {},
): RouteAnswer[] {
  return routesOf(part, machine, feedstocks, options, (laid) => laid);
}

function routesOf(
  part: Part,
  machine: Machine,
  feedstocks: readonly Feedstock[],
  { withOtherForms = false }: RouteOptions,
  pick: (laid: readonly LaidRoute[]) => readonly LaidRoute[],
): RouteAnswer[] {
  const ways = findWays(part, machine, feedstocks, { byDirection: isMeasured(part), withOtherForms });
  return ways.flatMap(({ nozzle, feedstock, laid, reasons }): RouteAnswer[] => {
    if (laid.length > 0) {
      return pick(laid).map(({ route, deposit }) => {
        const cautions = routeCautions({ part, machine, feedstock, deposit, route });
        return { status: "route", route: { ...route, cautions } };
      });
    }
    const ids = { machineId: machine.id, nozzleId: nozzle.id, feedstockId: feedstock.id };
    return [{ status: "refused", ...ids, reasons }];
  });
}

function isMeasured({ geometry }: Part): boolean {
  return geometry.measures.standings !== undefined;
}

import { depositionMin } from "./print-time.ts";
import type { Route } from "./route.ts";

/** Routes within this factor of the least time per copy count as equally quick: far under the error of an estimate. */
const AS_QUICK = 1.05;

/**
 * The best of several routes with the same machine, nozzle and feedstock. Quickest is who deposits a copy in the least time
 * in a full build. Among those within 5 % of it, the one whose smallest build is over first (so that a small order is not
 * built standing on end for the sake of a full platform), then the one of least mass. Each comes with whatever `Way` it has.
 */
export function bestRoute<Way extends { readonly route: Route }>(ways: readonly Way[]): Way | undefined {
  const timed = ways.map((way) => ({ way, perCopyMin: perCopyMin(way.route) }));
  const quickMin = AS_QUICK * Math.min(...timed.map((each) => each.perCopyMin));
  return timed
    .filter((each) => each.perCopyMin <= quickMin)
    .map(({ way }) => ({ way, smallestMin: smallestMin(way.route), massKg: way.route.massKgPerCopy }))
    .toSorted((a, b) => a.smallestMin - b.smallestMin || a.massKg - b.massKg)[0]?.way;
}

function perCopyMin(route: Route): number {
  return depositionMin({ route, copies: route.copiesMax }) / route.copiesMax;
}

function smallestMin(route: Route): number {
  return depositionMin({ route, copies: route.copiesMin });
}

import { S_PER_MIN } from "../units/conversions.ts";
import type { Route } from "./route.ts";

/** One route and how many copies of it share a build. */
export interface RouteCopies {
  readonly route: Route;
  readonly copies: number;
}

/**
 * Time of one layer of a group with so many copies on the platform, s: all copies and the change of layer, or the shortest
 * layer time when they are over sooner. Example: work 4 s, change 1 s, shortest 10 s: 10 s for 2 copies, 13 s for 3.
 */
export function layerTimeS(route: Route, workS: number, copies: number): number {
  return Math.max(copies * workS + route.layerChangeS, route.shortestLayerS);
}

/**
 * Deposition time of one build, min, with the machine's time factor and without warm-up and cool-down.
 * Example: 100 layers of work 4 s, change 1 s, no shortest time, factor 1, 3 copies: 100 x 13 s = 21.667 min.
 */
export function depositionMin({ route, copies }: RouteCopies): number {
  let seconds = 0;
  for (const group of route.layerGroups) seconds += group.count * layerTimeS(route, group.workS, copies);
  return (seconds * route.timeFactor) / S_PER_MIN;
}

/** Longest layer of one build, s. It must not exceed `route.longestLayerS`. Example: work 4 s, change 1 s, 3 copies: 13 s. */
export function slowestLayerS({ route, copies }: RouteCopies): number {
  let slowest = 0;
  for (const group of route.layerGroups) slowest = Math.max(slowest, layerTimeS(route, group.workS, copies));
  return slowest;
}

/**
 * Whole minutes from the start of warm-up to the end of cool-down of one build, rounded up. Parts that share a platform add
 * their times (each as if it were alone with its own copies: waiting is not shared, so the figure is on the long side).
 * Example: warm-up and cool-down 10 min, parts of 21.667 and 8.1 min: 40 min.
 */
export function runMin(items: readonly RouteCopies[]): number {
  const first = items[0];
  if (!first) throw new RangeError("a build with no items has no run time");
  let minutes = first.route.fixedMin;
  for (const item of items) minutes += depositionMin(item);
  return Math.ceil(minutes - ROUNDING_SLACK_MIN);
}

/** Floating-point dust that must not cost a whole minute. */
const ROUNDING_SLACK_MIN = 1e-6;

import type { UnplannedReason } from "../plan-document.ts";

/**
 * Reasons of copies without a place, the nearest to being overcome first and no sentence twice: a pin or a promise, then
 * time and capacity, then what machine and feedstock can do, last the wrong family, form or size. Reasons that are equally
 * near keep their order. Example: "too-large", "run-too-long" becomes "run-too-long", "too-large".
 */
export function nearestFirst(reasons: readonly UnplannedReason[]): UnplannedReason[] {
  const sentences = new Set<string>();
  const distinct = reasons.filter(({ sentence }) => {
    const isNew = !sentences.has(sentence);
    sentences.add(sentence);
    return isNew;
  });
  return distinct.toSorted((a, b) => distanceOf(a) - distanceOf(b));
}

/** What a planner decides alone, what takes time or people, and what no plan changes. */
const DISTANCE: Readonly<Record<string, number>> = {
  pinned: 0,
  "set-aside": 0,
  "after-horizon": 0,
  "promise-impossible": 0,
  "promise-crowded-out": 0,
  "no-place": 1,
  "no-machine": 1,
  "run-too-long": 1,
  "too-few-copies": 1,
  "more-than-capacity": 1,
  "never-succeeds": 1,
  family: 3,
  form: 3,
  "too-large": 3,
};
const MACHINE_LIMIT = 2;

function distanceOf({ code }: UnplannedReason): number {
  return DISTANCE[code] ?? MACHINE_LIMIT;
}

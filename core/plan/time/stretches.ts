import type { Stretch } from "../plan-problem.ts";

/**
 * Joins stretches that touch or overlap; the input is sorted by start. Only start and end are kept.
 * Example: 0-10, 10-20 and 30-40 give 0-20 and 30-40.
 */
export function joinTouching(sorted: readonly Stretch[]): Stretch[] {
  return joinOver(sorted, (gap) => gap.endMin <= gap.startMin);
}

/**
 * Joins neighbours in a sorted list where the gap between them (which ends before it starts where they overlap) may be
 * spanned. Example: 0-10, 15-20 and 40-50 with gaps up to 5 min give 0-20 and 40-50.
 */
export function joinOver(sorted: readonly Stretch[], maySpan: (gap: Stretch) => boolean): Stretch[] {
  const joined: Stretch[] = [];
  for (const { startMin, endMin } of sorted) {
    const last = joined.at(-1);
    if (last && maySpan({ startMin: last.endMin, endMin: startMin })) {
      joined[joined.length - 1] = { startMin: last.startMin, endMin: Math.max(last.endMin, endMin) };
    } else {
      joined.push({ startMin, endMin });
    }
  }
  return joined;
}

/**
 * Cuts holes out of stretches. Both lists are sorted; the stretches are disjoint, the holes may overlap. What else a stretch
 * carries is kept. Example: 0-100 without 20-30 and 25-40 gives 0-20 and 40-100.
 */
export function withoutStretches<Kind extends Stretch>(
  stretches: readonly Kind[],
  holes: readonly Stretch[],
): Kind[] {
  const left: Kind[] = [];
  let firstHole = 0;
  for (const stretch of stretches) {
    while ((holes[firstHole]?.endMin ?? Infinity) <= stretch.startMin) firstHole += 1;
    let startMin = stretch.startMin;
    for (let index = firstHole; index < holes.length; index += 1) {
      const hole = holes[index];
      if (!hole || hole.startMin >= stretch.endMin) break;
      if (hole.startMin > startMin) left.push({ ...stretch, startMin, endMin: hole.startMin });
      startMin = Math.max(startMin, hole.endMin);
    }
    if (startMin < stretch.endMin) left.push({ ...stretch, startMin });
  }
  return left;
}

/** What two sorted lists of stretches have in common. Example: 0-60 and 20-30, 50-90 give 20-30, 50-60. */
export function inCommon(a: readonly Stretch[], b: readonly Stretch[]): Stretch[] {
  const result: Stretch[] = [];
  let i = 0;
  let j = 0;
  for (let one = a[i], other = b[j]; one && other; one = a[i], other = b[j]) {
    const startMin = Math.max(one.startMin, other.startMin);
    const endMin = Math.min(one.endMin, other.endMin);
    if (startMin < endMin) result.push({ startMin, endMin });
    if (one.endMin < other.endMin) i++;
    else j++;
  }
  return result;
}

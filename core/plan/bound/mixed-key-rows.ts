import { MIN_PER_H } from "../../units/conversions.ts";
import type { BoundResources } from "./bound-model.ts";
import type { MixedKey } from "./mixed-keys.ts";
import type { SetUpRows } from "./set-up-rows.ts";
import { addChain, type Entry } from "../engines/sparse-columns.ts";

/** Rows of pooled builds: by key, and by option for the copies in them; -1: there is none. */
export interface KeyRows {
  /** by option: its key and its position in it */
  readonly key: Int32Array;
  readonly position: Int32Array;
  /** [key][limit]: first row of "copies' shares <= builds", one for each bucket of the key, cumulative */
  readonly shares: readonly Int32Array[];
  /** [key]: first row of "hours of copies <= hours outside gaps and in them", cumulative */
  readonly hours: Int32Array;
  /** by option: its copies as builds of the most copies <= builds of the key */
  readonly copies: Int32Array;
}

/**
 * Builds of each key by bucket and gap pattern, paid and timed as empty builds; copies are added by columns of the pool. A
 * real build of several lines lies in the bucket in which it completes, its copies in the same or later ones, so all rows
 * are cumulative. Hours that copies print: in gaps entered, or else in staffed time (one column a bucket). Under-counts:
 * which copies fit together, gaps that one build leaves unused while another would need them, rounding to whole minutes.
 */
export function addKeyRows(resources: BoundResources, setUps: SetUpRows, keys: readonly MixedKey[]): KeyRows {
  const none = (): Int32Array => new Int32Array(resources.problem.options.length).fill(-1);
  const made = { key: none(), position: none(), copies: none(), hours: new Int32Array(keys.length).fill(-1) };
  const shares = keys.map((key, index) => {
    key.optionIndices.forEach((option, position) => {
      made.key[option] = index;
      made.position[option] = position;
    });
    const zeros = new Float64Array(key.buckets.length);
    return Int32Array.from(key.shares, () => addChain(resources.rows, resources.columns, zeros));
  });
  keys.forEach((key, index) => {
    if (resources.problem.classes[key.classIndex]!.unattended) made.hours[index] = addHours(resources, key);
    const totalRow = addTotal(resources, key, made.copies);
    addBuilds({ resources, setUps, key, shareRows: shares[index]!, hoursRow: made.hours[index]!, totalRow });
  });
  return { ...made, shares };
}

/** Hours chain of one key, with a column in each bucket with capacity for hours printed in staffed time. */
function addHours({ rows, columns, staffed }: BoundResources, key: MixedKey): number {
  const limited = key.buckets.length - 1;
  const first = addChain(rows, columns, new Float64Array(limited));
  for (let at = 0; at < limited; at++) {
    columns.add(0, Infinity, [
      { row: first + at, value: -1 },
      { row: staffed[key.classIndex]! + key.buckets[at]!, value: 1 },
    ]);
  }
  return first;
}

/** One column for all builds of a key: each option's copies need at least so many. Returns the row that adds builds up. */
function addTotal({ problem, rows, columns }: BoundResources, key: MixedKey, copyRows: Int32Array): number {
  const totalRow = rows.add(0, 0);
  const entries: Entry[] = [{ row: totalRow, value: 1 }];
  for (const index of key.optionIndices) {
    copyRows[index] = rows.add(-Infinity, 0);
    entries.push({ row: copyRows[index]!, value: -problem.options[index]!.copiesMax });
  }
  columns.add(0, Infinity, entries);
  return totalRow;
}

interface KeyBuilds {
  readonly resources: BoundResources;
  readonly setUps: SetUpRows;
  readonly key: MixedKey;
  readonly shareRows: Int32Array;
  readonly hoursRow: number;
  readonly totalRow: number;
}

/** Columns of empty builds: by bucket and pattern. */
function addBuilds(builds: KeyBuilds): void {
  const { resources, key, shareRows, totalRow } = builds;
  const frame = resources.frames[key.classIndex]!;
  key.buckets.forEach((bucket, at) => {
    const common: Entry[] = [{ row: totalRow, value: -1 }];
    for (const first of shareRows) common.push({ row: first + at, value: -1 });
    if (bucket >= frame.points.length) {
      resources.columns.add(key.perBuildCost, Infinity, common);
      return;
    }
    common.push({
      row: resources.operators[frame.calendarIndex]! + bucket,
      value: frame.prepMin / MIN_PER_H,
    });
    frame.patterns.forEach((pattern, index) => {
      if (pattern.entryMin >= key.longestRunMin) return;
      resources.columns.add(key.perBuildCost, Infinity, [...common, ...timeEntries(builds, at, index)]);
    });
  });
}

function timeEntries(builds: KeyBuilds, at: number, patternIndex: number): Entry[] {
  const { resources, setUps, key, hoursRow } = builds;
  const frame = resources.frames[key.classIndex]!;
  const bucket = key.buckets[at]!;
  const pattern = frame.patterns[patternIndex]!;
  const prepH = frame.prepMin / MIN_PER_H;
  const staffedRow = resources.staffed[key.classIndex]! + bucket;
  const stateRow = setUps.stateHours[key.optionIndices[0]!]!;
  const entries: Entry[] = [];
  if (stateRow >= 0) {
    entries.push({ row: stateRow, value: (prepH + key.fixedH) / setUps.machineH[key.optionIndices[0]!]! });
  }
  if (hoursRow < 0) return [...entries, { row: staffedRow, value: prepH + key.fixedH }];
  const betweenH = pattern.betweenMin / MIN_PER_H;
  entries.push({ row: staffedRow, value: prepH + betweenH });
  entries.push({ row: hoursRow + at, value: key.fixedH - betweenH - pattern.gapMin / MIN_PER_H });
  pattern.counts.forEach((count, type) => {
    if (count > 0) entries.push({ row: resources.gaps[key.classIndex]![type]! + bucket, value: count });
  });
  return entries;
}

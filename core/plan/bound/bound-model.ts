import { type ClassFrame, classFrames, operatorHours } from "./class-frame.ts";
import { type ColumnPool, columnPool } from "./column-pool.ts";
import { lateCostPerCopyMin, type LineSlot, lineSlots } from "./line-slots.ts";
import { addKeyRows, type KeyRows } from "./mixed-key-rows.ts";
import { type MixedKey, mixedKeys } from "./mixed-keys.ts";
import type { PlanLine, PlanProblem } from "../plan-problem.ts";
import { addSetUpRows, type SetUpRows } from "./set-up-rows.ts";
import { addChain, ColumnList, type Entry, RowList } from "../engines/sparse-columns.ts";
import { addWholeBuilds, countOf, type WholeBuilds } from "./whole-builds.ts";

/**
 * The relaxation behind the bound, without the columns of the pool. Every plan is a point of it that costs no more, for each
 * condition only drops something:
 * - staffed hours by class, cumulative: what completes by a point has used at most the staffed time before it. Drops which
 *   machine, in which order, and that builds are whole; under-counts waiting, and re-set-ups that due dates force.
 * - gaps by class and type, cumulative: one machine prints one build into one gap.
 * - operator hours by calendar, cumulative: drops when exactly people are needed.
 * - set-ups by class and state: `set-up-rows.ts`; shared platforms: `mixed-key-rows.ts`.
 * - lateness: each copy is charged its own, though a line that is not delivered by the piece is as late as its last copy.
 * - whole builds by line: `whole-builds.ts`; dropped for lines that may share a platform.
 */
export interface BoundModel {
  readonly problem: PlanProblem;
  readonly frames: readonly ClassFrame[];
  /** by option: stretches of time its builds are sorted into */
  readonly slots: readonly (readonly LineSlot[])[];
  readonly keys: readonly MixedKey[];
  readonly pool: ColumnPool;
  readonly rows: RowList;
  /** columns that are always there */
  readonly columns: ColumnList;
  readonly demand: Int32Array;
  /** by line: `whole-builds.ts` */
  readonly wholeBuilds: readonly (readonly WholeBuilds[])[];
  /** first of the rows by class (one for each point), gap type, calendar */
  readonly staffed: Int32Array;
  readonly gaps: readonly Int32Array[];
  readonly operators: Int32Array;
  readonly setUps: SetUpRows;
  readonly keyRows: KeyRows;
  /** columns of copies bought out, and of copies that nothing can make, by line; -1: none */
  readonly boughtOut: Int32Array;
  readonly missing: Int32Array;
  /** price of a copy that nothing can make: far above any real cost */
  readonly missingPrice: number;
}

/** Makes it; null where `isTimeLeft` says no meanwhile. It is asked now and then, since for very many options it takes seconds. */
export function boundModel(problem: PlanProblem, isTimeLeft: () => boolean): BoundModel | null {
  if (!isTimeLeft()) return null;
  const frames = classFrames(problem);
  const slots = slotsByOption(problem, frames);
  const keys = mixedKeys(problem, frames, (option) => slots[option.index]!);
  const rows = new RowList();
  const columns = new ColumnList();
  const wholeBuilds = problem.lines.map((line) => addWholeBuilds(problem, line, rows));
  const pool = columnPool({ problem, frames, slots, keys, wholeBuilds }, isTimeLeft);
  if (!pool) return null;
  const demand = Int32Array.from(problem.lines, (line) => rows.add(line.quantity, Infinity));
  const staffed = Int32Array.from(frames, (frame) => addChain(rows, columns, frame.staffedH));
  const gaps = frames.map((frame) => Int32Array.from(frame.slots, (free) => addChain(rows, columns, free)));
  const operators = Int32Array.from(problem.calendars, (_, index) =>
    operatorRows(problem, frames, index, rows, columns),
  );
  const resources = { problem, frames, rows, columns, staffed, gaps, operators };
  const setUps = addSetUpRows(resources);
  const keyRows = addKeyRows(resources, setUps, keys);
  const missingPrice = MISSING_FACTOR * dearestCopy(problem, frames, pool);
  const notBuilt = problem.lines.map((line) => copyEntries(demand[line.index]!, wholeBuilds[line.index]!));
  const boughtOut = Int32Array.from(problem.lines, (line) => addBuyOut(line, columns, notBuilt[line.index]!));
  const missing = Int32Array.from(problem.lines, (line) =>
    columns.add(missingPrice, line.quantity, notBuilt[line.index]!),
  );
  return {
    problem,
    frames,
    slots,
    keys,
    pool,
    rows,
    columns,
    demand,
    wholeBuilds,
    staffed,
    gaps,
    operators,
    setUps,
    keyRows,
    boughtOut,
    missing,
    missingPrice,
  };
}

/** What rows of the other files are made on. */
export interface BoundResources {
  readonly problem: PlanProblem;
  readonly frames: readonly ClassFrame[];
  readonly rows: RowList;
  readonly columns: ColumnList;
  readonly staffed: Int32Array;
  readonly gaps: readonly Int32Array[];
  readonly operators: Int32Array;
}

const MISSING_FACTOR = 20;

function slotsByOption(problem: PlanProblem, frames: readonly ClassFrame[]): LineSlot[][] {
  const known = new Map<string, LineSlot[]>();
  return problem.options.map(({ lineIndex, classIndex }) => {
    const key = `${lineIndex}/${classIndex}`;
    const slots = known.get(key) ?? lineSlots(problem.lines[lineIndex]!, frames[classIndex]!);
    known.set(key, slots);
    return slots;
  });
}

function operatorRows(
  problem: PlanProblem,
  frames: readonly ClassFrame[],
  calendarIndex: number,
  rows: RowList,
  columns: ColumnList,
): number {
  const points = frames.find((frame) => frame.calendarIndex === calendarIndex)?.points;
  return points ? addChain(rows, columns, operatorHours(problem, calendarIndex, points)) : -1;
}

/** A copy that is not built: one towards the quantity, and what it counts among whole builds. */
function copyEntries(row: number, whole: readonly WholeBuilds[]): Entry[] {
  return [{ row, value: 1 }, ...whole.map((each) => ({ row: each.row, value: countOf(each, 1) }))];
}

function addBuyOut(line: PlanLine, columns: ColumnList, entries: readonly Entry[]): number {
  if (!line.buyOut) return -1;
  const lateMin = Math.max(0, line.buyOut.arriveMin - line.dueMin);
  if (lateMin > 0 && !line.allowLate) return -1;
  const cost = line.buyOut.pricePerPiece + lateCostPerCopyMin(line) * lateMin;
  return columns.add(cost, line.quantity, entries);
}

/** The most that one copy can cost in the pool, lateness up to the last point included. */
function dearestCopy(problem: PlanProblem, frames: readonly ClassFrame[], pool: ColumnPool): number {
  let dearest = 1;
  for (let entry = 0; entry < pool.option.length; entry++) {
    const option = problem.options[pool.option[entry]!]!;
    const line = problem.lines[option.lineIndex]!;
    const points = frames[option.classIndex]!.points;
    const lateMin = Math.max(0, (points[points.length - 1] ?? 0) - line.dueMin);
    const cost = pool.cost[entry]! / pool.copies[entry]! + lateCostPerCopyMin(line) * lateMin;
    dearest = Math.max(dearest, cost);
  }
  return dearest;
}

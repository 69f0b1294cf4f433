import { MIN_PER_H } from "../../units/conversions.ts";
import { leastInto } from "./cheapest-changeover.ts";
import type { BoundResources } from "./bound-model.ts";
import type { PlanOption } from "../plan-problem.ts";
import type { Entry } from "../engines/sparse-columns.ts";

/** Rows of set-ups and tool paths by option; -1: there is none. */
export interface SetUpRows {
  /** share of the option's line made in this class and state <= set-ups into the state */
  readonly link: Int32Array;
  /** hours of the state, as parts of the hours of one machine <= machines that have it */
  readonly stateHours: Int32Array;
  /** hours of one machine, by option */
  readonly machineH: Float64Array;
  /** share of the option's line <= tool paths made */
  readonly engineering: Int32Array;
}

/**
 * Set-ups: for each class and state the number of changes into it is one column, at the cheapest change and, in the last
 * bucket, its shortest time. A line made in a state that no machine starts in needs one (facility-location link; Balinski
 * 1965, from memory); a state needs as many machines as its hours fill. Under-counts: changes back and forth, and any
 * change dearer than the cheapest; builds after the last point need none. Tool paths are paid once a part and process, by
 * the largest share.
 */
export function addSetUpRows(resources: BoundResources): SetUpRows {
  const { problem, frames } = resources;
  const none = (): Int32Array => new Int32Array(problem.options.length).fill(-1);
  const setUps = {
    link: none(),
    stateHours: none(),
    machineH: new Float64Array(problem.options.length),
    engineering: none(),
  };
  for (const [classIndex, byState] of optionsByClassAndState(problem.options)) {
    for (const [stateIndex, options] of byState) {
      addState(resources, setUps, options, classIndex, stateIndex, frames[classIndex]!.longestUseH);
    }
  }
  addEngineering(resources, setUps);
  return setUps;
}

function optionsByClassAndState(options: readonly PlanOption[]): Map<number, Map<number, PlanOption[]>> {
  const groups = new Map<number, Map<number, PlanOption[]>>();
  for (const option of options) {
    const byState = groups.get(option.classIndex) ?? new Map<number, PlanOption[]>();
    groups.set(option.classIndex, byState);
    byState.set(option.stateIndex, [...(byState.get(option.stateIndex) ?? []), option]);
  }
  return groups;
}

function addState(
  resources: BoundResources,
  setUps: SetUpRows,
  options: readonly PlanOption[],
  classIndex: number,
  stateIndex: number,
  machineH: number,
): void {
  const { problem, frames, rows, columns } = resources;
  const starts = problem.classes[classIndex]!.machineIndices.map(
    (index) => problem.machines[index]!.startState,
  );
  const already = starts.filter((state) => state === stateIndex).length;
  const others = starts.length - already;
  if (others === 0 || !(machineH > 0) || frames[classIndex]!.points.length === 0) return;
  const hoursRow = rows.add(-Infinity, already);
  const entries: Entry[] = [
    { row: hoursRow, value: -1 },
    ...changeoverTime(resources, classIndex, stateIndex),
  ];
  const linkOfLine = new Map<number, number>();
  for (const { index, lineIndex } of options) {
    setUps.stateHours[index] = hoursRow;
    setUps.machineH[index] = machineH;
    if (already > 0) continue;
    const link = linkOfLine.get(lineIndex) ?? rows.add(-Infinity, 0);
    if (!linkOfLine.has(lineIndex)) entries.push({ row: link, value: -1 });
    linkOfLine.set(lineIndex, link);
    setUps.link[index] = link;
  }
  const table = problem.classes[classIndex]!.changeoverCost;
  columns.add(cheapestInto(resources, table, classIndex, stateIndex), others, entries);
}

/** Staffed and operator hours of the shortest change, in the last bucket. */
function changeoverTime(resources: BoundResources, classIndex: number, stateIndex: number): Entry[] {
  const { problem, frames, staffed, operators } = resources;
  const frame = frames[classIndex]!;
  const last = frame.points.length - 1;
  const changeH =
    cheapestInto(resources, problem.classes[classIndex]!.changeoverMin, classIndex, stateIndex) / MIN_PER_H;
  return [
    { row: staffed[classIndex]! + last, value: changeH },
    { row: operators[frame.calendarIndex]! + last, value: changeH },
  ];
}

/** Least of a changeover table into a state, from any other state that a machine of the class can be in. */
function cheapestInto(
  { problem }: BoundResources,
  table: Float64Array,
  classIndex: number,
  stateIndex: number,
): number {
  const size = problem.states.length;
  const fromNothing = problem.classes[classIndex]!.machineIndices.some(
    (index) => problem.machines[index]!.startState === size,
  );
  return leastInto(table, size, stateIndex, fromNothing);
}

function addEngineering(resources: BoundResources, setUps: SetUpRows): void {
  const { problem, rows, columns } = resources;
  const rowOf = new Map<string, number>();
  const entries = problem.engineering.map((): Entry[] => []);
  for (const { index, lineIndex, engineeringIndex } of problem.options) {
    if (engineeringIndex < 0) continue;
    const key = `${lineIndex}/${engineeringIndex}`;
    const row = rowOf.get(key) ?? rows.add(-Infinity, 0);
    if (!rowOf.has(key)) entries[engineeringIndex]!.push({ row, value: -1 });
    rowOf.set(key, row);
    setUps.engineering[index] = row;
  }
  problem.engineering.forEach((item, index) => columns.add(item.cost, 1, entries[index]!));
}

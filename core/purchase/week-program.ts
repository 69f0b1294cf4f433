import { addChain, ColumnList, type Entry, RowList } from "../plan/engines/sparse-columns.ts";
import { MIN_PER_H } from "../units/conversions.ts";
import { earliestUnloadEnd } from "../plan/bound/earliest-completion.ts";
import type { FleetModel } from "./fleet-model.ts";
import type { FleetWay } from "./fleet-ways.ts";
import { addPartColumns, type PartColumns } from "./week-part-columns.ts";
import { addClassStates, addToolPaths, type ClassState, type ToolPaths } from "./week-set-ups.ts";

/** A supply by slot of which what is left goes on to later slots: its first row, and the column of what the week leaves. */
export interface Chain {
  readonly row: number;
  readonly leftColumn: number;
  /** what a usual week supplies, by slot */
  readonly supply: Float64Array;
  /** whose share of the week is open: a class or a calendar */
  readonly classIndex: number;
  readonly calendarIndex: number;
}

/** Chains of a fleet's week. */
export interface Chains {
  /** by class */
  readonly staffed: readonly Chain[];
  /** by class and gap type */
  readonly gaps: readonly (readonly Chain[])[];
  /** by calendar */
  readonly operators: readonly Chain[];
}

/**
 * The weekly program of a fleet: the linear program of the plan's bound with lines pooled by part and due slot. Rows and
 * columns are the same in every week; only limits, some costs and the coefficients of set-ups change (`week-numbers.ts`).
 * - by part and slot: made + open at the end = due + open before;
 * - by class staffed hours and unstaffed gaps, by calendar operator hours, each a chain of slots;
 * - by class and set-up state the hours made in it, and each part's share made in it, need machines that have it.
 * Builds may be fractions, so one that takes several weeks is spread over them. Leaves out which machine and which order,
 * whole builds, changes back and forth, and waiting: the figure is a low estimate, though mean builds
 * (`fleet-ways.ts`) can make it a few % high; `sample-plans.ts` says by how much, mostly in changeovers and lateness.
 */
export interface WeekProgram {
  readonly fleet: FleetModel;
  readonly rows: RowList;
  readonly columns: ColumnList;
  /** first of the rows by part, one for each slot */
  readonly demand: Int32Array;
  readonly chains: Chains;
  readonly states: readonly ClassState[];
  readonly toolPaths: readonly ToolPaths[];
  readonly parts: readonly PartColumns[];
  /** columns of builds start here, and each one's way */
  readonly firstBuild: number;
  readonly wayOfBuild: readonly FleetWay[];
  readonly knownWeeksAhead: number;
}

/**
 * Lays the program out. `knownWeeksAhead`: orders are known so many weeks before the one they are due in; with 0 a build
 * completes no sooner than on an empty machine from Monday on, otherwise it may have been started the week before.
 */
export function weekProgram(fleet: FleetModel, knownWeeksAhead: number): WeekProgram {
  const rows = new RowList();
  const columns = new ColumnList();
  const slots = fleet.week.slots.lengthDays.length;
  const demand = Int32Array.from(fleet.parts, () => addRows(rows, slots));
  const chains = addChains(fleet, rows, columns);
  const states = addClassStates(fleet, chains, rows, columns);
  const toolPaths = addToolPaths(fleet, rows, columns);
  const parts = fleet.parts.map((part, index) =>
    addPartColumns({ part, row: demand[index]!, slots: fleet.week.slots, columns, knownWeeksAhead }),
  );
  const program = { fleet, rows, columns, demand, chains, states, toolPaths, parts, knownWeeksAhead };
  return { ...program, firstBuild: columns.cost.length, wayOfBuild: addBuilds(program) };
}

function addRows(rows: RowList, count: number): number {
  const first = rows.lower.length;
  for (let at = 0; at < count; at++) rows.add(0, 0);
  return first;
}

function addChains({ week, problem }: FleetModel, rows: RowList, columns: ColumnList): Chains {
  const chain = (supply: Float64Array, classIndex: number, calendarIndex: number): Chain => {
    const row = addChain(rows, columns, supply);
    return { row, leftColumn: columns.cost.length - 1, supply, classIndex, calendarIndex };
  };
  return {
    staffed: week.classes.map((each) => chain(each.staffedH, each.classIndex, -1)),
    gaps: week.classes.map((each) => each.gaps.map((supply) => chain(supply, each.classIndex, -1))),
    operators: problem.calendars.map((_, index) => chain(week.operatorH[index]!, -1, index)),
  };
}

type Unbuilt = Omit<WeekProgram, "firstBuild" | "wayOfBuild">;

function addBuilds(program: Unbuilt): FleetWay[] {
  const { fleet, columns } = program;
  const wayOfBuild: FleetWay[] = [];
  for (const way of fleet.ways) {
    const needs = setUpEntries(program, way);
    const slots = fleet.week.slots.lengthDays.length;
    for (let slot = firstSlot(program, way); slot < slots; slot++) {
      columns.add(way.amounts.total, Infinity, [...timeEntries(program, way, slot), ...needs]);
      wayOfBuild.push(way);
    }
  }
  return wayOfBuild;
}

function timeEntries({ fleet, demand, chains }: Unbuilt, way: FleetWay, slot: number): Entry[] {
  const { classIndex } = way.option;
  const { calendarIndex, prepH, patterns } = fleet.week.classes[classIndex]!;
  const entries: Entry[] = [
    { row: demand[way.partIndex]! + slot, value: way.copies },
    { row: chains.staffed[classIndex]!.row + slot, value: way.attendedH },
    { row: chains.operators[calendarIndex]!.row + slot, value: prepH },
  ];
  patterns[way.pattern]!.counts.forEach((count, type) => {
    if (count > 0) entries.push({ row: chains.gaps[classIndex]![type]!.row + slot, value: count });
  });
  return entries;
}

function setUpEntries(
  { states, toolPaths }: Unbuilt,
  { option, partIndex, copies, occupiedH }: FleetWay,
): Entry[] {
  const entries: Entry[] = [];
  for (const state of states) {
    if (state.classIndex !== option.classIndex || state.stateIndex !== option.stateIndex) continue;
    entries.push({ row: state.hoursRow, value: occupiedH });
    for (const link of state.links)
      if (link.partIndex === partIndex) entries.push({ row: link.row, value: copies });
  }
  for (const paths of toolPaths) {
    if (paths.engineeringIndex === option.engineeringIndex) entries.push({ row: paths.row, value: copies });
  }
  return entries;
}

/** First slot in which a build of orders that come in on Monday can be done; the last one where it takes longer than the week. */
function firstSlot({ fleet, knownWeeksAhead }: Unbuilt, { option, occupiedH }: FleetWay): number {
  if (knownWeeksAhead > 0) return 0;
  const { setUpMin, unloadMin } = fleet.problem.classes[option.classIndex]!;
  const runMin = occupiedH * MIN_PER_H - setUpMin - unloadMin;
  const { startMin } = fleet.problem;
  const ends = option.machineIndices.map((index) =>
    earliestUnloadEnd(fleet.problem.machines[index]!, { fromMin: startMin, setUpMin, runMin, unloadMin }),
  );
  const { endMin } = fleet.week.slots;
  const slot = endMin.findIndex((end) => Math.min(...ends) <= startMin + end);
  return slot < 0 ? endMin.length - 1 : slot;
}

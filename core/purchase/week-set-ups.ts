import { leastInto } from "../plan/bound/cheapest-changeover.ts";
import type { ColumnList, Entry, RowList } from "../plan/engines/sparse-columns.ts";
import { MIN_PER_H } from "../units/conversions.ts";
import type { FleetModel } from "./fleet-model.ts";
import type { Chains } from "./week-program.ts";

/** Row that holds a part's copies made in one state to the share of machines that have it. */
export interface StateLink {
  readonly partIndex: number;
  readonly row: number;
}

/** A machine class in one set-up state: changes into it are one column. */
export interface ClassState {
  readonly classIndex: number;
  readonly stateIndex: number;
  readonly column: number;
  readonly hoursRow: number;
  /** hours in which one machine can be used in a week */
  readonly machineH: number;
  /** cheapest change into it, from any other state that the class can be in */
  readonly cost: number;
  readonly changeH: number;
  readonly links: readonly StateLink[];
}

/** Tool paths of one part and process, paid once by the share of copies that first needs them. */
export interface ToolPaths {
  readonly engineeringIndex: number;
  readonly partIndex: number;
  readonly column: number;
  readonly row: number;
  readonly cost: number;
}

/**
 * Set-ups as in the plan's bound (`set-up-rows.ts`): hours in a state <= machines that have it x hours of one, and a part's
 * copies in it <= its copies wanted x machines that have it. The time of a change counts in the last slot.
 */
export function addClassStates(
  fleet: FleetModel,
  chains: Chains,
  rows: RowList,
  columns: ColumnList,
): ClassState[] {
  const partsOf = new Map<string, Set<number>>();
  for (const { option, partIndex } of fleet.ways) {
    const key = `${option.classIndex}/${option.stateIndex}`;
    partsOf.set(key, (partsOf.get(key) ?? new Set()).add(partIndex));
  }
  return [...partsOf].map(([key, parts]) => {
    const [classIndex = 0, stateIndex = 0] = key.split("/").map(Number);
    return addClassState({ fleet, chains, rows, columns }, classIndex, stateIndex, [...parts]);
  });
}

interface Lists {
  readonly fleet: FleetModel;
  readonly chains: Chains;
  readonly rows: RowList;
  readonly columns: ColumnList;
}

function addClassState(
  lists: Lists,
  classIndex: number,
  stateIndex: number,
  parts: readonly number[],
): ClassState {
  const { fleet, chains, rows, columns } = lists;
  const { changeoverCost, changeoverMin } = fleet.problem.classes[classIndex]!;
  const size = fleet.problem.states.length;
  const { calendarIndex, longestUseH: machineH } = fleet.week.classes[classIndex]!;
  const cost = leastInto(changeoverCost, size, stateIndex, false);
  const changeH = leastInto(changeoverMin, size, stateIndex, false) / MIN_PER_H;
  const hoursRow = rows.add(-Infinity, 0);
  const links = parts.map((partIndex) => ({ partIndex, row: rows.add(-Infinity, 0) }));
  const last = fleet.week.slots.lengthDays.length - 1;
  const entries: Entry[] = [
    { row: hoursRow, value: -machineH },
    { row: chains.staffed[classIndex]!.row + last, value: changeH },
    { row: chains.operators[calendarIndex]!.row + last, value: changeH },
    // The copies wanted take this coefficient's place week by week, as the open hours do for the row of hours.
    ...links.map(({ row }) => ({ row, value: -1 })),
  ];
  const column = columns.add(cost, Infinity, entries);
  return { classIndex, stateIndex, column, hoursRow, machineH, cost, changeH, links };
}

/** Tool paths that are not ready: a part's copies by a process <= its copies wanted x share of the paths that is paid for. */
export function addToolPaths(fleet: FleetModel, rows: RowList, columns: ColumnList): ToolPaths[] {
  return fleet.problem.engineering.flatMap(({ partId, cost }, engineeringIndex) => {
    const partIndex = fleet.parts.findIndex((part) => part.partId === partId);
    if (partIndex < 0) return [];
    const row = rows.add(-Infinity, 0);
    const column = columns.add(cost, 1, [{ row, value: -1 }]);
    return [{ engineeringIndex, partIndex, column, row, cost }];
  });
}

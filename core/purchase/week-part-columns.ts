import type { ColumnList } from "../plan/engines/sparse-columns.ts";
import type { FleetPart } from "./fleet-model.ts";
import type { WeekSlots } from "./week-slots.ts";

/** Columns of one part beside its builds. */
export interface PartColumns {
  /** copies open at the end of a slot: those due in it, and older ones; by slot */
  readonly young: readonly number[];
  readonly old: readonly number[];
  /** made before they are due, by slot but the last */
  readonly early: readonly number[];
  /** copies that must not be late and are not made in time, by slot */
  readonly lost: readonly number[];
  /** copies given up at the end of the week because nobody waits any longer */
  readonly givenUp: number;
  /** copies bought out; -1: no supplier, or none in time */
  readonly bought: number;
  /** days from Monday to the arrival of bought copies */
  readonly arrivalDay: number;
}

interface PartInput {
  readonly part: FleetPart;
  /** first of the part's rows */
  readonly row: number;
  readonly slots: WeekSlots;
  readonly columns: ColumnList;
  readonly knownWeeksAhead: number;
}

const DAYS = 7;

/** Adds the columns; their costs and limits are the week's. Bought copies that arrive after the week leave it at its end. */
export function addPartColumns({ part, row, slots, columns, knownWeeksAhead }: PartInput): PartColumns {
  const all = slots.lengthDays.map((_, slot) => slot);
  const last = all.length - 1;
  const open = (slot: number): number =>
    columns.add(0, Infinity, [
      { row: row + slot, value: 1 },
      ...(slot < last ? [{ row: row + slot + 1, value: -1 }] : []),
    ]);
  const early = (slot: number): number =>
    columns.add(0, Infinity, [
      { row: row + slot, value: -1 },
      { row: row + slot + 1, value: 1 },
    ]);
  const supply = (slot: number): number => columns.add(0, Infinity, [{ row: row + slot, value: 1 }]);
  const arrivalDay = Math.max(0, Math.ceil(part.buyOut?.leadTimeDays ?? 0) - DAYS * knownWeeksAhead);
  // What arrives as a day starts is there when the day before ends.
  const arrivalSlot = arrivalDay <= DAYS ? slots.ofDay[Math.max(0, arrivalDay - 1)]! : last;
  return {
    young: all.map(open),
    old: all.map(open),
    early: all.slice(0, -1).map(early),
    lost: all.map(supply),
    givenUp: supply(last),
    bought: part.buyOut ? supply(arrivalSlot) : -1,
    arrivalDay,
  };
}

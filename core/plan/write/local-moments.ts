import { instantOf, localDayNumber, minuteOfLocal } from "../../shop/instants.ts";
import { MIN_PER_DAY, MIN_PER_H } from "../../units/conversions.ts";

/**
 * The same time of day so many local days earlier, whatever clocks did in between; a fraction of a day is taken off in
 * hours. Example: 3 days before Monday 2026-11-30 06:00 is Friday 2026-11-27 06:00.
 */
export function localDaysBefore(epochMin: number, days: number, timeZone: string): number {
  const wholeDays = Math.floor(days);
  const clock = instantOf(epochMin, timeZone).slice(WALL_LENGTH - CLOCK_LENGTH, WALL_LENGTH);
  const minuteOfDay = Number(clock.slice(0, 2)) * MIN_PER_H + Number(clock.slice(3));
  const day = localDayNumber(epochMin, timeZone) - wholeDays;
  return minuteOfLocal(day, minuteOfDay, timeZone) - Math.round((days - wholeDays) * MIN_PER_DAY);
}

const WALL_LENGTH = "2026-11-30T06:40".length;
const CLOCK_LENGTH = "06:40".length;

import type { Stretch } from "../../../core/plan/plan-problem.ts";
import { minuteOf } from "../../../core/shop/instants.ts";
import { dayAndMonth, localDays, weekdayName, weekdayOf } from "../../../core/shop/local-time.ts";
import { MIN_PER_DAY, MIN_PER_H } from "../../../core/units/conversions.ts";

/** The start of a local day with its name; `hours` is 23 or 25 where clocks change. */
export interface DayTick {
  readonly atMin: number;
  readonly endMin: number;
  readonly label: string;
  readonly hours: number;
  readonly isMonday: boolean;
}

export interface HourTick {
  readonly atMin: number;
  /** "06" */
  readonly label: string;
}

const HOUR_STEPS = [1, 2, 3, 6, 12] as const;
const ROOM_PX = 38;

/**
 * The days of a stretch in the works' own zone. Example: the days round 2026-10-25 in Berlin are 24, 25 and 24 h long.
 */
export function dayTicks({ startMin, endMin }: Stretch, timeZone: string): DayTick[] {
  const days = Math.ceil((endMin - startMin) / MIN_PER_DAY) + 2;
  return localDays(Math.floor(startMin), days, timeZone)
    .filter((day) => day.startMin < endMin)
    .map((day) => ({
      atMin: day.startMin,
      endMin: day.endMin,
      label: dayLabel(day.date),
      hours: (day.endMin - day.startMin) / MIN_PER_H,
      isMonday: weekdayOf(day.date) === 1,
    }));
}

/** Hours at which ticks have room at this scale; none: only days. Example: at 1 px a minute every hour has 60 px. */
export function hourStep(pxPerMin: number): number | null {
  return HOUR_STEPS.find((step) => step * MIN_PER_H * pxPerMin >= ROOM_PX) ?? null;
}

/** Hours on the clock of the works, midnights left out. A time that the clocks skip has no tick of its own. */
export function hourTicks(stretch: Stretch, timeZone: string, stepH: number): HourTick[] {
  const ticks: HourTick[] = [];
  const days = Math.ceil((stretch.endMin - stretch.startMin) / MIN_PER_DAY) + 2;
  for (const { date, startMin } of localDays(Math.floor(stretch.startMin), days, timeZone)) {
    let lastMin = startMin;
    for (let hour = stepH; hour < 24; hour += stepH) {
      const label = String(hour).padStart(2, "0");
      const atMin = minuteOf(`${date}T${label}:00`, timeZone);
      if (atMin > lastMin && atMin >= stretch.startMin && atMin <= stretch.endMin)
        ticks.push({ atMin, label });
      lastMin = Math.max(lastMin, atMin);
    }
  }
  return ticks;
}

function dayLabel(date: string): string {
  const [dayOfMonth = "", month = ""] = dayAndMonth(date).split(" ");
  return `${weekdayName(date).slice(0, 3)} ${dayOfMonth} ${month.slice(0, 3)}`;
}

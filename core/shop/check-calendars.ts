import type { Calendar } from "./calendar.ts";
import { about, type EntryFindings, type Finding, listed } from "./finding.ts";
import { isDay } from "./instants.ts";
import type { ShopIndex } from "./shop-index.ts";
import { lastsAllDay, longestStaffedMin, overlappingShifts } from "./week-of-shifts.ts";

/** Findings about calendars: staffed time, overlapping shifts, closed days. Example: no shifts gives "no staffed time at all". */
export function checkCalendars(index: ShopIndex): Finding[] {
  return index.shop.calendars.flatMap((calendar) => {
    const say = about("calendars", calendar.id);
    return [
      ...staffingFindings(say, calendar, index),
      ...shiftFindings(say, calendar),
      ...closureFindings(say, calendar),
    ];
  });
}

function staffingFindings(say: EntryFindings, calendar: Calendar, { shop }: ShopIndex): Finding[] {
  const users = shop.machines.filter((machine) => machine.calendarId === calendar.id);
  if (users.length === 0 || longestStaffedMin(calendar) > 0) return [];
  const machines = listed(users.map((machine) => machine.id));
  return [
    say.error(
      "shifts",
      "no-staffed-time",
      `no staffed time at all, so nobody can set up or unload ${machines}; add a shift with at least one operator`,
    ),
  ];
}

function shiftFindings(say: EntryFindings, calendar: Calendar): Finding[] {
  const nameOf = (place: number): string => {
    const shift = calendar.shifts[place];
    return `shift ${place + 1} (${shift?.start} to ${shift?.end})`;
  };
  const overlaps = overlappingShifts(calendar).map(([first, second]) =>
    say.warning(
      "shifts",
      "shifts-overlap",
      first === second
        ? `${nameOf(first)} names a day twice; it counts once`
        : `${nameOf(first)} and ${nameOf(second)} overlap; where they do, the larger number of operators counts, not the sum`,
    ),
  );
  const whole = calendar.shifts.flatMap((shift, place) =>
    lastsAllDay(shift)
      ? [
          say.warning(
            "shifts",
            "shift-all-day",
            `${nameOf(place)} ends when it starts; it is read as 24 hours`,
          ),
        ]
      : [],
  );
  return [...overlaps, ...whole];
}

function closureFindings(say: EntryFindings, calendar: Calendar): Finding[] {
  return calendar.closures.flatMap(({ from, to }) => {
    const unreal = [from, to].filter((day) => !isDay(day));
    if (unreal.length > 0) {
      return unreal.map((day) =>
        say.error("closures", "no-such-date", `closed day ${day} does not exist; correct it`),
      );
    }
    if (from <= to) return [];
    return [
      say.error(
        "closures",
        "ends-before-start",
        `a closure from ${from} ends before it, on ${to}; correct one`,
      ),
    ];
  });
}

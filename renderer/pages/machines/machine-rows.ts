import type { Calendar } from "../../../core/shop/calendar.ts";
import type { Machine, Nozzle } from "../../../core/shop/machine.ts";
import { nextId } from "../../store/next-id.ts";

/**
 * A machine to start from. Figures are round ones of common practice, no source, for the shop to overwrite; it is not
 * approved to run with nobody there, and an hour of it costs nothing until its rate is entered, which a finding says.
 */
export function newMachine(calendarId: string, taken: ReadonlySet<string>): Machine {
  return {
    id: nextId("M0", taken),
    name: "New machine",
    process: "filament",
    calendarId,
    envelopeMm: { x: 250, y: 250, z: 250 },
    edgeMarginMm: 5,
    partGapMm: 5,
    mixedPlatform: false,
    nozzles: [newNozzle(undefined, new Set())],
    maxNozzleC: 280,
    maxPlatformC: 100,
    chamberC: 25,
    hardened: false,
    maxSpeedMmPerS: 150,
    accelerationMmPerS2: 2000,
    cornerDeviationMm: 0.05,
    layerChangeS: 1,
    travelS: 0.5,
    startPurgeG: 0.02,
    warmUpMin: 10,
    coolDownMin: 10,
    setUpMin: 10,
    unloadMin: 10,
    unattended: false,
    changeover: { sameFamilyMin: 10, newFamilyMin: 20, nozzleMin: 15, purgeKg: 0.03 },
    failuresPer1000H: 5,
    timeFactor: 1,
    hourRate: 0,
    loaded: null,
    outOfService: [],
  };
}

/** The same machine as another one of its kind: empty, in service, and to be approved anew for running alone. */
export function copyMachine(machine: Machine, taken: ReadonlySet<string>): Machine {
  const { unattendedMaxH: _, ...kept } = machine;
  const id = nextId(machine.id, taken);
  return { ...kept, id, name: `${machine.name} (copy)`, loaded: null, outOfService: [], unattended: false };
}

/** A nozzle like another one under an id of its own; with none to be like: 0.4 mm. */
export function newNozzle(like: Nozzle | undefined, taken: ReadonlySet<string>): Nozzle {
  if (like) return { ...like, id: nextId(like.id, taken) };
  return {
    id: "0.4",
    diameterMm: 0.4,
    beadWidthMm: { min: 0.4, max: 0.5 },
    layerHeightMm: { min: 0.1, max: 0.28 },
    flowCm3PerH: 45,
  };
}

/** Weekdays from 08:00 to 16:00 with one operator. */
export function newCalendar(taken: ReadonlySet<string>): Calendar {
  return {
    id: taken.has("days") ? nextId("days", taken) : "days",
    name: "Weekdays",
    shifts: [{ days: [1, 2, 3, 4, 5], start: "08:00", end: "16:00", operators: 1 }],
    closures: [],
  };
}

export function copyCalendar(calendar: Calendar, taken: ReadonlySet<string>): Calendar {
  return { ...calendar, id: nextId(calendar.id, taken), name: `${calendar.name} (copy)` };
}

export function idsOf(entries: readonly { readonly id: string }[]): Set<string> {
  return new Set(entries.map(({ id }) => id));
}

import type { Calendar } from "../../core/shop/calendar.ts";
import type { Machine } from "../../core/shop/machine.ts";
import { BENCH, CHAMBER, FRAME, GRANULE, LONGBED, machine } from "./machine-kinds.ts";

const HOLIDAYS = { from: "2026-12-24", to: "2027-01-01", reason: "Works holidays (invented)" };

export const CALENDARS: Calendar[] = [
  {
    id: "two-shift",
    name: "Main hall, two shifts",
    shifts: [
      { days: [1, 2, 3, 4, 5], start: "06:00", end: "14:00", operators: 3 },
      { days: [1, 2, 3, 4, 5], start: "14:00", end: "22:00", operators: 2 },
      { days: [6], start: "06:00", end: "12:00", operators: 1 },
    ],
    closures: [
      { from: "2026-12-05", to: "2026-12-05", reason: "Power supply of the main hall is renewed (invented)" },
      HOLIDAYS,
    ],
  },
  {
    id: "day",
    name: "East hall, day shift",
    shifts: [{ days: [1, 2, 3, 4, 5], start: "07:30", end: "16:30", operators: 2 }],
    closures: [HOLIDAYS],
  },
];

const two = (feedstockId: string, nozzleId: string) => ({
  calendarId: "two-shift",
  loaded: { feedstockId, nozzleId },
});
const day = (feedstockId: string, nozzleId: string) => ({
  calendarId: "day",
  loaded: { feedstockId, nozzleId },
});

export const MACHINES: Machine[] = [
  machine(BENCH, { id: "B1", name: "Bench 1", ...two("pla-f", "0.4") }),
  machine(BENCH, { id: "B2", name: "Bench 2", ...two("pla-f", "0.4") }),
  machine(BENCH, { id: "B3", name: "Bench 3", ...two("petg-f", "0.6") }),
  machine(BENCH, { id: "B4", name: "Bench 4", calendarId: "two-shift", loaded: null }),
  machine(CHAMBER, { id: "C1", name: "Chamber 1", ...day("asa-f", "0.4") }),
  machine(CHAMBER, {
    id: "C2",
    name: "Chamber 2",
    ...day("pa6cf-f", "0.4"),
    outOfService: [
      {
        from: "2026-12-01T00:00:00+01:00",
        to: "2026-12-04T00:00:00+01:00",
        reason: "Drive is serviced (invented)",
      },
    ],
  }),
  machine(CHAMBER, { id: "C3", name: "Chamber 3", ...day("absfr-f", "0.4") }),
  machine(FRAME, { id: "F1", name: "Frame 1", ...day("petg-f", "0.8") }),
  machine(FRAME, { id: "F2", name: "Frame 2", ...day("petg-f", "1.2") }),
  machine(GRANULE, { id: "G1", name: "Granule 1", ...two("petg-p", "2") }),
  machine(GRANULE, { id: "G2", name: "Granule 2", ...two("petg-p", "4") }),
  machine(LONGBED, { id: "L1", name: "Longbed", ...two("abscf-p", "6") }),
];

import type { Order } from "../../core/shop/order.ts";
import { seededRandom } from "../../core/units/random.ts";

/** Invented customers. */
const CUSTOMERS = [
  "Quillmere Lighting (invented)",
  "Tarnholt Boats (invented)",
  "Brackwater Drives (invented)",
  "Osierfield Play (invented)",
  "Fennimoor Switchgear (invented)",
  "Larkstead Interiors (invented)",
  "Wherrygate Pumps (invented)",
  "Own stock (invented)",
];

/** Quantities wanted of each part, one number an order line. */
const QUANTITIES: Record<string, number[]> = {
  clip: [200, 150, 75, 300],
  "cable-guide": [40, 24, 16, 20],
  "impeller-blank": [60, 38, 24, 45, 18],
  nameplate: [24, 24, 12, 20],
  spacer: [60, 40, 60, 20],
  gauge: [8, 6, 4, 4],
  "drill-template": [4, 6, 2],
  stencil: [3, 4, 2],
  handle: [12, 12, 6, 6],
  "lens-hood": [8, 12, 4, 6],
  "seal-form": [10, 14, 6, 4],
  "bumper-foot": [16, 10, 20],
  grommet: [30, 20, 40],
  "sensor-bracket": [30, 24, 30, 15],
  "terminal-cover": [12, 12, 6],
  "relay-housing": [6, 9, 5],
  "busbar-guard": [6, 9, 5],
  "duct-elbow": [6, 9, 3, 2],
  "fan-shroud": [6, 9, 3],
  "lamp-socket": [12, 8, 12],
  "gripper-finger": [12, 6, 20],
  "fixture-plate": [2, 1, 3],
  manifold: [2, 2, 1],
  "small-bin": [4, 6, 2],
  "clip-tray": [3, 4, 1, 1],
  "pipe-saddle": [8, 6, 8, 4],
  "display-form": [6, 2, 1],
  "storage-bin": [10, 2],
  "machine-cover": [3, 1],
  "signage-letter": [6, 3],
  planter: [4, 3],
  "long-planter": [1, 2],
  "chair-shell": [2, 2],
  "lamp-column": [6],
  "duct-transition": [2, 2, 1],
  "bollard-cap": [22],
  "foundry-pattern": [1, 2],
  "trim-jig": [1, 2],
  "tank-mould": [1, 1],
  "boat-mould-half": [2, 1],
};

/** Cost of a line of this part being late by one day, where the works' default does not fit. */
const LATE_COST_PER_DAY: Record<string, number> = {
  "boat-mould-half": 450,
  "tank-mould": 300,
  "trim-jig": 220,
  "foundry-pattern": 160,
  "chair-shell": 120,
  "duct-transition": 110,
  "fixture-plate": 90,
  manifold: 80,
  clip: 15,
  spacer: 15,
  grommet: 20,
  stencil: 20,
};

/** Hours of the day at which goods leave. */
const LEAVES_AT = ["10:00", "12:00", "15:00", "16:00", "18:00"];

/** Lines with something special about them: by their place in the list of all lines of the part. */
const SPECIAL: Record<string, Partial<Order>> = {
  "duct-transition 0": {
    allowLate: false,
    dueAt: "2026-12-04T16:00:00+01:00",
    note: "Promised by hand: must not be late",
  },
  "relay-housing 1": {
    allowLate: false,
    dueAt: "2026-12-04T18:00:00+01:00",
    note: "Promised by hand: must not be late",
  },
  "boat-mould-half 0": { dueAt: "2026-12-05T12:00:00+01:00", note: "Port and starboard" },
  "boat-mould-half 1": { dueAt: "2026-12-03T18:00:00+01:00" },
  "chair-shell 1": { pinned: { machineId: "G2" }, note: "Colour matched on Granule 2" },
  "gripper-finger 2": {
    pinned: { machineId: "C3" },
    releaseAt: "2026-12-02T06:00:00+01:00",
    dueAt: "2026-12-02T16:00:00+01:00",
    note: "Approved on Chamber 3 only; asked for at short notice: more hours of printing than there are",
  },
  "machine-cover 1": { pinned: { feedstockId: "asa-f" }, note: "Stands outdoors" },
  "display-form 0": { releaseAt: "2026-11-26T12:00:00+01:00" },
  "storage-bin 0": { dueAt: "2026-12-04T12:00:00+01:00", note: "First order of this size" },
  "storage-bin 1": { note: "Trial pieces" },
  "clip 3": { perPiece: true, note: "Goes out as it comes off the machines" },
  "bumper-foot 0": { perPiece: true, note: "Goes out as it comes off the machines" },
};

/** 120 order lines for the week from Monday 2026-11-30, the same for the same seed. */
export function makeOrders(seed: number): Order[] {
  const random = seededRandom(seed);
  const rows = Object.entries(QUANTITIES).flatMap(([partId, quantities]) =>
    quantities.map((quantity, place) => ({ partId, quantity, key: `${partId} ${place}` })),
  );
  return rows.map(({ partId, quantity, key }, index) => ({
    id: `O-${String(index + 1).padStart(3, "0")}`,
    customer: pick(CUSTOMERS, random),
    partId,
    quantity,
    releaseAt: releaseAt(random),
    dueAt: dueAt(random),
    ...(LATE_COST_PER_DAY[partId] === undefined ? {} : { lateCostPerDay: LATE_COST_PER_DAY[partId] }),
    allowLate: true,
    perPiece: false,
    note: "",
    ...SPECIAL[key],
  }));
}

/** Most lines can start at once; some wait for data or inserts until Tuesday or Wednesday. */
function releaseAt(random: () => number): string {
  const draw = random();
  if (draw < 0.72) return "2026-11-27T12:00:00+01:00";
  return draw < 0.88 ? "2026-12-01T06:00:00+01:00" : "2026-12-02T06:00:00+01:00";
}

/** From Wednesday to the Tuesday after, most at the end of the week. */
function dueAt(random: () => number): string {
  const days = [
    "2026-12-02",
    "2026-12-03",
    "2026-12-04",
    "2026-12-04",
    "2026-12-05",
    "2026-12-07",
    "2026-12-08",
  ];
  const day = pick(days, random);
  const time = day === "2026-12-05" ? "12:00" : pick(LEAVES_AT, random);
  return `${day}T${time}:00+01:00`;
}

function pick<T>(list: readonly T[], random: () => number): T {
  const item = list[Math.floor(random() * list.length)];
  if (item === undefined) throw new RangeError("nothing to pick from");
  return item;
}

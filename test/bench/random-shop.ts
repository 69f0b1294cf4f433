import { FEEDSTOCKS } from "../../assets/demo/feedstocks.ts";
import { BENCH, CHAMBER, FRAME, GRANULE, LONGBED, machine } from "../../assets/demo/machine-kinds.ts";
import { COSTING } from "../../assets/demo/works.ts";
import { findRoutes } from "../../core/estimate/find-routes.ts";
import { runMin } from "../../core/estimate/print-time.ts";
import type { Build } from "../../core/shop/build.ts";
import type { Calendar } from "../../core/shop/calendar.ts";
import type { Feedstock } from "../../core/shop/feedstock.ts";
import { instantOf, minuteOf } from "../../core/shop/instants.ts";
import type { Machine } from "../../core/shop/machine.ts";
import type { Order } from "../../core/shop/order.ts";
import type { Part } from "../../core/shop/part.ts";
import { SHOP_SCHEMA, type Shop } from "../../core/shop/shop.ts";
import { MIN_PER_DAY, MIN_PER_H } from "../../core/units/conversions.ts";
import { type Random, seededRandom } from "../../core/units/random.ts";
import { PART_KINDS, randomPart } from "./bench-parts.ts";
import { between, chance, pick, shuffled, wholeBetween } from "./draw.ts";
import type { ShopCase } from "./make-shop.ts";

/** Mondays in zones where something happens to the clock that week, and ordinary ones. */
const WEEKS = [
  { timeZone: "Europe/Berlin", monday: "2026-11-30" },
  { timeZone: "Europe/Berlin", monday: "2026-10-19" },
  { timeZone: "Europe/Berlin", monday: "2027-03-22" },
  { timeZone: "America/New_York", monday: "2026-10-26" },
  { timeZone: "America/New_York", monday: "2027-03-08" },
  { timeZone: "Asia/Kolkata", monday: "2026-12-28" },
  { timeZone: "Australia/Lord_Howe", monday: "2027-03-29" },
] as const;

const MACHINE_KINDS = [BENCH, BENCH, CHAMBER, FRAME, GRANULE, LONGBED];

/** The week of one random shop and its source of chance. */
interface Scene {
  readonly random: Random;
  readonly timeZone: string;
  readonly fromMin: number;
  readonly days: number;
}

/**
 * A small shop with something odd in it, the same for the same seed: closures, times out of service, pins, buying out, hard
 * promises, weeks in which the clock changes, committed builds, mixed platforms, releases, nobody there at night, feedstock
 * without a price, parts that fit nowhere, hundreds of copies.
 */
export function makeRandomShop(seed: number): ShopCase {
  const random = seededRandom(seed * 15_485_863 + 101);
  const { timeZone, monday } = pick(WEEKS, random);
  const fromMin = minuteOf(`${monday}T00:00`, timeZone) + pick([0, 0, 0, 450, 2 * MIN_PER_DAY], random);
  const scene = { random, timeZone, fromMin, days: pick([2, 5, 7, 7, 10], random) };
  const calendars = shuffled(randomCalendars(scene), random);
  const feedstocks = shuffled(FEEDSTOCKS, random)
    .slice(0, wholeBetween(random, 4, 12))
    .map(priced(random));
  const machines = randomMachines(scene, calendars, feedstocks);
  const parts = Array.from({ length: wholeBetween(random, 2, 8) }, (_, index) => oddPart(index, random));
  const orders = Array.from({ length: wholeBetween(random, 2, 14) }, (_, index) =>
    randomOrder(index, scene, { machines, feedstocks, parts }),
  );
  const shop: Shop = {
    schema: SHOP_SCHEMA,
    name: `Random works, seed ${seed} (invented)`,
    timeZone,
    currency: pick(["EUR", "USD", "JPY"], random),
    display: { length: "mm", mass: "kg" },
    costing: { ...COSTING, overheadPct: pick([0, 12, 30], random) },
    calendars,
    machines,
    feedstocks,
    parts,
    orders,
    builds: [],
    quotes: [],
    cases: [],
  };
  return { shop: { ...shop, builds: committedBuilds(shop, scene) }, request: { fromMin, days: scene.days } };
}

function randomCalendars({ random, timeZone, fromMin }: Scene): Calendar[] {
  const someDay = instantOf(fromMin + wholeBetween(random, 0, 4) * MIN_PER_DAY, timeZone).slice(0, 10);
  const closure = { from: someDay, to: someDay, reason: "Closed (invented)" };
  const day: Calendar = {
    id: "day",
    name: "Day shift",
    shifts: [{ days: [1, 2, 3, 4, 5], start: "07:30", end: "16:30", operators: wholeBetween(random, 1, 3) }],
    closures: chance(random, 30) ? [closure] : [],
  };
  const others: Calendar[] = [
    {
      id: "other",
      name: "Two shifts",
      shifts: [
        { days: [1, 2, 3, 4, 5], start: "06:00", end: "14:00", operators: wholeBetween(random, 1, 2) },
        { days: [1, 2, 3, 4, 5], start: "14:00", end: "22:00", operators: wholeBetween(random, 0, 2) },
      ],
      closures: chance(random, 20) ? [closure] : [],
    },
    {
      id: "other",
      name: "Nights and the weekend",
      shifts: [
        { days: [1, 2, 3, 4, 5, 6, 7], start: "22:00", end: "06:00", operators: 1 },
        { days: [6, 7], start: "08:00", end: "12:00", operators: 1 },
      ],
      closures: [],
    },
    {
      id: "other",
      name: "Two short stretches",
      shifts: [
        { days: [1, 3, 5], start: "08:00", end: "10:00", operators: 1 },
        { days: [1, 2, 3, 4, 5], start: "13:00", end: "17:15", operators: 1 },
      ],
      closures: [],
    },
  ];
  return [day, pick(others, random)];
}

function priced(random: Random): (feedstock: Feedstock) => Feedstock {
  return (feedstock) => (chance(random, 3) ? { ...feedstock, pricePerKg: null } : feedstock);
}

function randomMachines(
  scene: Scene,
  calendars: readonly Calendar[],
  feedstocks: readonly Feedstock[],
): Machine[] {
  const { random } = scene;
  return Array.from({ length: wholeBetween(random, 1, 5) }, (_, index) => {
    const kind = pick(MACHINE_KINDS, random);
    const nozzles = chance(random, 50) ? kind.nozzles : [pick(kind.nozzles, random)];
    const fitting = feedstocks.filter(({ form }) => form === kind.process);
    const loaded =
      fitting.length === 0 || chance(random, 20)
        ? null
        : { feedstockId: pick(fitting, random).id, nozzleId: pick(nozzles, random).id };
    const unattended = chance(random, 40);
    const { unattendedMaxH: _approved, ...rest } = kind;
    return machine(
      {
        ...rest,
        nozzles,
        unattended,
        ...(unattended && chance(random, 50) ? { unattendedMaxH: pick([4, 10, 14, 40], random) } : {}),
        mixedPlatform: chance(random, 40),
        timeFactor: pick([1, 1, 1.12], random),
        hourRate: chance(random, 20) ? wholeBetween(random, 0, 30) : kind.hourRate,
      },
      {
        id: `M-${index + 1}`,
        name: `Machine ${index + 1}`,
        calendarId: pick(calendars, random).id,
        loaded,
        outOfService: chance(random, 25) ? [randomBlock(scene)] : [],
      },
    );
  });
}

/** Out of service from the second day on, so that it never meets a committed build. */
function randomBlock({ random, timeZone, fromMin }: Scene): Machine["outOfService"][number] {
  const startMin = fromMin + 2 * MIN_PER_DAY + wholeBetween(random, 0, 3 * MIN_PER_DAY);
  const endMin = startMin + wholeBetween(random, 60, 2 * MIN_PER_DAY);
  return {
    from: instantOf(startMin, timeZone),
    to: instantOf(endMin, timeZone),
    reason: "Out of service (invented)",
  };
}

function oddPart(index: number, random: Random): Part {
  const part = randomPart(`P-${index + 1}`, pick(PART_KINDS, random), random);
  return {
    ...part,
    ...(chance(random, 30) ? { families: [] } : {}),
    ...(chance(random, 20) ? { orientations: ["x", "y", "z"] } : {}),
    ...(chance(random, 5) ? { smallestFeatureMm: 0.2 } : {}),
    ...(chance(random, 25)
      ? { buyOut: { pricePerPiece: wholeBetween(random, 2, 400), leadTimeDays: wholeBetween(random, 0, 9) } }
      : {}),
  };
}

interface Stock {
  readonly machines: readonly Machine[];
  readonly feedstocks: readonly Feedstock[];
  readonly parts: readonly Part[];
}

function randomOrder(index: number, scene: Scene, stock: Stock): Order {
  const { random, timeZone, fromMin, days } = scene;
  const horizonMin = days * MIN_PER_DAY;
  const releaseMin = fromMin + (chance(random, 60) ? -MIN_PER_DAY : wholeBetween(random, 0, horizonMin));
  const dueMin = releaseMin + wholeBetween(random, 6 * MIN_PER_H, horizonMin);
  return {
    id: `O-${index + 1}`,
    customer: "Random customer (invented)",
    partId: pick(stock.parts, random).id,
    quantity: chance(random, 2) ? 600 : Math.round(Math.exp(between(random, 0, 3.2))),
    releaseAt: instantOf(releaseMin, timeZone),
    dueAt: instantOf(dueMin, timeZone),
    ...(chance(random, 70) ? { lateCostPerDay: wholeBetween(random, 0, 300) } : {}),
    allowLate: chance(random, 80),
    perPiece: chance(random, 25),
    ...randomPin(random, stock),
    note: "",
  };
}

function randomPin(random: Random, { machines, feedstocks }: Stock): Pick<Order, "pinned"> {
  if (chance(random, 8)) return { pinned: { machineId: pick(machines, random).id } };
  if (chance(random, 5)) return { pinned: { feedstockId: pick(feedstocks, random).id } };
  return {};
}

/** At most one committed build, on the first machine that makes the first order, in the first day of the plan. */
function committedBuilds(shop: Shop, { random, timeZone, fromMin }: Scene): Build[] {
  const order = shop.orders[0];
  const part = shop.parts.find(({ id }) => id === order?.partId);
  if (!order || !part || chance(random, 70)) return [];
  for (const one of shop.machines) {
    const answer = findRoutes(part, one, shop.feedstocks).find(({ status }) => status === "route");
    if (answer?.status !== "route") continue;
    const { route } = answer;
    const copies = Math.min(route.copiesMin, order.quantity);
    const printStart = fromMin - MIN_PER_H;
    const printEnd = printStart + runMin([{ route, copies }]);
    if (copies < route.copiesMin || printEnd > fromMin + MIN_PER_DAY) continue;
    return [
      {
        id: "K-1",
        machineId: one.id,
        nozzleId: route.nozzleId,
        feedstockId: route.feedstockId,
        layerHeightMm: route.layerHeightMm,
        beadWidthMm: route.beadWidthMm,
        orientation: route.orientation,
        items: [{ orderId: order.id, copies }],
        setUpStart: instantOf(printStart - 2 * MIN_PER_H, timeZone),
        printStart: instantOf(printStart, timeZone),
        printEnd: instantOf(printEnd, timeZone),
        unloadEnd: instantOf(printEnd + one.unloadMin, timeZone),
        state: pick(["committed", "running"], random),
      },
    ];
  }
  return [];
}

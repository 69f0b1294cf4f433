import { COSTING } from "../../assets/demo/works.ts";
import { FEEDSTOCKS } from "../../assets/demo/feedstocks.ts";
import {
  BENCH,
  CHAMBER,
  FRAME,
  GRANULE,
  LONGBED,
  machine,
  type MachineKind,
} from "../../assets/demo/machine-kinds.ts";
import type { PlanRequest } from "../../core/plan/compile/compile-problem.ts";
import type { Calendar } from "../../core/shop/calendar.ts";
import { minuteOf } from "../../core/shop/instants.ts";
import type { Machine } from "../../core/shop/machine.ts";
import type { Order } from "../../core/shop/order.ts";
import type { Part } from "../../core/shop/part.ts";
import { SHOP_SCHEMA, type Shop } from "../../core/shop/shop.ts";
import { type Random, seededRandom } from "../../core/units/random.ts";
import { PART_KINDS, type PartKind, randomPart } from "./bench-parts.ts";
import { between, chance, pick } from "./draw.ts";
import { cheapestWay, hoursFor, type KindOfMachine, kindsOfMachines, type Way, waysOf } from "./shop-load.ts";

/** Sizes of the bench: machines of each kind, order lines, weeks. */
export const BENCH_SIZES = {
  S: { machines: { B: 2, C: 1, F: 1, G: 1, L: 0 }, lines: 30, weeks: 1 },
  M: { machines: { B: 4, C: 3, F: 2, G: 2, L: 1 }, lines: 150, weeks: 1 },
  L: { machines: { B: 7, C: 5, F: 3, G: 3, L: 2 }, lines: 500, weeks: 2 },
  XL: { machines: { B: 11, C: 8, F: 5, G: 4, L: 2 }, lines: 1000, weeks: 4 },
} as const;

export type BenchSize = keyof typeof BENCH_SIZES;

/** A shop and what to plan of it. */
export interface ShopCase {
  readonly shop: Shop;
  readonly request: PlanRequest;
}

export interface MakeShopOptions {
  readonly seed: number;
  /** hours that the cheapest ways take over the hours that the machines can be busy */
  readonly loadFactor?: number;
  /** copies of different orders may share a build */
  readonly mixedPlatform?: boolean;
}

export const BENCH_ZONE = "Europe/Berlin";
const BENCH_MONDAY = "2026-11-30T00:00";
const LINES_PER_PART = 3;
const KINDS: Record<string, MachineKind> = { B: BENCH, C: CHAMBER, F: FRAME, G: GRANULE, L: LONGBED };
const EAST_HALL = new Set(["C", "F"]);

/**
 * A random shop of a size, the same for the same seed: two calendars, both processes, about five ways to make a line, and a
 * load of 0.88 of what the machines can be busy, kind by kind, so that many lines compete for the same days.
 */
export function makeShop(size: BenchSize, options: MakeShopOptions): ShopCase {
  const { lines, weeks } = BENCH_SIZES[size];
  const random = seededRandom(options.seed * 7919 + lines);
  const bare = bareShop(size, options);
  const plan = { lines, weeks, loadFactor: options.loadFactor ?? 0.88 };
  const pools = makeParts(bare, plan, random);
  const orders = makeOrders(bare, pools, plan, random);
  const used = new Set(orders.map(({ partId }) => partId));
  const parts = pools.flatMap((pool) => pool.parts.map(({ part }) => part)).filter(({ id }) => used.has(id));
  return {
    shop: { ...bare, parts, orders },
    request: { fromMin: minuteOf(BENCH_MONDAY, BENCH_ZONE), days: 7 * weeks },
  };
}

function bareShop(size: BenchSize, options: MakeShopOptions): Shop {
  const machines = Object.entries(BENCH_SIZES[size].machines).flatMap(([letter, count]) =>
    Array.from({ length: count }, (_, index) => benchMachine(letter, index, options.mixedPlatform ?? false)),
  );
  return {
    schema: SHOP_SCHEMA,
    name: `Bench works ${size}, seed ${options.seed} (invented)`,
    timeZone: BENCH_ZONE,
    currency: "EUR",
    display: { length: "mm", mass: "kg" },
    costing: COSTING,
    calendars: calendarsFor(machines),
    machines,
    feedstocks: FEEDSTOCKS,
    parts: [],
    orders: [],
    builds: [],
    quotes: [],
    cases: [],
  };
}

function benchMachine(letter: string, index: number, mixedPlatform: boolean): Machine {
  const kind = KINDS[letter];
  if (!kind) throw new RangeError(`unknown kind of machine: ${letter}`);
  const nozzle = kind.nozzles[index % kind.nozzles.length];
  const feedstock = FEEDSTOCKS.filter(({ form }) => form === kind.process)[index % 3];
  return machine(
    { ...kind, mixedPlatform },
    {
      id: `${letter}${index + 1}`,
      name: `${letter}-machine ${index + 1}`,
      calendarId: EAST_HALL.has(letter) ? "day" : "two-shift",
      loaded: feedstock && nozzle ? { feedstockId: feedstock.id, nozzleId: nozzle.id } : null,
    },
  );
}

/** One operator for about four machines by day, fewer late and on Saturday. */
function calendarsFor(machines: readonly Machine[]): Calendar[] {
  const served = (calendarId: string) => machines.filter((one) => one.calendarId === calendarId).length;
  const main = served("two-shift");
  return [
    {
      id: "two-shift",
      name: "Main hall, two shifts",
      shifts: [
        { days: [1, 2, 3, 4, 5], start: "06:00", end: "14:00", operators: people(main, 4) },
        { days: [1, 2, 3, 4, 5], start: "14:00", end: "22:00", operators: people(main, 5) },
        { days: [6], start: "06:00", end: "12:00", operators: people(main, 8) },
      ],
      closures: [],
    },
    {
      id: "day",
      name: "East hall, day shift",
      shifts: [{ days: [1, 2, 3, 4, 5], start: "07:30", end: "16:30", operators: people(served("day"), 4) }],
      closures: [],
    },
  ];
}

function people(machines: number, each: number): number {
  return Math.max(1, Math.ceil(machines / each));
}

interface KnownPart {
  readonly part: Part;
  readonly ways: readonly Way[];
}

/** Parts whose cheapest way is on one kind of machine, and how many lines order them. */
interface PartPool {
  readonly kind: KindOfMachine;
  readonly lines: number;
  readonly parts: KnownPart[];
}

/** Lines per hour of capacity, relative: small parts come in more lines than large ones. */
const LINES_PER_H: Record<string, number> = { B: 1.3, C: 1.15, F: 0.9, G: 0.8, L: 0.5 };

function emptyPools(kinds: readonly KindOfMachine[], lines: number): PartPool[] {
  const total = kinds.reduce((sum, kind) => sum + weightOf(kind), 0);
  let open = lines;
  return kinds.map((kind, index) => {
    const share = index === kinds.length - 1 ? open : Math.round((lines * weightOf(kind)) / total);
    open -= share;
    return { kind, lines: share, parts: [] };
  });
}

function weightOf({ kind, capacityH }: KindOfMachine): number {
  return capacityH * (LINES_PER_H[kind] ?? 1);
}

/** About one part for three lines; a part belongs to the kind of machine that makes it cheapest. */
function makeParts(shop: Shop, plan: LoadPlan, random: Random): PartPool[] {
  const kinds = kindsOfMachines(shop, plan.weeks);
  const pools = emptyPools(kinds, plan.lines);
  for (let number = 1; number <= MOST_TRIES * plan.lines; number++) {
    const open = pools.filter(({ parts, lines }) => parts.length < lines / LINES_PER_PART);
    if (open.length === 0) break;
    const part = randomPart(`P-${number}`, partKindFor(pick(open, random), random), random);
    const ways = waysOf(part, shop, kinds);
    // Made singly too, so that no quantity leaves a copy that no build may hold alone.
    if (!cheapestWay(part, shop, ways, 1)) continue;
    const way = cheapestWay(part, shop, ways, USUAL_WANTED);
    const pool = open.find(({ kind }) => kind.kind === way?.kind);
    if (way && pool && way.hoursPerCopy < MOST_OF_A_LINE * lineH(pool, plan)) pool.parts.push({ part, ways });
  }
  const bare = pools.find(({ parts }) => parts.length === 0);
  if (bare) throw new Error(`no part found that ${bare.kind.kind} makes cheapest`);
  return pools;
}

const MOST_TRIES = 12;
const USUAL_WANTED = 40;
const MOST_OF_A_LINE = 0.9;

function lineH({ kind, lines }: PartPool, plan: LoadPlan): number {
  return (kind.capacityH * plan.loadFactor) / lines;
}

const PART_KINDS_OF: Record<string, readonly PartKind[]> = {
  B: ["small"],
  C: ["warm", "small"],
  F: ["middle", "warm", "small"],
  G: ["middle", "large"],
  L: ["mould", "large"],
};

function partKindFor(pool: PartPool, random: Random): PartKind {
  return pick(PART_KINDS_OF[pool.kind.kind] ?? PART_KINDS, random);
}

interface LoadPlan {
  readonly lines: number;
  readonly weeks: number;
  readonly loadFactor: number;
}

/** A line before its quantity is settled: `wanted` copies, not yet whole. */
interface Draft {
  readonly known: KnownPart;
  wanted: number;
}

/** Quantities such that every kind of machine is loaded as asked if each line went its cheapest way. */
function makeOrders(shop: Shop, pools: readonly PartPool[], plan: LoadPlan, random: Random): Order[] {
  const drafts = pools.flatMap((pool) =>
    Array.from({ length: pool.lines }, (): Draft => {
      const known = pick(pool.parts, random);
      const hours = lineH(pool, plan) * Math.exp(0.7 * normal(random));
      const way = cheapestWay(known.part, shop, known.ways, USUAL_WANTED);
      return { known, wanted: Math.max(1, hours / (way?.hoursPerCopy ?? 1)) };
    }),
  );
  for (let round = 0; round < CALIBRATION_ROUNDS; round++) calibrate(shop, pools, drafts, plan.loadFactor);
  return drafts.map((draft, index) => makeOrder(`O-${index + 1}`, draft, shop, plan.weeks, random));
}

const CALIBRATION_ROUNDS = 10;

function calibrate(
  shop: Shop,
  pools: readonly PartPool[],
  drafts: readonly Draft[],
  loadFactor: number,
): void {
  const taken = drafts.map((draft) => cheapestLoad(shop, draft));
  for (const { kind } of pools) {
    const loadH = taken.reduce((sum, load) => sum + (load.kind === kind.kind ? load.hours : 0), 0);
    const factor = loadH > 0 ? Math.min(1.6, Math.max(0.6, (loadFactor * kind.capacityH) / loadH)) : 1;
    drafts.forEach((draft, index) => {
      if (taken[index]?.kind === kind.kind) draft.wanted = Math.max(0.5, draft.wanted * factor);
    });
  }
}

function cheapestLoad(
  shop: Shop,
  { known, wanted }: Draft,
): { kind: string; hours: number; quantity: number } {
  const quantity = Math.max(1, Math.round(wanted));
  const way = cheapestWay(known.part, shop, known.ways, quantity);
  if (!way) throw new Error(`no way to make ${known.part.id}`);
  return { kind: way.kind, hours: hoursFor(way, quantity), quantity };
}

function makeOrder(id: string, draft: Draft, shop: Shop, weeks: number, random: Random): Order {
  const { quantity, hours } = cheapestLoad(shop, draft);
  const horizonH = weeks * 168;
  const releaseH = chance(random, 60) ? 0 : between(random, 0, 0.5 * horizonH);
  const soonestH = releaseH + 10 + 1.5 * hours;
  const dueH = Math.max(soonestH, between(random, 0.15, 1) * horizonH);
  return {
    id,
    customer: "Bench customer (invented)",
    partId: draft.known.part.id,
    quantity,
    releaseAt: localTime(releaseH),
    dueAt: localTime(dueH),
    lateCostPerDay: Math.round(Math.exp(between(random, Math.log(15), Math.log(250)))),
    allowLate: true,
    perPiece: false,
    note: "",
  };
}

/** Local time so many hours after the start of the bench week, on the full hour. */
function localTime(hours: number): string {
  const epoch = Date.parse(`${BENCH_MONDAY}:00Z`) + Math.round(hours) * 3_600_000;
  return new Date(epoch).toISOString().slice(0, 16);
}

/** One draw of the standard normal distribution (Box and Muller 1958). */
function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

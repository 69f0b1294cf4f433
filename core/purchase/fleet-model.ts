import { type BuildCosting, makeBuildCosting } from "../cost/build-cost.ts";
import { compileProblem } from "../plan/compile/compile-problem.ts";
import type { PlanProblem } from "../plan/plan-problem.ts";
import { instantOf } from "../shop/instants.ts";
import type { Order } from "../shop/order.ts";
import type { Shop } from "../shop/shop.ts";
import { MIN_PER_DAY } from "../units/conversions.ts";
import { fleetWeek, type FleetWeek } from "./fleet-capacity.ts";
import { type FleetWay, fleetWays } from "./fleet-ways.ts";
import { largestLine, type LineSizes } from "./line-sizes.ts";
import { weekSlots } from "./week-slots.ts";

/** One part of the demand that this fleet can make or the shop can buy out. */
export interface FleetPart {
  readonly partId: string;
  /** least cost of one copy, whichever way, or its price made elsewhere */
  readonly cheapest: number;
  readonly buyOut: { readonly pricePerPiece: number; readonly leadTimeDays: number } | null;
}

/** A fleet made ready for every week of every scenario: its ways and what a usual week offers. */
export interface FleetModel {
  readonly problem: PlanProblem;
  readonly week: FleetWeek;
  readonly parts: readonly FleetPart[];
  readonly ways: readonly FleetWay[];
}

/** What a fleet is compiled from. */
export interface FleetInput {
  readonly shop: Shop;
  /** first minute of the Monday on which the first week starts */
  readonly fromMin: number;
  readonly lineSizes: readonly LineSizes[];
}

/** Copies of a part that may share a platform: enough to fill any. */
const SHARED_COPIES = 200;

/** Compiles a fleet once. Orders and builds of the shop play no part; closed days only lower the weeks they lie in. */
export function fleetModel({ shop, fromMin, lineSizes }: FleetInput): FleetModel {
  const known = new Set(shop.parts.map(({ id }) => id));
  const sizes = lineSizes.filter(({ partId }) => known.has(partId));
  const usual = usualShop(shop, fromMin, sizes);
  const { problem } = compileProblem(usual, { fromMin, days: 7 });
  const week = fleetWeek(problem, weekSlots(problem.machines, fromMin));
  const costing = makeBuildCosting(usual);
  const parts: FleetPart[] = [];
  const ways: FleetWay[] = [];
  for (const line of problem.lines) {
    const own = waysOfLine(usual, problem, week, costing, {
      partIndex: parts.length,
      sizes: sizes.find(({ partId }) => partId === line.partId)!,
      optionIndices: line.optionIndices,
    });
    const { buyOut } = shop.parts.find(({ id }) => id === line.partId)!;
    if (own.length === 0 && !buyOut) continue;
    ways.push(...own);
    const cheapest = Math.min(
      buyOut?.pricePerPiece ?? Infinity,
      ...own.map(({ amounts, copies }) => amounts.total / copies),
    );
    parts.push({ partId: line.partId, cheapest, buyOut: buyOut ?? null });
  }
  return { problem, week, parts, ways };
}

function waysOfLine(
  shop: Shop,
  problem: PlanProblem,
  week: FleetWeek,
  costing: BuildCosting,
  line: { partIndex: number; sizes: LineSizes; optionIndices: readonly number[] },
): FleetWay[] {
  return line.optionIndices.flatMap((index) => {
    const option = problem.options[index]!;
    const machineClass = problem.classes[option.classIndex]!;
    const { machineId } = problem.machines[machineClass.machineIndices[0]!]!;
    return fleetWays({
      partIndex: line.partIndex,
      sizes: line.sizes,
      option,
      machineClass,
      week: week.classes[option.classIndex]!,
      machine: shop.machines.find(({ id }) => id === machineId)!,
      costing,
    });
  });
}

/** The shop with no closed days, nothing out of service, nothing built, and one order line for each part of the demand. */
function usualShop(shop: Shop, fromMin: number, sizes: readonly LineSizes[]): Shop {
  const isShared = shop.machines.some(({ mixedPlatform }) => mixedPlatform);
  return {
    ...shop,
    builds: [],
    calendars: shop.calendars.map((calendar) => ({ ...calendar, closures: [] })),
    machines: shop.machines.map((machine) => ({ ...machine, outOfService: [] })),
    orders: sizes.map(
      (each, index): Order => ({
        id: `D-${index}`,
        customer: "",
        partId: each.partId,
        quantity: Math.max(largestLine(each), isShared ? SHARED_COPIES : 1),
        releaseAt: instantOf(fromMin, shop.timeZone),
        dueAt: instantOf(fromMin + 7 * MIN_PER_DAY, shop.timeZone),
        allowLate: true,
        perPiece: false,
        note: "",
      }),
    ),
  };
}

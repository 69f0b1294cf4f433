import type { BuildCosting } from "../../cost/build-cost.ts";
import { lateCostPerDay } from "../../cost/late-cost.ts";
import { toolPathFactor } from "../../estimate/tool-path-work.ts";
import { minuteOf } from "../../shop/instants.ts";
import { localTime } from "../../shop/local-time.ts";
import type { Order } from "../../shop/order.ts";
import type { Part } from "../../shop/part.ts";
import type { Shop } from "../../shop/shop.ts";
import { dateTimeText } from "../../shop/time-words.ts";
import { MIN_PER_DAY } from "../../units/conversions.ts";
import type { ClassTimes } from "./class-times.ts";
import type { PlanRequest, Unplannable } from "./compile-problem.ts";
import { copiesInBuilds } from "../../shop/build-copies.ts";
import type { ClassRoute, OptionFinder } from "./option-finder.ts";
import type { UnplannedReason } from "../plan-document.ts";
import type { EngineeringItem, PlanLine, PlanOption, Stretch } from "../plan-problem.ts";

export interface CompileLinesInput {
  readonly shop: Shop;
  readonly finder: OptionFinder;
  readonly costing: BuildCosting;
  readonly times: ClassTimes;
  readonly request: PlanRequest;
}

export interface CompiledLines {
  readonly lines: readonly PlanLine[];
  readonly options: readonly PlanOption[];
  readonly engineering: readonly EngineeringItem[];
  readonly unplannable: readonly Unplannable[];
}

/** Every open order line with its options; those with no way to make or buy them are set apart with reasons. */
export function compileLines(input: CompileLinesInput): CompiledLines {
  const writer = new LineWriter(input);
  const settled = copiesInBuilds(input.shop.builds);
  for (const order of input.shop.orders) {
    const copies = order.quantity - (settled.get(order.id) ?? 0);
    if (copies > 0) writer.add(order, copies);
  }
  return writer;
}

class LineWriter implements CompiledLines {
  readonly lines: PlanLine[] = [];
  readonly options: PlanOption[] = [];
  readonly engineering: EngineeringItem[] = [];
  readonly unplannable: Unplannable[] = [];
  private readonly parts: ReadonlyMap<string, Part>;
  private readonly mostWanted: ReadonlyMap<string, number>;
  private readonly engineeringIndex = new Map<string, number>();
  /** by machine; the same for every order */
  private readonly openMin: number[] = [];
  private readonly input: CompileLinesInput;

  constructor(input: CompileLinesInput) {
    this.input = input;
    this.parts = new Map(input.shop.parts.map((part) => [part.id, part]));
    this.mostWanted = mostWanted(input.shop.orders);
  }

  add(order: Order, copies: number): void {
    const { shop, request, finder } = this.input;
    const part = this.parts.get(order.partId);
    if (!part) throw new RangeError(`order ${order.id} names no known part: ${order.partId}`);
    const endMin = request.fromMin + request.days * MIN_PER_DAY;
    if (minuteOf(order.releaseAt, shop.timeZone) >= endMin) {
      this.setApart(order.id, copies, [afterHorizon(order, shop, request.fromMin)]);
      return;
    }
    const { routes, refusals } = finder.routesOf(part, this.mostWanted.get(part.id) ?? copies);
    const reasons = [...refusals];
    const usable = routes.filter((route) => this.usable(order, copies, route, reasons));
    const planned = Math.min(copies, this.makeable(usable, endMin));
    if (usable.length === 0 && !part.buyOut) {
      const why = order.pinned ? [pinnedAway(order.pinned), ...reasons] : reasons;
      this.setApart(order.id, copies, why.length > 0 ? why : [NO_MACHINE]);
      return;
    }
    const most = part.buyOut ? copies : planned;
    if (most > 0) this.addLine(order, part, most, usable);
    if (most < copies) this.setApart(order.id, copies - most, [tooMany(order, most)]);
  }

  private setApart(orderId: string, copies: number, reasons: readonly UnplannedReason[]): void {
    this.unplannable.push({ orderId, copies, reasons });
  }

  private usable(order: Order, copies: number, route: ClassRoute, reasons: UnplannedReason[]): boolean {
    const { pinned } = order;
    const { feedstockId, copiesMin } = route.route;
    if (pinned?.feedstockId && pinned.feedstockId !== feedstockId) return false;
    if (this.machinesFor(order, route.classIndex).length === 0) return false;
    if (copiesMin <= copies) return true;
    reasons.push({
      code: "too-few-copies",
      sentence: `${route.route.machineId} with ${feedstockId}: a layer would be over too soon with fewer than ${copiesMin} copies in a build; the order has ${copies}.`,
    });
    return false;
  }

  private machinesFor(order: Order, classIndex: number): number[] {
    const { classes, machines } = this.input.times;
    const pinnedId = order.pinned?.machineId;
    return (classes[classIndex]?.machineIndices ?? []).filter((index) => {
      const machine = machines[index];
      return (
        machine !== undefined && machine.windows.length > 0 && (!pinnedId || machine.machineId === pinnedId)
      );
    });
  }

  /**
   * Copies that could be made in twice the planned days, or a week if that is longer, if nothing else were made. It only keeps
   * absurd quantities out; a machine's time counts from when it can first be used, so that a closed start shuts nothing out.
   */
  private makeable(routes: readonly ClassRoute[], endMin: number): number {
    const { times, request } = this.input;
    const lengthMin = Math.max(2 * (endMin - request.fromMin), LEAST_COUNTED_MIN);
    let copies = 0;
    for (const [classIndex, facts] of times.classes.entries()) {
      const perCopyMin = Math.min(...routes.filter((r) => r.classIndex === classIndex).map(leastMinPerCopy));
      if (!Number.isFinite(perCopyMin)) continue;
      for (const index of facts.machineIndices) {
        const openMin = (this.openMin[index] ??= openFor(times.machines[index]?.segments ?? [], lengthMin));
        copies += Math.ceil(openMin / perCopyMin);
      }
    }
    return copies;
  }

  private addLine(order: Order, part: Part, quantity: number, routes: readonly ClassRoute[]): void {
    const { shop, request } = this.input;
    const index = this.lines.length;
    const optionIndices = routes.map((route) => this.addOption(order, part, quantity, index, route));
    const { buyOut } = part;
    this.lines.push({
      index,
      orderId: order.id,
      partId: part.id,
      quantity,
      releaseMin: Math.max(request.fromMin, minuteOf(order.releaseAt, shop.timeZone)),
      dueMin: minuteOf(order.dueAt, shop.timeZone),
      lateCostPerMin: lateCostPerDay(order, shop.costing) / MIN_PER_DAY,
      allowLate: order.allowLate,
      perPiece: order.perPiece,
      orderedCopies: order.quantity,
      optionIndices,
      buyOut: buyOut
        ? {
            pricePerPiece: buyOut.pricePerPiece,
            arriveMin: request.fromMin + Math.ceil(buyOut.leadTimeDays * MIN_PER_DAY),
          }
        : null,
    });
  }

  private addOption(
    order: Order,
    part: Part,
    quantity: number,
    lineIndex: number,
    found: ClassRoute,
  ): number {
    const index = this.options.length;
    const copiesMax = Math.min(quantity, found.runMinByCopies.length - 1);
    this.options.push({
      index,
      lineIndex,
      classIndex: found.classIndex,
      stateIndex: found.stateIndex,
      route: found.route,
      mixKey: found.mixKey,
      copiesMin: found.route.copiesMin,
      copiesMax,
      platformCopies: found.route.copiesMax,
      runMinByCopies: found.runMinByCopies,
      costByCopies: found.costByCopies,
      engineeringIndex: this.engineeringOf(part, found.route.process),
      machineIndices: this.machinesFor(order, found.classIndex),
    });
    return index;
  }

  private engineeringOf(part: Part, process: "filament" | "pellet"): number {
    if (part.toolPathsReady.includes(process)) return -1;
    const key = JSON.stringify([part.id, process]);
    const known = this.engineeringIndex.get(key);
    if (known !== undefined) return known;
    const cost = this.input.costing.engineeringCost(process, toolPathFactor(part, process));
    if (cost === 0) return -1;
    const index = this.engineering.length;
    this.engineering.push({ partId: part.id, process, cost });
    this.engineeringIndex.set(key, index);
    return index;
  }
}

function mostWanted(orders: readonly Order[]): Map<string, number> {
  const most = new Map<string, number>();
  for (const { partId, quantity } of orders) most.set(partId, Math.max(most.get(partId) ?? 0, quantity));
  return most;
}

function leastMinPerCopy(route: ClassRoute): number {
  let least = Infinity;
  for (let copies = route.route.copiesMin; copies < route.runMinByCopies.length; copies++) {
    least = Math.min(least, (route.runMinByCopies[copies] ?? Infinity) / copies);
  }
  return least;
}

/** Minutes in segments within so many minutes of the first one's start. */
function openFor(segments: readonly Stretch[], lengthMin: number): number {
  const untilMin = (segments[0]?.startMin ?? 0) + lengthMin;
  let open = 0;
  for (const { startMin, endMin } of segments) open += Math.max(0, Math.min(endMin, untilMin) - startMin);
  return open;
}

const LEAST_COUNTED_MIN = 7 * MIN_PER_DAY;

/** Where no machine refuses a part, none was asked, or none has time. */
const NO_MACHINE: UnplannedReason = {
  code: "no-machine",
  sentence:
    "No machine that could make it can be used in staffed time: look at the machines, their feedstocks and calendars.",
};

function afterHorizon(order: Order, { timeZone }: Shop, fromMin: number): UnplannedReason {
  const year = localTime(fromMin, timeZone).date.slice(0, 4);
  const released = dateTimeText(localTime(minuteOf(order.releaseAt, timeZone), timeZone), year);
  return {
    code: "after-horizon",
    sentence: `Released on ${released}, after the planned days: it belongs to a later plan.`,
  };
}

function pinnedAway({ machineId, feedstockId }: NonNullable<Order["pinned"]>): UnplannedReason {
  const pins = [machineId && `machine ${machineId}`, feedstockId && `feedstock ${feedstockId}`];
  return {
    code: "pinned",
    sentence: `Pinned to ${pins.filter(Boolean).join(" and ")}, where it cannot be made: take the pin off, or see the reasons that follow.`,
  };
}

function tooMany(order: Order, planned: number): UnplannedReason {
  return {
    code: "more-than-capacity",
    sentence: `${order.quantity} copies ordered: even if every machine made nothing else, only ${planned} could be made in twice the planned days (at least a week).`,
  };
}

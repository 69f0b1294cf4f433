import type { BuildCosting } from "../../cost/build-cost.ts";
import { makeRouteFinder } from "../../cost/rank-ways.ts";
import type { RouteFinder } from "../../cost/rank-ways.ts";
import { runMin } from "../../estimate/print-time.ts";
import type { Route, RouteReason } from "../../estimate/route.ts";
import type { Machine } from "../../shop/machine.ts";
import type { Part } from "../../shop/part.ts";
import type { Shop } from "../../shop/shop.ts";
import type { ClassTimes } from "./class-times.ts";
import type { UnplannedReason } from "../plan-document.ts";
import type { StateNumbers } from "./set-up-states.ts";

/** One route of a part on one class of machines, with the tables that every order line of the part shares. */
export interface ClassRoute {
  readonly classIndex: number;
  readonly stateIndex: number;
  readonly mixKey: number;
  readonly route: Route;
  /** whole minutes by copies, up to the most copies that fit the platform and the calendar */
  readonly runMinByCopies: Float64Array;
  /** money by copies */
  readonly costByCopies: Float64Array;
}

/** All routes of one part, and the reasons of every class that has none. */
export interface PartRoutes {
  readonly routes: readonly ClassRoute[];
  readonly refusals: readonly UnplannedReason[];
}

export interface OptionFinderInput {
  readonly shop: Shop;
  readonly costing: BuildCosting;
  readonly numbers: StateNumbers;
  readonly times: ClassTimes;
  readonly groups: readonly (readonly number[])[];
}

/** Finds the routes of parts, once for each part. */
export class OptionFinder {
  private readonly known = new Map<string, PartRoutes>();
  private readonly mixKeys = new Map<string, number>();
  private readonly longestMin: readonly number[];
  private readonly input: OptionFinderInput;
  private readonly findRoutes: RouteFinder;

  constructor(input: OptionFinderInput) {
    this.input = input;
    this.findRoutes = makeRouteFinder(input.shop, input.costing);
    this.longestMin = input.times.classes.map(({ machineIndices }) =>
      longestSegmentMin(input.times, machineIndices),
    );
  }

  /** Routes of a part for builds of up to `copies` copies; later calls must not ask for more than the first. */
  routesOf(part: Part, copies: number): PartRoutes {
    const known = this.known.get(part.id);
    if (known) return known;
    const routes: ClassRoute[] = [];
    const refusals: UnplannedReason[] = [];
    this.input.groups.forEach((group, classIndex) => {
      const machine = this.machineOf(group);
      const answers = this.findRoutes(part, machine, this.input.shop.feedstocks);
      const reasons: (readonly RouteReason[])[] = [];
      for (const answer of answers) {
        if (answer.status === "refused") reasons.push(answer.reasons);
        else this.take(routes, refusals, { classIndex, machine, route: answer.route, copies });
      }
      if (!routes.some((route) => route.classIndex === classIndex))
        refusals.push(...refusal(machine, reasons));
    });
    const found = { routes, refusals };
    this.known.set(part.id, found);
    return found;
  }

  private take(
    routes: ClassRoute[],
    refusals: UnplannedReason[],
    found: { classIndex: number; machine: Machine; route: Route; copies: number },
  ): void {
    const { classIndex, machine, route } = found;
    const longestMin = this.longestMin[classIndex] ?? 0;
    const most = mostCopies(route, Math.min(route.copiesMax, found.copies), longestMin);
    if (most < route.copiesMin) {
      refusals.push(tooLong(machine, route, longestMin));
      return;
    }
    const tables = this.tables(machine, route, most);
    if (!tables.costByCopies.every(Number.isFinite)) {
      refusals.push(hopeless(machine, route));
      return;
    }
    routes.push({
      classIndex,
      stateIndex: this.input.numbers.of(route),
      mixKey: this.mixKey(classIndex, machine, route),
      route,
      ...tables,
    });
  }

  private tables(machine: Machine, route: Route, most: number) {
    const runMinByCopies = new Float64Array(most + 1);
    const costByCopies = new Float64Array(most + 1);
    for (let copies = 1; copies <= most; copies++) {
      const items = [{ route, copies }];
      const minutes = runMin(items);
      runMinByCopies[copies] = minutes;
      costByCopies[copies] = this.input.costing.amounts(items, machine, minutes).total;
    }
    return { runMinByCopies, costByCopies };
  }

  private mixKey(classIndex: number, machine: Machine, route: Route): number {
    if (!machine.mixedPlatform) return -1;
    const { feedstockId, nozzleId, layerHeightMm, beadWidthMm, orientation } = route;
    const key = JSON.stringify([classIndex, feedstockId, nozzleId, layerHeightMm, beadWidthMm, orientation]);
    const known = this.mixKeys.get(key) ?? this.mixKeys.size;
    this.mixKeys.set(key, known);
    return known;
  }

  private machineOf(group: readonly number[]): Machine {
    const machine = this.input.shop.machines[group[0] ?? -1];
    if (!machine) throw new RangeError("a class without machines");
    return machine;
  }
}

/** Longest stretch in which one print may run on any of these machines, min. */
function longestSegmentMin(times: ClassTimes, machineIndices: readonly number[]): number {
  let longest = 0;
  for (const index of machineIndices) {
    for (const segment of times.machines[index]?.segments ?? []) {
      longest = Math.max(longest, segment.endMin - segment.startMin);
    }
  }
  return longest;
}

/** Most copies whose run fits the longest stretch; the run time grows with the copies, so halving finds it. */
function mostCopies(route: Route, limit: number, longestMin: number): number {
  let fits = 0;
  let tooMany = limit + 1;
  while (tooMany - fits > 1) {
    const middle = Math.floor((fits + tooMany) / 2);
    if (runMin([{ route, copies: middle }]) <= longestMin) fits = middle;
    else tooMany = middle;
  }
  return fits;
}

function tooLong(machine: Machine, route: Route, longestMin: number): UnplannedReason {
  const neededMin = runMin([{ route, copies: route.copiesMin }]);
  const allowed =
    longestMin === 0
      ? "it has no staffed time at all"
      : `it may run at most ${hours(longestMin)} h at a stretch`;
  return {
    code: "run-too-long",
    sentence: `${machine.name} with ${route.feedstockId}: one build takes ${hours(neededMin)} h, ${allowed}.`,
  };
}

/** So many failures that no attempt would ever succeed: the expected cost is beyond any number. */
function hopeless(machine: Machine, route: Route): UnplannedReason {
  return {
    code: "never-succeeds",
    sentence: `${machine.name} with ${route.feedstockId}: at ${machine.failuresPer1000H} failures in 1000 h so long a build would never succeed.`,
  };
}

function hours(minutes: number): string {
  return (minutes / 60).toFixed(1);
}

/** The answer that came closest (fewest reasons) speaks for a class. */
function refusal(machine: Machine, answers: readonly (readonly RouteReason[])[]): UnplannedReason[] {
  if (answers.length === 0) {
    return [{ code: "form", sentence: `${machine.name}: the shop has no ${machine.process} feedstock.` }];
  }
  const closest = answers.reduce((best, reasons) => (reasons.length < best.length ? reasons : best));
  return closest.map((reason) => ({ code: reason.code, sentence: `${machine.name}: ${reason.sentence}` }));
}

import { runMin } from "../estimate/print-time.ts";
import type { RouteCopies } from "../estimate/print-time.ts";
import type { Machine, Process } from "../shop/machine.ts";
import type { Shop } from "../shop/shop.ts";
import { buildLines } from "./build-lines.ts";
import type { OrderCopies } from "./build-lines.ts";
import { changeoverBetween, changeoverCost } from "./changeover-cost.ts";
import type { LoadedState } from "./changeover-cost.ts";
import { changeoverLines } from "./changeover-lines.ts";
import type { CostLine } from "./cost-line.ts";
import { engineeringCost } from "./engineering-cost.ts";
import { engineeringLines } from "./engineering-lines.ts";
import type { EngineeringUser } from "./engineering-lines.ts";
import { expectedFailureCost, hazardPerH } from "./expected-failure-cost.ts";
import { labourCost, operatorMin } from "./labour-cost.ts";
import { overheadCost } from "./overhead-cost.ts";
import { itemFeedstockCost, openPriceBook } from "./price-book.ts";
import type { PriceBook } from "./price-book.ts";
import { timeCost } from "./time-cost.ts";

/** Money of one build by kind, in major units, unrounded: without changeover, engineering and lateness. */
export interface BuildAmounts {
  readonly feedstock: number;
  readonly machine: number;
  readonly labour: number;
  readonly finishing: number;
  readonly expectedFailure: number;
  readonly overhead: number;
  readonly total: number;
}

/** One changeover and what it costs, overhead included. */
export interface ChangeoverAmounts {
  readonly minutes: number;
  /** new feedstock purged, kg */
  readonly purgeKg: number;
  readonly cost: number;
}

/** All costing of builds of one shop: plain numbers for the search, cost lines for people, both of the same formulas. */
export interface BuildCosting {
  /** `minutes`: what `runMin` gave for the same items, where the caller has it already */
  readonly amounts: (items: readonly RouteCopies[], machine: Machine, minutes?: number) => BuildAmounts;
  /** lines by order that add up to `amounts(...).total`; orders that share a build share it by deposition time */
  readonly lines: (items: readonly OrderCopies[], machine: Machine, buildId: string) => CostLine[];
  readonly changeoverAmounts: (
    machine: Machine,
    from: LoadedState | null,
    to: LoadedState,
  ) => ChangeoverAmounts;
  /** lines by order of the changeover before a build, overhead included; none where nothing changes */
  readonly changeoverLines: (
    items: readonly OrderCopies[],
    machine: Machine,
    from: LoadedState | null,
    buildId: string,
  ) => CostLine[];
  /** tool paths of one new part for one process, overhead included; `factor` times the hours where they are hard (1) */
  readonly engineeringCost: (process: Process, factor?: number) => number;
  /** lines of one new part's tool paths, overhead included, shared by copies among the orders that use them */
  readonly engineeringLines: (
    users: readonly EngineeringUser[],
    process: Process,
    factor?: number,
  ) => CostLine[];
}

/**
 * Opens the costing of a shop. Example: 2 copies in a run of 134 min on a machine at 6 per h with 10 min set-up and 5 min
 * unload, labour 36 per h, 0.02 kg a copy at 21 per kg, finishing 3.6 a copy, overhead 10 %: feedstock 0.84,
 * machine 14.9, labour 9, finishing 7.2, overhead 3.194, total 35.134.
 */
export function makeBuildCosting(shop: Shop): BuildCosting {
  const book = openPriceBook(shop);
  const changeover = (machine: Machine, from: LoadedState | null, to: LoadedState): ChangeoverAmounts =>
    changeoverAmounts(book, machine, from, to);
  return {
    amounts: (items, machine, minutes = runMin(items)) => buildAmounts(book, items, machine, minutes),
    lines: (items, machine, buildId) => buildLines(book, items, machine, buildId),
    changeoverAmounts: changeover,
    changeoverLines: (items, machine, from, buildId) => changeoverLines(book, items, machine, from, buildId),
    engineeringCost: (process, factor = 1) =>
      withOverhead(book, engineeringCost(process, book.costing, factor)),
    engineeringLines: (users, process, factor = 1) => engineeringLines(book, users, process, factor),
  };
}

function buildAmounts(
  book: PriceBook,
  items: readonly RouteCopies[],
  machine: Machine,
  minutes: number,
): BuildAmounts {
  const machinePerH = book.machinePerH(machine);
  let feedstock = 0;
  let finishing = 0;
  for (const item of items) {
    feedstock += itemFeedstockCost(book, item);
    finishing += item.copies * book.finishingPerCopy(item.route.partId);
  }
  const machineTime = timeCost(minutes + operatorMin(machine), machinePerH);
  const labour = labourCost(machine, book.costing);
  const expectedFailure = expectedFailureCost({
    hazardPerH: hazardPerH(machine.failuresPer1000H),
    runMin: minutes,
    operatorMin: operatorMin(machine),
    machinePerH,
    labourPerH: book.costing.labourPerH,
    feedstockCost: feedstock,
  });
  const making = feedstock + machineTime + labour + finishing + expectedFailure;
  const overhead = overheadCost(making, book.costing);
  return {
    feedstock,
    machine: machineTime,
    labour,
    finishing,
    expectedFailure,
    overhead,
    total: making + overhead,
  };
}

function changeoverAmounts(
  book: PriceBook,
  machine: Machine,
  from: LoadedState | null,
  to: LoadedState,
): ChangeoverAmounts {
  const changeover = changeoverBetween(machine, from, to, (id) => book.feedstock(id).family);
  const rates = { machinePerH: book.machinePerH(machine), labourPerH: book.costing.labourPerH };
  const cost = changeoverCost(changeover, rates, book.feedstock(to.feedstockId));
  return { ...changeover, cost: withOverhead(book, cost) };
}

function withOverhead(book: PriceBook, makingCost: number): number {
  return makingCost + overheadCost(makingCost, book.costing);
}

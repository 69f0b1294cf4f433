import { runMin } from "../estimate/print-time.ts";
import type { RouteCopies } from "../estimate/print-time.ts";
import type { Machine } from "../shop/machine.ts";
import { MIN_PER_H } from "../units/conversions.ts";
import { buildShares } from "./build-shares.ts";
import type { CostInput, CostLine } from "./cost-line.ts";
import { expectedFailureCost, expectedFailures, hazardPerH, lostShare } from "./expected-failure-cost.ts";
import { operatorMin } from "./labour-cost.ts";
import { overheadLine } from "./overhead-line.ts";
import type { LineOwner } from "./overhead-line.ts";
import { itemFeedstockCost } from "./price-book.ts";
import type { PriceBook } from "./price-book.ts";
import { timeCost } from "./time-cost.ts";

/** Copies of one order in a build. */
export interface OrderCopies extends RouteCopies {
  readonly orderId: string;
}

/** What one item's lines are made of. */
interface LineSource {
  readonly book: PriceBook;
  readonly machine: Machine;
  readonly item: OrderCopies;
  /** the item's share of the build by deposition time */
  readonly share: number;
  readonly runMin: number;
  readonly feedstockCost: number;
  readonly owner: LineOwner;
}

/**
 * Cost lines of one build by order: feedstock and finishing of its own copies; machine, labour and expected failure by its
 * share of deposition time; overhead on them. Lines of nothing are left out. They add up to the build's amounts.
 * Example: the build of `makeBuildCosting` gives the lines 0.84, 14.9, 9, 7.2 and 3.194.
 */
export function buildLines(
  book: PriceBook,
  items: readonly OrderCopies[],
  machine: Machine,
  buildId: string,
): CostLine[] {
  const shares = buildShares(items);
  const minutes = runMin(items);
  return items.flatMap((item, index) =>
    itemLines({
      book,
      machine,
      item,
      share: shares[index] ?? 0,
      runMin: minutes,
      feedstockCost: itemFeedstockCost(book, item),
      owner: {
        orderId: item.orderId,
        machineId: machine.id,
        feedstockId: item.route.feedstockId,
        buildId,
      },
    }),
  );
}

function itemLines(source: LineSource): CostLine[] {
  const making = [
    feedstockLine(source),
    machineLine(source),
    labourLine(source),
    finishingLine(source),
    expectedFailureLine(source),
  ].filter((line) => line.amount !== 0);
  return [...making, ...overheadLine(source.book, making, source.owner)];
}

function feedstockLine({ book, item, feedstockCost, owner }: LineSource): CostLine {
  const feedstock = book.feedstock(item.route.feedstockId);
  return {
    kind: "feedstock",
    amount: feedstockCost,
    formula: "copies x mass of one copy x price x (1 + waste)",
    inputs: [
      { name: "copies", value: item.copies, unit: "copies" },
      { name: "mass of one copy", value: item.route.massKgPerCopy, unit: "kg" },
      { name: "price", value: feedstock.pricePerKg ?? 0, unit: `${book.currency}/kg` },
      { name: "waste", value: feedstock.wastePct, unit: "%" },
    ],
    ...owner,
  };
}

function machineLine(source: LineSource): CostLine {
  const { book, machine } = source;
  const perH = book.machinePerH(machine);
  return {
    kind: "machine",
    amount: source.share * timeCost(source.runMin + operatorMin(machine), perH),
    formula: "share of build x (set-up + run + unload) x machine-hour rate",
    inputs: [
      shareInput(source),
      { name: "set-up", value: machine.setUpMin, unit: "min" },
      { name: "run", value: source.runMin, unit: "min" },
      { name: "unload", value: machine.unloadMin, unit: "min" },
      { name: "machine-hour rate", value: perH, unit: `${book.currency}/h` },
    ],
    ...source.owner,
  };
}

function labourLine(source: LineSource): CostLine {
  const { book, machine } = source;
  return {
    kind: "labour",
    amount: source.share * timeCost(operatorMin(machine), book.costing.labourPerH),
    formula: "share of build x (set-up + unload) x labour rate",
    inputs: [
      shareInput(source),
      { name: "set-up", value: machine.setUpMin, unit: "min" },
      { name: "unload", value: machine.unloadMin, unit: "min" },
      { name: "labour rate", value: book.costing.labourPerH, unit: `${book.currency}/h` },
    ],
    ...source.owner,
  };
}

function finishingLine({ book, item, owner }: LineSource): CostLine {
  const { labourMin, machiningMin, machiningPerH } = book.part(item.route.partId).finishing;
  return {
    kind: "finishing",
    amount: item.copies * book.finishingPerCopy(item.route.partId),
    formula: "copies x (labour x labour rate + machining x machining rate)",
    inputs: [
      { name: "copies", value: item.copies, unit: "copies" },
      { name: "labour", value: labourMin, unit: "min" },
      { name: "labour rate", value: book.costing.labourPerH, unit: `${book.currency}/h` },
      { name: "machining", value: machiningMin, unit: "min" },
      { name: "machining rate", value: machiningPerH, unit: `${book.currency}/h` },
    ],
    ...owner,
  };
}

/** Time and operators lost are shared as the build is; scrap is each order's own feedstock. */
function expectedFailureLine(source: LineSource): CostLine {
  const { book, machine } = source;
  const hazard = hazardPerH(machine.failuresPer1000H);
  const lost = lostShare(hazard, source.runMin / MIN_PER_H);
  const timeLost = expectedFailureCost({
    hazardPerH: hazard,
    runMin: source.runMin,
    operatorMin: operatorMin(machine),
    machinePerH: book.machinePerH(machine),
    labourPerH: book.costing.labourPerH,
    feedstockCost: 0,
  });
  return {
    kind: "expectedFailure",
    amount: source.share * timeLost + lost * source.feedstockCost,
    formula:
      "share of build x (lost share x run x machine-hour rate + failed attempts x set-up and unload x (machine-hour rate + labour rate)) + lost share x feedstock",
    inputs: failureInputs(source, hazard),
    ...source.owner,
  };
}

function failureInputs(source: LineSource, hazard: number): CostInput[] {
  const { book, machine } = source;
  const runH = source.runMin / MIN_PER_H;
  return [
    shareInput(source),
    { name: "failures in 1000 h", value: machine.failuresPer1000H, unit: "failures" },
    { name: "failed attempts", value: expectedFailures(hazard, runH), unit: "attempts" },
    { name: "lost share", value: lostShare(hazard, runH), unit: "of one run" },
    { name: "run", value: source.runMin, unit: "min" },
    { name: "set-up and unload", value: operatorMin(machine), unit: "min" },
    { name: "machine-hour rate", value: book.machinePerH(machine), unit: `${book.currency}/h` },
    { name: "labour rate", value: book.costing.labourPerH, unit: `${book.currency}/h` },
    { name: "feedstock", value: source.feedstockCost, unit: book.currency },
  ];
}

function shareInput(source: LineSource): CostInput {
  return { name: "share of build", value: source.share, unit: "by deposition time" };
}

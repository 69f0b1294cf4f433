import type { Machine } from "../shop/machine.ts";
import type { OrderCopies } from "./build-lines.ts";
import { buildShares } from "./build-shares.ts";
import { changeoverBetween, changeoverCost } from "./changeover-cost.ts";
import type { Changeover, LoadedState } from "./changeover-cost.ts";
import type { CostInput, CostLine } from "./cost-line.ts";
import { overheadLine } from "./overhead-line.ts";
import type { PriceBook } from "./price-book.ts";

/**
 * Cost lines of the changeover before a build, by order, shared by deposition time, each with its overhead. They belong to
 * the build that needed the change. Example: a change of 15.05 before a build of two orders with shares 3/4 and 1/4 gives
 * 11.2875 and 3.7625, and overhead on each.
 */
export function changeoverLines(
  book: PriceBook,
  items: readonly OrderCopies[],
  machine: Machine,
  from: LoadedState | null,
  buildId: string,
): CostLine[] {
  const to = items[0]?.route;
  if (!to) throw new RangeError("a build with no items has no changeover");
  const changeover = changeoverBetween(machine, from, to, (id) => book.feedstock(id).family);
  const rates = { machinePerH: book.machinePerH(machine), labourPerH: book.costing.labourPerH };
  const cost = changeoverCost(changeover, rates, book.feedstock(to.feedstockId));
  if (cost === 0) return [];
  const shares = buildShares(items);
  return items.flatMap((item, index) => {
    const share = shares[index] ?? 0;
    const owner = { orderId: item.orderId, machineId: machine.id, feedstockId: to.feedstockId, buildId };
    const line: CostLine = {
      kind: "changeover",
      amount: share * cost,
      formula:
        "share of build x (changeover x (machine-hour rate + labour rate) + purge x price x (1 + waste))",
      inputs: changeoverInputs(book, machine, share, changeover, to.feedstockId),
      ...owner,
    };
    return [line, ...overheadLine(book, [line], owner)];
  });
}

function changeoverInputs(
  book: PriceBook,
  machine: Machine,
  share: number,
  changeover: Changeover,
  feedstockId: string,
): CostInput[] {
  const feedstock = book.feedstock(feedstockId);
  return [
    { name: "share of build", value: share, unit: "by deposition time" },
    { name: "changeover", value: changeover.minutes, unit: "min" },
    { name: "machine-hour rate", value: book.machinePerH(machine), unit: `${book.currency}/h` },
    { name: "labour rate", value: book.costing.labourPerH, unit: `${book.currency}/h` },
    { name: "purge", value: changeover.purgeKg, unit: "kg" },
    { name: "price", value: feedstock.pricePerKg ?? 0, unit: `${book.currency}/kg` },
    { name: "waste", value: feedstock.wastePct, unit: "%" },
  ];
}

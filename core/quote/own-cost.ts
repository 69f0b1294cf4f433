import type { Shop } from "../shop/shop.ts";
import type { QuoteLineRequest } from "./quote-order.ts";
import { cheapestWayFor, type Way, waysToMake } from "./ways-to-make.ts";

/** What a line costs by itself, whatever else the shop makes. */
export interface OwnCost {
  /** cheapest way; null: it is bought, or cannot be made */
  readonly way: Way | null;
  /** all copies with tool paths and first set-up, currency; null: it can neither be made nor bought */
  readonly cost: number | null;
  /** tool paths and first set-up in it */
  readonly oneOff: number;
}

/**
 * Cost of a line by itself: made the cheapest way that its pins allow, or bought where that is cheaper or the only way.
 * Example: made for 82 or bought for 4 x 18: bought, 72.
 */
export function ownCostOf(
  shop: Shop,
  line: Pick<QuoteLineRequest, "partId" | "quantity" | "machineId" | "feedstockId">,
): OwnCost {
  const { partId, quantity, machineId, feedstockId } = line;
  const all = waysToMake(shop, partId, [quantity]);
  const ways = all.ways.filter(
    (way) =>
      (machineId === undefined || way.machineIds.includes(machineId)) &&
      (feedstockId === undefined || way.feedstockId === feedstockId),
  );
  const made = cheapestWayFor({ ...all, ways }, quantity);
  const bought = all.buyOut && quantity >= 1 ? all.buyOut.pricePerPiece * quantity : null;
  const cost = made ? made.cost.costPerCopy * quantity : null;
  if (made && cost !== null && (bought === null || cost <= bought)) {
    return { way: made.way, cost, oneOff: made.way.first.engineering + made.way.first.setUp };
  }
  return { way: null, cost: bought, oneOff: 0 };
}

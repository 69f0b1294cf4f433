import type { Shop } from "../shop/shop.ts";
import type { QuoteLineRequest } from "./quote-order.ts";
import { type Way, waysToMake } from "./ways-to-make.ts";

/** What a line costs by itself, whatever else the shop makes. */
export interface OwnCost {
  /** cheapest way; null: it is bought, or cannot be made */
  readonly way: Way | null;
  /** all copies with tool paths and first set-up, currency; null: it can neither be made nor bought */
  readonly cost: number | null;
  /** tool paths and first set-up in it */
  readonly oneOff: number;
  /** line of the same request that its tool paths are charged with; null: they are in its own cost, or it needs none */
  readonly toolPathsWith: string | null;
}

type LineOfPart = Pick<QuoteLineRequest, "id" | "partId" | "quantity" | "machineId" | "feedstockId">;

/**
 * Cost of each line of a request by itself. Tool paths of a part for a process are made once: they are charged with the first
 * line that needs them, and the lines after it have them for nothing.
 * Example: two lines of one new part, tool paths 60, copies for 20 and 30 and no first set-up: 80 and 30, not 80 and 90.
 */
export function ownCosts(shop: Shop, lines: readonly LineOfPart[]): OwnCost[] {
  const chargedWith = new Map<string, string>();
  return lines.map((line) => {
    const keyOf = ({ process }: Way): string => JSON.stringify([line.partId, process]);
    const own = ownCostOf(shop, line, (way) => chargedWith.get(keyOf(way)) ?? null);
    const { way } = own;
    if (way && way.first.engineering > 0 && own.toolPathsWith === null) chargedWith.set(keyOf(way), line.id);
    return own;
  });
}

/**
 * Cost of a line by itself: made the cheapest way that its pins allow, or bought where that is cheaper or the only way.
 * `chargedWith` names the line that a way's tool paths are charged with already. Example: made for 82 or bought for 4 x 18:
 * bought, 72.
 */
export function ownCostOf(
  shop: Shop,
  line: Omit<LineOfPart, "id">,
  chargedWith: (way: Way) => string | null = () => null,
): OwnCost {
  const { partId, quantity, machineId, feedstockId } = line;
  const { ways, buyOut } = waysToMake(shop, partId, [quantity]);
  const made = ways
    .filter(
      (way) =>
        (machineId === undefined || way.machineIds.includes(machineId)) &&
        (feedstockId === undefined || way.feedstockId === feedstockId),
    )
    .flatMap((way) => madeBy(way, quantity, chargedWith(way)) ?? [])
    .toSorted((a, b) => a.cost - b.cost)[0];
  const bought = buyOut && quantity >= 1 ? buyOut.pricePerPiece * quantity : null;
  if (made && (bought === null || made.cost <= bought)) return made;
  return { way: null, cost: bought, oneOff: 0, toolPathsWith: null };
}

function madeBy(way: Way, quantity: number, chargedWith: string | null): (OwnCost & { cost: number }) | null {
  const [atQuantity] = way.costs;
  if (!atQuantity) return null;
  const { engineering, setUp } = way.first;
  const toolPathsWith = engineering > 0 ? chargedWith : null;
  const free = toolPathsWith === null ? 0 : engineering;
  const cost = atQuantity.costPerCopy * quantity - free;
  return { way, cost, oneOff: engineering + setUp - free, toolPathsWith };
}

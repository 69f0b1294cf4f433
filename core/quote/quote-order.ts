import type { Order } from "../shop/order.ts";
import type { Shop } from "../shop/shop.ts";

/** One line that a quote is asked for, as if it were ordered. */
export interface QuoteLineRequest {
  /** id that its order would have; unlike all orders of the shop */
  readonly id: string;
  readonly partId: string;
  readonly quantity: number;
  /** date that the customer wants, epoch minute; null: none, as soon as others are not hurt */
  readonly wantedMin: number | null;
  /** false: only a date that holds is of use */
  readonly allowLate: boolean;
  /** what being late by a day costs; left out: as the shop has it */
  readonly lateCostPerDay?: number;
  readonly machineId?: string;
  readonly feedstockId?: string;
}

/** The shop with one more order of a part, so that the part is made as for that quantity. */
export function withOrderOf(shop: Shop, partId: string, quantity: number): Shop {
  const order: Order = { ...PLAIN, id: "asked", partId, quantity, releaseAt: LONG_AGO, dueAt: LONG_AGO };
  return { ...shop, orders: [...shop.orders, order] };
}

/**
 * A line asked for as an order: released at `fromAt` and due at `dueAt`, both instants. It may be late here: whether it must not
 * be is judged when its date is known. Example: a line pinned to machine B1 gives an order pinned to B1.
 */
export function orderOf(line: QuoteLineRequest, fromAt: string, dueAt: string): Order {
  const { machineId, feedstockId, lateCostPerDay } = line;
  const isPinned = machineId !== undefined || feedstockId !== undefined;
  const pinned = {
    ...(machineId === undefined ? {} : { machineId }),
    ...(feedstockId === undefined ? {} : { feedstockId }),
  };
  return {
    ...PLAIN,
    id: line.id,
    partId: line.partId,
    quantity: line.quantity,
    releaseAt: fromAt,
    dueAt,
    ...(lateCostPerDay === undefined ? {} : { lateCostPerDay }),
    ...(isPinned ? { pinned } : {}),
  };
}

const LONG_AGO = "2001-01-01T00:00";
const PLAIN = { customer: "", allowLate: true, perPiece: false, note: "" };

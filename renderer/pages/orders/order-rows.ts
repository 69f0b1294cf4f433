import { instantOf, minuteOf } from "../../../core/shop/instants.ts";
import type { Order } from "../../../core/shop/order.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { MIN_PER_DAY } from "../../../core/units/conversions.ts";
import { nextId } from "../../store/next-id.ts";
import { usualStart } from "../../store/usual-start.ts";
import { NO_PART } from "./order-fields.ts";

const USUAL_DAYS = 7;
const FIRST_ID = "O-000";

/** A line that is still to be filled: dates of the line it stands below, else from now for a week. */
export function newOrder(
  shop: Shop,
  like: Order | undefined,
  taken: ReadonlySet<string>,
  nowMs: number,
): Order {
  const start = usualStart(shop, false, nowMs);
  const due = instantOf(minuteOf(start, shop.timeZone) + USUAL_DAYS * MIN_PER_DAY, shop.timeZone);
  return {
    id: nextId(like?.id ?? FIRST_ID, taken),
    customer: "",
    partId: NO_PART,
    quantity: 1,
    releaseAt: like?.releaseAt ?? start,
    dueAt: like?.dueAt ?? due,
    allowLate: true,
    perPiece: false,
    note: "",
  };
}

/** The same line under an id of its own. */
export function copyOrder(order: Order, taken: ReadonlySet<string>): Order {
  return { ...order, id: nextId(order.id, taken) };
}

import { checkBuilds } from "./check-builds.ts";
import { checkCalendars } from "./check-calendars.ts";
import { checkFeedstocks } from "./check-feedstocks.ts";
import { checkMachines } from "./check-machines.ts";
import { checkOrders } from "./check-orders.ts";
import { checkParts } from "./check-parts.ts";
import { checkQuotes } from "./check-quotes.ts";
import { checkWhole } from "./check-whole.ts";
import { errorsFirst, type Finding } from "./finding.ts";
import type { Shop } from "./shop.ts";
import { indexShop } from "./shop-index.ts";

/**
 * Everything about a shop that somebody should know before planning, one sentence each: errors first, then in the order of
 * the document. An error about one entry means that the rest can be planned without it (see `usableShop`).
 * Example: an order for a part that is not there gives one error at "orders/O-17/partId".
 */
export function checkShop(shop: Shop): Finding[] {
  const index = indexShop(shop);
  return errorsFirst([
    ...checkWhole(shop),
    ...checkCalendars(index),
    ...checkMachines(index),
    ...checkFeedstocks(index),
    ...checkParts(index),
    ...checkOrders(index),
    ...checkBuilds(index),
    ...checkQuotes(index),
  ]);
}

import { copiesInBuilds } from "./build-copies.ts";
import { instantFindings } from "./check-instant.ts";
import { about, type EntryFindings, type Finding } from "./finding.ts";
import type { Order } from "./order.ts";
import { minuteOrNull, type ShopIndex } from "./shop-index.ts";

/** Findings about order lines: references, pins, dates, quantities, copies already made. */
export function checkOrders(index: ShopIndex): Finding[] {
  const farMin = usualDateMin(index) + MOST_YEARS * MIN_PER_YEAR;
  const made = copiesInBuilds(index.shop.builds);
  return index.shop.orders.flatMap((order) => {
    const say = about("orders", order.id);
    return [
      ...partFindings(say, order, index),
      ...pinFindings(say, order, index),
      ...instantFindings(say, "releaseAt", order.releaseAt, index.timeZone),
      ...instantFindings(say, "dueAt", order.dueAt, index.timeZone),
      ...dateFindings(say, order, index.timeZone, farMin),
      ...quantityFindings(say, order, made.get(order.id) ?? 0),
    ];
  });
}

const MOST_YEARS = 10;
const MIN_PER_YEAR = 365.25 * 1440;
const MANY_COPIES = 10_000;

/** The middle one of all dates of all orders: against it a slip in the year stands out. */
function usualDateMin({ shop, timeZone }: ShopIndex): number {
  const minutes = shop.orders
    .flatMap((order) => [minuteOrNull(order.releaseAt, timeZone), minuteOrNull(order.dueAt, timeZone)])
    .filter((minute) => minute !== null)
    .toSorted((a, b) => a - b);
  return minutes[(minutes.length - 1) >> 1] ?? Infinity;
}

function partFindings(say: EntryFindings, order: Order, { parts }: ShopIndex): Finding[] {
  if (parts.has(order.partId)) return [];
  return [
    say.error("partId", "unknown-part", `there is no part ${order.partId}; name one that exists or add it`),
  ];
}

function pinFindings(say: EntryFindings, { pinned }: Order, { machines, feedstocks }: ShopIndex): Finding[] {
  const { machineId, feedstockId } = pinned ?? {};
  const machine = machineId === undefined ? undefined : machines.get(machineId);
  const feedstock = feedstockId === undefined ? undefined : feedstocks.get(feedstockId);
  const findings: Finding[] = [];
  if (machineId !== undefined && !machine) {
    findings.push(
      say.error(
        "pinned/machineId",
        "unknown-machine",
        `it is pinned to machine ${machineId}, which does not exist; pin it to another or to none`,
      ),
    );
  }
  if (feedstockId !== undefined && !feedstock) {
    findings.push(
      say.error(
        "pinned/feedstockId",
        "unknown-feedstock",
        `it is pinned to feedstock ${feedstockId}, which does not exist; pin it to another or to none`,
      ),
    );
  }
  if (machine && feedstock && machine.process !== feedstock.form) {
    findings.push(
      say.error(
        "pinned",
        "wrong-form",
        `it is pinned to machine ${machine.id}, which takes ${machine.process}, and to ${feedstock.id}, which comes as ${feedstock.form}; take one pin away`,
      ),
    );
  }
  return findings;
}

function dateFindings(say: EntryFindings, order: Order, timeZone: string, farMin: number): Finding[] {
  const releaseMin = minuteOrNull(order.releaseAt, timeZone);
  const dueMin = minuteOrNull(order.dueAt, timeZone);
  if (releaseMin === null || dueMin === null) return [];
  if (dueMin < releaseMin) {
    return [
      say.error(
        "dueAt",
        "due-before-release",
        `it is due at ${order.dueAt}, before its release at ${order.releaseAt}; correct one`,
      ),
    ];
  }
  const far = releaseMin > farMin ? "releaseAt" : "dueAt";
  if (dueMin <= farMin) return [];
  return [
    say.warning(
      far,
      "far-future",
      `${far} ${order[far]} is more than ${MOST_YEARS} years after what the orders usually say; check the year`,
    ),
  ];
}

function quantityFindings(say: EntryFindings, order: Order, made: number): Finding[] {
  const findings: Finding[] = [];
  if (order.quantity > MANY_COPIES) {
    findings.push(
      say.warning(
        "quantity",
        "many-copies",
        `${order.quantity} copies are ordered; check the number, what does not fit into the days planned stays unplanned`,
      ),
    );
  }
  if (order.pricePerPiece === 0) {
    findings.push(
      say.warning(
        "pricePerPiece",
        "costs-nothing",
        "the agreed price of a copy is 0; enter it or leave it out",
      ),
    );
  }
  if (made > order.quantity) {
    findings.push(
      say.warning(
        "quantity",
        "more-than-ordered",
        `${order.quantity} copies are ordered, but ${made} are made or committed in builds; check both`,
      ),
    );
  } else if (made === order.quantity) {
    findings.push(
      say.warning(
        "quantity",
        "all-made",
        made === 1
          ? "its only copy is made or committed in a build; nothing of it is left to plan"
          : `all ${made} copies are made or committed in builds; nothing of it is left to plan`,
      ),
    );
  }
  return findings;
}

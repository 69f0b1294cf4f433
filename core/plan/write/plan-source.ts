import { makeBuildCosting } from "../../cost/build-cost.ts";
import type { BuildCosting } from "../../cost/build-cost.ts";
import { instantOf, minuteOf } from "../../shop/instants.ts";
import type { Feedstock } from "../../shop/feedstock.ts";
import type { Machine } from "../../shop/machine.ts";
import type { Order } from "../../shop/order.ts";
import type { Part } from "../../shop/part.ts";
import { localTime } from "../../shop/local-time.ts";
import type { Shop } from "../../shop/shop.ts";
import { dateTimeText } from "../../shop/time-words.ts";
import { remembered } from "../../units/remembered.ts";
import type { PlanProblem } from "../plan-problem.ts";
import type { Schedule } from "../schedule.ts";

/** What a plan document is written from, with its records by id. An id that the shop does not have throws. */
export interface PlanSource {
  readonly shop: Shop;
  readonly problem: PlanProblem;
  readonly schedule: Schedule;
  readonly costing: BuildCosting;
  readonly machine: (id: string) => Machine;
  readonly feedstock: (id: string) => Feedstock;
  readonly part: (id: string) => Part;
  readonly order: (id: string) => Order;
  /** epoch minute of an instant in the works' zone */
  readonly minute: (instant: string) => number;
  /** instant of an epoch minute, with the works' offset */
  readonly instant: (epochMin: number) => string;
  /** an epoch minute as a sentence says it: "Mon 7 Dec 15:07", with the year where it is not that of the plan's start */
  readonly when: (epochMin: number) => string;
}

/** Opens a shop, its problem and a schedule for writing. */
export function openPlanSource(shop: Shop, problem: PlanProblem, schedule: Schedule): PlanSource {
  const { timeZone } = shop;
  const year = localTime(problem.startMin, timeZone).date.slice(0, 4);
  return {
    shop,
    problem,
    schedule,
    costing: makeBuildCosting(shop),
    machine: byId(shop.machines, "machine"),
    feedstock: byId(shop.feedstocks, "feedstock"),
    part: byId(shop.parts, "part"),
    order: byId(shop.orders, "order"),
    minute: remembered((instant: string) => minuteOf(instant, timeZone)),
    instant: (epochMin) => instantOf(epochMin, timeZone),
    when: (epochMin) => dateTimeText(localTime(epochMin, timeZone), year),
  };
}

function byId<Entry extends { readonly id: string }>(
  list: readonly Entry[],
  kind: string,
): (id: string) => Entry {
  const entries = new Map(list.map((entry) => [entry.id, entry]));
  return (id) => {
    const entry = entries.get(id);
    if (!entry) throw new Error(`the shop has no ${kind} ${id}`);
    return entry;
  };
}

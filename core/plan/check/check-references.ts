import type { Finding } from "../../shop/finding.ts";
import type { Shop } from "../../shop/shop.ts";
import { broken } from "./check-source.ts";
import type { PlanDocument, PlannedBuild } from "../plan-document.ts";

/** Names every id in a plan that its shop does not have, ids that come twice, and a head that belongs to another shop. */
export function checkReferences(shop: Shop, plan: PlanDocument): Finding[] {
  return [
    ...checkHead(shop, plan),
    ...checkBuildIds(plan),
    ...checkBuilds(shop, plan),
    ...checkOrderIds(shop, plan),
  ];
}

function checkHead(shop: Shop, plan: PlanDocument): Finding[] {
  const pairs = [
    ["shopName", plan.shopName, shop.name],
    ["currency", plan.currency, shop.currency],
    ["timeZone", plan.timeZone, shop.timeZone],
  ] as const;
  return pairs
    .filter(([, planned, given]) => planned !== given)
    .map(([field, planned, given]) =>
      broken(
        "other-shop",
        [field],
        `The plan is for another shop: its ${field} is ${planned}, the shop's is ${given}.`,
      ),
    );
}

function checkBuildIds(plan: PlanDocument): Finding[] {
  const seen = new Set<string>();
  return plan.builds.flatMap(({ id }) => {
    if (!seen.has(id)) {
      seen.add(id);
      return [];
    }
    return [broken("duplicate-id", ["builds", id], `Build ${id} comes twice.`)];
  });
}

function checkBuilds(shop: Shop, plan: PlanDocument): Finding[] {
  const orders = new Set(shop.orders.map(({ id }) => id));
  return plan.builds.flatMap((build) => [...checkPlace(shop, build), ...checkItems(orders, build)]);
}

function checkPlace(shop: Shop, build: PlannedBuild): Finding[] {
  const where = ["builds", build.id];
  const machine = shop.machines.find(({ id }) => id === build.machineId);
  const findings: Finding[] = [];
  if (!machine) {
    findings.push(unknown([...where, "machineId"], `Build ${build.id} is on machine ${build.machineId}`));
  } else if (!machine.nozzles.some(({ id }) => id === build.nozzleId)) {
    findings.push(
      unknown([...where, "nozzleId"], `Build ${build.id} uses nozzle ${build.nozzleId} of ${machine.id}`),
    );
  }
  if (!shop.feedstocks.some(({ id }) => id === build.feedstockId)) {
    findings.push(
      unknown([...where, "feedstockId"], `Build ${build.id} uses feedstock ${build.feedstockId}`),
    );
  }
  return findings;
}

function checkItems(orders: ReadonlySet<string>, build: PlannedBuild): Finding[] {
  return build.items
    .filter(({ orderId }) => !orders.has(orderId))
    .map(({ orderId }) =>
      unknown(["builds", build.id, "items"], `Build ${build.id} makes copies of order ${orderId}`),
    );
}

/** Copies that are not planned may belong to an order that was set aside because its entry cannot be used. */
function checkOrderIds(shop: Shop, plan: PlanDocument): Finding[] {
  const orders = new Set(shop.orders.map(({ id }) => id));
  const setAside = new Set(
    plan.unplanned
      .filter(({ reasons }) => reasons.some(({ code }) => code === "set-aside"))
      .map(({ orderId }) => orderId),
  );
  const named = [
    ...plan.boughtOut.map(({ orderId }) => ["boughtOut", orderId] as const),
    ...plan.unplanned
      .filter(({ orderId }) => !setAside.has(orderId))
      .map(({ orderId }) => ["unplanned", orderId] as const),
    ...plan.orders.map(({ orderId }) => ["orders", orderId] as const),
  ];
  return named
    .filter(([, orderId]) => !orders.has(orderId))
    .map(([list, orderId]) => unknown([list, orderId], `The list ${list} names order ${orderId}`));
}

function unknown(where: readonly string[], sentence: string): Finding {
  return broken("unknown-id", where, `${sentence}, which the shop does not have.`);
}

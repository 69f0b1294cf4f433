import { expect, test } from "vitest";
import { makeBuildCosting } from "../../../core/cost/build-cost.ts";
import { aFeedstock, aMachine, aRoute, aShop } from "../../fixtures/a-route.ts";

const white = { feedstockId: "pla-white", nozzleId: "n04" };
const black = { feedstockId: "pla-black", nozzleId: "n04" };
const petg = { feedstockId: "petg-grey", nozzleId: "n04" };
const wide = (state: typeof white): typeof white => ({ ...state, nozzleId: "n08" });

const shop = aShop({
  feedstocks: [
    aFeedstock(),
    aFeedstock({ id: "pla-black", pricePerKg: 30, wastePct: 0 }),
    aFeedstock({ id: "petg-grey", family: "PETG", pricePerKg: 24, wastePct: 0 }),
    aFeedstock({ id: "unpriced", pricePerKg: null }),
  ],
});
const costing = makeBuildCosting(shop);
const machine = aMachine();

test.each([
  ["nothing changes", white, white, 0, 0],
  ["another grade of the family", white, black, 10, 0.05],
  ["another family", white, petg, 20, 0.05],
  ["another nozzle only: no purge", white, wide(white), 15, 0],
  ["another grade and nozzle", white, wide(black), 25, 0.05],
  ["another family and nozzle", white, wide(petg), 35, 0.05],
  ["from nothing loaded", null, wide(petg), 10, 0.05],
])("%s", (_name, from, to, minutes, purgeKg) => {
  const { minutes: taken, purgeKg: purged } = costing.changeoverAmounts(machine, from, to);
  expect(taken).toBe(minutes);
  expect(purged).toBe(purgeKg);
});

test("a changeover costs machine and operator time and the purge of the new feedstock, with overhead", () => {
  // 20 min at 6 + 36 per h is 14; 0.05 kg at 24 is 1.2; 10 % on it.
  expect(costing.changeoverAmounts(machine, white, petg).cost).toBeCloseTo(1.1 * 15.2, 12);
  expect(costing.changeoverAmounts(machine, petg, white).cost).toBeCloseTo(1.1 * (14 + 0.05 * 21), 12);
  expect(costing.changeoverAmounts(machine, white, white).cost).toBe(0);
});

test("a nozzle change asks for no price, a purge does", () => {
  const unpriced = { feedstockId: "unpriced", nozzleId: "n04" };
  expect(costing.changeoverAmounts(machine, unpriced, wide(unpriced)).cost).toBeCloseTo(1.1 * 10.5, 12);
  expect(() => costing.changeoverAmounts(machine, white, unpriced)).toThrow("no price");
});

test("the lines of a changeover are shared by deposition time and add up to its cost", () => {
  const items = [
    { route: aRoute(), copies: 1, orderId: "O-1" },
    { route: aRoute({ layerGroups: [{ count: 50, workS: 23 }] }), copies: 1, orderId: "O-2" },
  ];
  const lines = costing.changeoverLines(items, machine, petg, "B-1");
  const cost = costing.changeoverAmounts(machine, petg, white).cost;
  expect(lines.map((line) => line.kind)).toEqual(["changeover", "overhead", "changeover", "overhead"]);
  expect(lines.reduce((sum, line) => sum + line.amount, 0)).toBeCloseTo(cost, 12);
  expect((lines[0]?.amount ?? 0) / (lines[2]?.amount ?? 1)).toBeCloseTo(3, 9);
  expect(lines[0]).toMatchObject({
    orderId: "O-1",
    machineId: "F1",
    feedstockId: "pla-white",
    buildId: "B-1",
  });
});

test("no change makes no lines", () => {
  const items = [{ route: aRoute(), copies: 1, orderId: "O-1" }];
  expect(costing.changeoverLines(items, machine, white, "B-1")).toEqual([]);
});

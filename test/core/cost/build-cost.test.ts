import { expect, test } from "vitest";
import { makeBuildCosting } from "../../../core/cost/build-cost.ts";
import type { CostLine } from "../../../core/cost/cost-line.ts";
import { costLineSchema } from "../../../core/plan/plan-document.ts";
import { aCosting, aFeedstock, aMachine, anOrder, aPart, aRoute, aShop } from "../../fixtures/a-route.ts";

function sumOf(lines: readonly CostLine[]): number {
  return lines.reduce((sum, line) => sum + line.amount, 0);
}

function amountOf(lines: readonly CostLine[], kind: string, orderId: string): number {
  return sumOf(lines.filter((line) => line.kind === kind && line.orderId === orderId));
}

const failing = aMachine({ failuresPer1000H: 5 });

test("two copies cost what the arithmetic on paper says", () => {
  const amounts = makeBuildCosting(aShop()).amounts([{ route: aRoute(), copies: 2 }], aMachine());
  // Deposition 100 x (2 x 35 + 1) s = 118.33 min; with 15 min fixed, rounded up: 134 min. With 15 min of operator: 149 min.
  expect(amounts.feedstock).toBeCloseTo(2 * 0.02 * 21, 12);
  expect(amounts.machine).toBeCloseTo(14.9, 12);
  expect(amounts.labour).toBeCloseTo(9, 12);
  expect(amounts.finishing).toBeCloseTo(7.2, 12);
  expect(amounts.expectedFailure).toBe(0);
  expect(amounts.overhead).toBeCloseTo(0.1 * (0.84 + 14.9 + 9 + 7.2), 12);
  expect(amounts.total).toBeCloseTo(35.134, 12);
});

test("expected failure prices lost time, operators again and scrap with its waste", () => {
  const machine = aMachine({ failuresPer1000H: 5 });
  const route = aRoute({ layerGroups: [{ count: 100, workS: 1430 }], massKgPerCopy: 1 });
  const amounts = makeBuildCosting(aShop({ machines: [machine] })).amounts([{ route, copies: 1 }], machine);
  // 100 x 1431 s + 15 min = 2400 min = 40 h: lost share 0.107014, failures 0.221403, feedstock 21.
  expect(amounts.machine).toBeCloseTo((2400 + 15) / 10, 9);
  expect(amounts.expectedFailure).toBeCloseTo(0.1070138 * (240 + 21) + 0.2214028 * 10.5, 4);
});

test("machining is costed at its own rate", () => {
  const finishing = { labourMin: 6, machiningMin: 12, machiningPerH: 50, allowanceMm: 2 };
  const shop = aShop({ parts: [aPart({ finishing })] });
  const amounts = makeBuildCosting(shop).amounts([{ route: aRoute(), copies: 1 }], aMachine());
  expect(amounts.finishing).toBeCloseTo(13.6, 12);
});

test("the machine that is asked for sets the rates, not the one that the route was found on", () => {
  const dear = aMachine({ id: "F2", hourRate: 60 });
  const costing = makeBuildCosting(aShop({ machines: [aMachine(), dear] }));
  const items = [{ route: aRoute(), copies: 1, orderId: "O-1" }];
  expect(costing.amounts(items, dear).machine).toBeCloseTo(
    10 * costing.amounts(items, aMachine()).machine,
    9,
  );
  const lines = costing.lines(items, dear, "B-1");
  expect(lines.every((line) => line.machineId === "F2")).toBe(true);
});

test("lines of one order carry order, machine, feedstock and build, and leave out what costs nothing", () => {
  const lines = makeBuildCosting(aShop()).lines(
    [{ route: aRoute(), copies: 2, orderId: "O-1" }],
    aMachine(),
    "B-1",
  );
  expect(lines.map((line) => line.kind)).toEqual(["feedstock", "machine", "labour", "finishing", "overhead"]);
  for (const line of lines) {
    expect(line).toMatchObject({ orderId: "O-1", machineId: "F1", feedstockId: "pla-white", buildId: "B-1" });
    expect(() => costLineSchema.parse(line)).not.toThrow();
  }
});

test("orders that share a build share time by deposition and keep their own feedstock and finishing", () => {
  const shop = aShop({
    orders: [anOrder(), anOrder({ id: "O-2" })],
    parts: [aPart(), aPart({ id: "hook" })],
  });
  const clip = aRoute({ layerGroups: [{ count: 100, workS: 35 }] });
  const hook = aRoute({ partId: "hook", layerGroups: [{ count: 50, workS: 23 }], massKgPerCopy: 0.005 });
  const items = [
    { route: clip, copies: 1, orderId: "O-1" },
    { route: hook, copies: 1, orderId: "O-2" },
  ];
  const lines = makeBuildCosting(shop).lines(items, failing, "B-1");
  // Depositions 60 and 20 min: shares 3/4 and 1/4 of a run of 95 min and an occupation of 110 min at 6 per h.
  expect(amountOf(lines, "machine", "O-1")).toBeCloseTo(8.25, 9);
  expect(amountOf(lines, "machine", "O-2")).toBeCloseTo(2.75, 9);
  expect(amountOf(lines, "labour", "O-1")).toBeCloseTo(6.75, 9);
  expect(amountOf(lines, "feedstock", "O-2")).toBeCloseTo(0.105, 9);
  expect(amountOf(lines, "finishing", "O-2")).toBeCloseTo(3.6, 9);
});

test("build cost 120 with depositions of 6, 3 and 1 h is shared 72, 36 and 12", () => {
  const hours = [6, 3, 1];
  const items = hours.map((depositionH, index) => ({
    route: aRoute({ layerGroups: [{ count: depositionH, workS: 3599 }], fixedMin: 0 }),
    copies: 1,
    orderId: `O-${index}`,
  }));
  // Set-up and unload take no time here, so the 10 h at 12 per h are all.
  const machine = aMachine({ setUpMin: 0, unloadMin: 0, hourRate: 12 });
  const lines = makeBuildCosting(aShop({ machines: [machine] })).lines(items, machine, "B-1");
  expect(items.map((item) => amountOf(lines, "machine", item.orderId))).toEqual([72, 36, 12]);
});

test("a feedstock without a price is refused before it is costed, so costing it throws", () => {
  const costing = makeBuildCosting(aShop({ feedstocks: [aFeedstock({ pricePerKg: null })] }));
  expect(() => costing.amounts([{ route: aRoute(), copies: 1 }], aMachine())).toThrow(
    "pla-white has no price",
  );
});

test("an id that the shop does not have throws with the id", () => {
  const costing = makeBuildCosting(aShop());
  const ask = (overrides: Parameters<typeof aRoute>[0]) => () =>
    costing.amounts([{ route: aRoute(overrides), copies: 1 }], aMachine());
  expect(ask({ partId: "nothing" })).toThrow("no part nothing");
  expect(ask({ feedstockId: "nothing" })).toThrow("no feedstock nothing");
  expect(() => costing.amounts([], aMachine())).toThrow("no items");
});

test("waiting for an unload is not charged, a run is charged by started minutes", () => {
  const costing = makeBuildCosting(aShop());
  const exact = aRoute({ layerGroups: [{ count: 60, workS: 59 }] });
  const over = aRoute({ layerGroups: [{ count: 60, workS: 59.001 }] });
  expect(costing.amounts([{ route: exact, copies: 1 }], aMachine()).machine).toBeCloseTo(9, 12);
  expect(costing.amounts([{ route: over, copies: 1 }], aMachine()).machine).toBeCloseTo(9.1, 12);
});

test("engineering is paid once for a part and process, more for pellets, with overhead, shared by copies", () => {
  const costing = makeBuildCosting(aShop());
  expect(costing.engineeringCost("filament")).toBeCloseTo(33, 12);
  expect(costing.engineeringCost("pellet")).toBeCloseTo(132, 12);
  const users = [
    { orderId: "O-1", copies: 3 },
    { orderId: "O-2", copies: 1 },
  ];
  const lines = costing.engineeringLines(users, "pellet");
  expect(amountOf(lines, "engineering", "O-1")).toBe(90);
  expect(amountOf(lines, "engineering", "O-2")).toBe(30);
  expect(sumOf(lines)).toBeCloseTo(132, 12);
  expect(lines.every((line) => line.machineId === undefined && line.buildId === undefined)).toBe(true);
  expect(() => costing.engineeringLines([], "pellet")).toThrow("no copy");
});

test("hard tool paths take a factor of the hours, which the line shows", () => {
  const costing = makeBuildCosting(aShop());
  expect(costing.engineeringCost("pellet", 1.5)).toBeCloseTo(198, 12);
  const [line] = costing.engineeringLines([{ orderId: "O-1", copies: 1 }], "pellet", 1.5);
  expect(line?.amount).toBe(180);
  expect(line?.formula).toContain("x factor of hard paths x");
  expect(line?.inputs.map(({ value }) => value)).toEqual([1, 1, 2, 1.5, 60]);
});

test("without overhead there are no overhead lines", () => {
  const costing = makeBuildCosting(aShop({ costing: aCosting({ overheadPct: 0 }) }));
  const lines = costing.lines([{ route: aRoute(), copies: 2, orderId: "O-1" }], aMachine(), "B-1");
  expect(lines.some((line) => line.kind === "overhead")).toBe(false);
  expect(sumOf(lines)).toBeCloseTo(31.94, 12);
});

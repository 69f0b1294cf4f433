import { expect, test } from "vitest";
import type { OrderCopies } from "../../core/cost/build-lines.ts";
import { makeBuildCosting } from "../../core/cost/build-cost.ts";
import type { BuildCosting } from "../../core/cost/build-cost.ts";
import { COST_KINDS } from "../../core/cost/cost-line.ts";
import type { CostKind, CostLine } from "../../core/cost/cost-line.ts";
import { costViews } from "../../core/cost/cost-views.ts";
import type { Machine } from "../../core/shop/machine.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { minorUnitDigits } from "../../core/units/currency.ts";
import { seededRandom } from "../../core/units/random.ts";
import type { Random } from "../../core/units/random.ts";
import { aCosting, aFeedstock, aMachine, aPart, aRoute, aShop } from "../fixtures/a-route.ts";

const CURRENCIES = ["EUR", "JPY", "KWD", "CLF", "HUF"];

function whole(random: Random, below: number): number {
  return Math.floor(random() * below);
}

function pick<Thing>(random: Random, things: readonly Thing[]): Thing {
  return things[whole(random, things.length)] as Thing;
}

function minorUnits(amounts: readonly number[], currency: string): number {
  const perMajor = 10 ** minorUnitDigits(currency);
  return amounts.reduce((sum, amount) => sum + Math.round(amount * perMajor), 0);
}

function sumOf(lines: readonly CostLine[]): number {
  return lines.reduce((sum, line) => sum + line.amount, 0);
}

function someAmount(random: Random, size: number): number {
  // A third sit on half a minor unit, where rounding is hardest; a few are so large that sums lose their last digits.
  const draw = random();
  if (draw < 0.3) return whole(random, 2000) / 200;
  if (draw < 0.4) return whole(random, 1e12) / 1000;
  return random() * size;
}

function someLines(random: Random): CostLine[] {
  const size = 10 ** (whole(random, 6) - 2);
  const thousandths = random() < 0.5;
  return Array.from({ length: 1 + whole(random, 60) }, () => {
    const drawn = someAmount(random, size);
    const amount = thousandths ? Math.round(drawn * 1000) / 1000 : drawn;
    const line = { amount, formula: "", inputs: [], orderId: `O-${whole(random, 12)}` };
    const kind: CostKind = pick(random, COST_KINDS);
    if (kind === "late" || kind === "buyOut") return { ...line, kind };
    return { ...line, kind, machineId: `M-${whole(random, 4)}`, feedstockId: `S-${whole(random, 5)}` };
  });
}

test("every view of random lines adds up to the same total, to the last minor unit", () => {
  const random = seededRandom(1);
  for (let round = 0; round < 1000; round++) {
    const currency = pick(random, CURRENCIES);
    const cost = costViews(someLines(random), currency);
    const total = minorUnits([cost.total], currency);
    expect(minorUnits(Object.values(cost.byKind), currency)).toBe(total);
    for (const view of [cost.byOrder, cost.byMachine, cost.byFeedstock]) {
      expect(
        minorUnits(
          view.map((row) => row.total),
          currency,
        ),
      ).toBe(total);
    }
  }
});

test("no row of a view is off by a whole minor unit", () => {
  const random = seededRandom(2);
  for (let round = 0; round < 300; round++) {
    const currency = pick(random, CURRENCIES);
    const lines = someLines(random);
    for (const row of costViews(lines, currency).byOrder) {
      const exact = sumOf(lines.filter((line) => line.orderId === row.id));
      expect(Math.abs(row.total - exact)).toBeLessThan(1.000001 / 10 ** minorUnitDigits(currency));
    }
  }
});

function someShop(random: Random): Shop {
  const rate = () => random() * 50;
  const hourRate = {
    purchasePrice: 5000 + random() * 500_000,
    residualValue: random() * 5000,
    lifeYears: 3 + random() * 7,
    floorM2: random() * 40,
    powerKW: random() * 30,
    maintenancePctPerYear: random() * 8,
    plannedHoursPerYear: 500 + random() * 6000,
  };
  const machine = aMachine({
    hourRate: random() < 0.5 ? rate() : hourRate,
    setUpMin: whole(random, 60),
    unloadMin: whole(random, 60),
    failuresPer1000H: random() < 0.2 ? 0 : random() * 20,
  });
  const part = (id: string) => {
    const finishing = {
      labourMin: random() * 60,
      machiningMin: random() * 30,
      machiningPerH: rate(),
      allowanceMm: 0,
    };
    return aPart({ id, finishing });
  };
  const feedstock = (id: string) => aFeedstock({ id, pricePerKg: rate(), wastePct: random() * 20 });
  return aShop({
    costing: aCosting({ labourPerH: rate(), overheadPct: random() < 0.2 ? 0 : random() * 40 }),
    machines: [machine],
    feedstocks: ["pla-white", "pla-black"].map(feedstock),
    parts: ["P-0", "P-1", "P-2"].map(part),
  });
}

function someItems(random: Random): OrderCopies[] {
  const feedstockId = pick(random, ["pla-white", "pla-black"]);
  return Array.from({ length: 1 + whole(random, 4) }, (_, index) => ({
    orderId: `O-${index}`,
    copies: 1 + whole(random, 20),
    route: aRoute({
      partId: `P-${whole(random, 3)}`,
      feedstockId,
      layerGroups: Array.from({ length: 1 + whole(random, 5) }, () => ({
        count: 1 + whole(random, 300),
        workS: random() * 200,
      })),
      shortestLayerS: random() * 30,
      massKgPerCopy: random() * 3,
      fixedMin: whole(random, 90),
      timeFactor: 0.8 + random(),
    }),
  }));
}

function relativeError(value: number, expected: number): number {
  return Math.abs(value - expected) / Math.max(1e-12, Math.abs(expected));
}

const BY_KIND = ["feedstock", "machine", "labour", "finishing", "expectedFailure", "overhead"] as const;

function expectAgreement(costing: BuildCosting, items: readonly OrderCopies[], machine: Machine): void {
  const amounts = costing.amounts(items, machine);
  const lines = costing.lines(items, machine, "B-1");
  expect(relativeError(sumOf(lines), amounts.total)).toBeLessThan(1e-9);
  for (const kind of BY_KIND) {
    const sum = sumOf(lines.filter((line) => line.kind === kind));
    expect(relativeError(sum, amounts[kind])).toBeLessThan(1e-9);
  }
}

test("the lines of random builds add up to the amounts that the search uses, kind by kind", () => {
  const random = seededRandom(3);
  for (let round = 0; round < 500; round++) {
    const shop = someShop(random);
    expectAgreement(makeBuildCosting(shop), someItems(random), shop.machines[0] as Machine);
  }
});

test("the lines of random changeovers and tool paths add up to the amounts that the search uses", () => {
  const random = seededRandom(4);
  const states = ["pla-white", "pla-black"].flatMap((feedstockId) =>
    ["n04", "n08"].map((nozzleId) => ({ feedstockId, nozzleId })),
  );
  for (let round = 0; round < 300; round++) {
    const shop = someShop(random);
    const costing = makeBuildCosting(shop);
    const machine = shop.machines[0] as Machine;
    const items = someItems(random);
    const from = pick(random, [null, ...states]);
    const { cost } = costing.changeoverAmounts(machine, from, items[0]?.route ?? aRoute());
    expect(relativeError(sumOf(costing.changeoverLines(items, machine, from, "B-1")), cost)).toBeLessThan(
      1e-9,
    );
    const process = pick(random, ["filament", "pellet"] as const);
    const engineering = sumOf(costing.engineeringLines(items, process));
    expect(relativeError(engineering, costing.engineeringCost(process))).toBeLessThan(1e-9);
  }
});

test("every line can be worked out again from the inputs it shows", () => {
  const random = seededRandom(5);
  for (let round = 0; round < 200; round++) {
    const shop = someShop(random);
    const machine = shop.machines[0] as Machine;
    const costing = makeBuildCosting(shop);
    const items = someItems(random);
    const state = { feedstockId: "petg-grey", nozzleId: "n04" };
    const lines = [
      ...costing.lines(items, machine, "B-1"),
      ...costing.changeoverLines(
        items,
        machine,
        round % 2 === 0 ? null : { ...state, feedstockId: "pla-white" },
        "B-1",
      ),
      ...costing.engineeringLines(items, "pellet"),
    ];
    for (const line of lines) expect(relativeError(workedOut(line), line.amount)).toBeLessThan(1e-9);
  }
});

/** The formula of each kind written a second time, from the inputs of the line alone. */
function workedOut(line: CostLine): number {
  const n = (name: string): number => line.inputs.find((input) => input.name === name)?.value ?? Number.NaN;
  const share = n("share of build");
  const waste = 1 + n("waste") / 100;
  switch (line.kind) {
    case "feedstock":
      return n("copies") * n("mass of one copy") * n("price") * waste;
    case "machine":
      return (share * (n("set-up") + n("run") + n("unload")) * n("machine-hour rate")) / 60;
    case "labour":
      return (share * (n("set-up") + n("unload")) * n("labour rate")) / 60;
    case "finishing":
      return (n("copies") * (n("labour") * n("labour rate") + n("machining") * n("machining rate"))) / 60;
    case "expectedFailure": {
      const lost = (n("lost share") * n("run") * n("machine-hour rate")) / 60;
      const again =
        (n("failed attempts") * n("set-up and unload") * (n("machine-hour rate") + n("labour rate"))) / 60;
      return share * (lost + again) + n("lost share") * n("feedstock");
    }
    case "changeover": {
      const time = (n("changeover") * (n("machine-hour rate") + n("labour rate"))) / 60;
      return share * (time + n("purge") * n("price") * waste);
    }
    case "engineering":
      return (n("copies") / n("all copies")) * n("hours of preparing tool paths") * n("engineering rate");
    case "overhead":
      return (n("cost of making") * n("overhead")) / 100;
    default:
      return Number.NaN;
  }
}

test("one build never costs more than two of half as many copies where nothing fails", () => {
  const random = seededRandom(6);
  for (let round = 0; round < 200; round++) {
    const shop = someShop(random);
    const machine = { ...(shop.machines[0] as Machine), failuresPer1000H: 0 };
    const costing = makeBuildCosting(shop);
    const route = (someItems(random)[0] as OrderCopies).route;
    const copies = 1 + whole(random, 8);
    const half = costing.amounts([{ route, copies }], machine).total;
    const one = costing.amounts([{ route, copies: 2 * copies }], machine).total;
    expect(one).toBeLessThanOrEqual(2 * half * (1 + 1e-9));
  }
});

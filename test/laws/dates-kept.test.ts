import { expect, test } from "vitest";
import { type Chances, USUAL_CHANCES } from "../../core/quote/dates/chances.ts";
import { orderDates } from "../../core/quote/dates/likelihood.ts";
import { simulate } from "../../core/quote/dates/simulate.ts";
import { simulationTask } from "../../core/quote/dates/simulation-task.ts";
import { type Random, seededRandom } from "../../core/units/random.ts";
import {
  aDatedPlan,
  allDay,
  bareMachine,
  type BuildSketch,
  type DatedSketch,
} from "../fixtures/a-dated-plan.ts";
import { liveThrough } from "../fixtures/a-reality.ts";

const ORDERS = 9;
const RUNS = 600;
const OPERATORS = 2;
const CHANCES: Chances = { ...USUAL_CHANCES, buildVariation: 0.15, machineVariation: 0.1 };

/** Four machines that fail now and then, three builds each, nine orders, some of them on two machines; people day and night. */
function randomSketch(random: Random): DatedSketch {
  const machines = ["F1", "F2", "F3", "F4"].map((id) =>
    bareMachine({ id, setUpMin: 20, unloadMin: 15, failuresPer1000H: 2 + 10 * random() }),
  );
  const builds = machines.flatMap(({ id }): BuildSketch[] => {
    let atMin = Math.floor(120 * random());
    return [0, 1, 2].map((turn) => {
      const runMin = 120 + Math.floor(900 * random());
      const build = {
        id: `${id}-${turn}`,
        machine: id,
        orders: [orderOf(random)],
        atMin,
        setUpMin: 20,
        runMin,
      };
      atMin += 20 + runMin + 15 + Math.floor(90 * random());
      return build;
    });
  });
  return { machines, builds, calendars: [allDay(OPERATORS)] };
}

function orderOf(random: Random): string {
  return `O-${Math.floor(ORDERS * random())}`;
}

const TOLD_PCT = [50, 80, 95];

/** Counts for each likelihood in which of the orders of one shop the date holds in one life of it. */
function keptInOneShop(seed: number, chances: Chances, blind: boolean): { told: number; kept: number[] } {
  const { shop, plan } = aDatedPlan(randomSketch(seededRandom(seed)));
  const believed = blind
    ? { ...shop, machines: shop.machines.map((machine) => ({ ...machine, failuresPer1000H: 0 })) }
    : shop;
  const dates = simulate(simulationTask(believed, plan, chances), { runs: RUNS, seed });
  const finished = liveThrough(shop, plan, chances, OPERATORS, 1_000_003 + seed);
  const kept = TOLD_PCT.map(() => 0);
  for (const [orderId, atMin] of finished) {
    const answer = orderDates(dates, orderId, TOLD_PCT);
    if (answer.status === "undated") throw new Error(answer.reasons.join(" "));
    answer.kept.forEach(({ byMin }, place) => {
      if (byMin !== null && atMin <= byMin) kept[place] = (kept[place] ?? 0) + 1;
    });
  }
  return { told: finished.size, kept };
}

/** Share of orders that keep their 50, 80 and 95 % dates, of at least so many orders. */
function sharesKept(orders: number, blind: boolean): number[] {
  let told = 0;
  const kept = TOLD_PCT.map(() => 0);
  for (let seed = 1; told < orders; seed++) {
    const shop = keptInOneShop(seed, CHANCES, blind);
    told += shop.told;
    shop.kept.forEach((count, place) => {
      kept[place] = (kept[place] ?? 0) + count;
    });
  }
  return kept.map((count) => count / told);
}

test("of 5000 orders in shops whose truth is known 80 % keep the 80 % date, within 2 %, and so do 50 % and 95 %", () => {
  const [half = 0, most = 0, nearlyAll = 0] = sharesKept(5000, false);
  expect(Math.abs(most - 0.8)).toBeLessThan(0.02);
  expect(Math.abs(half - 0.5)).toBeLessThan(0.02);
  expect(Math.abs(nearlyAll - 0.95)).toBeLessThan(0.02);
});

test("the test sees wrong dates: where failures are left out the 80 % date is kept far less often", () => {
  const [, most = 0] = sharesKept(500, true);
  expect(most).toBeLessThan(0.75);
});

import { expect, test } from "vitest";
import { proveBound } from "../../core/plan/bound/bound.ts";
import { loadGlpk } from "../../core/plan/engines/glpk.ts";
import type { PlanProblem } from "../../core/plan/plan-problem.ts";
import type { Schedule } from "../../core/plan/schedule.ts";
import { scheduleCost } from "../../core/plan/search/schedule-cost.ts";
import { choosePlaces } from "../../core/quote/choose-places.ts";
import { floorBetween } from "../../core/quote/floor.ts";
import { hurryPerMin, LinePlacer } from "../../core/quote/line-places.ts";
import { MONEY_TOLERANCE } from "../../core/units/tolerance.ts";
import { exhaustivePlan } from "../fixtures/exhaustive.ts";
import { tinyProblem } from "../fixtures/tiny-problem.ts";

/** Tiny shops that are solved by trying every plan, with the last line and without it. */
const SHOPS = process.env["LAWS"] === "full" ? 400 : 120;
const MOST_NODES = 12_000;
const POLISH = { steps: 6000, seed: 1 };

/** Ever earlier dates, min from the start of the plan. */
const WANTED = Array.from({ length: 31 }, (_, at) => 600 - 20 * at);

const glpk = await loadGlpk();

/** A tiny shop with the cheapest of all plans without its last line, and the cheapest with it. */
interface Solved {
  readonly seed: number;
  readonly problem: PlanProblem;
  readonly without: PlanProblem;
  readonly standing: Schedule;
  readonly trueCost: number;
  readonly asked: number;
}

/**
 * Changeovers that are never longer or dearer than over a third state, as those of machines are: where they are, a line may save
 * more than it costs by being the third.
 */
function withoutShortCuts(problem: PlanProblem): PlanProblem {
  const size = problem.states.length;
  const closed = (table: Float64Array): Float64Array => {
    const shortest = table.slice();
    for (let via = 0; via < size; via++) {
      for (let pair = 0; pair < shortest.length; pair++) {
        const over = shortest[Math.floor(pair / size) * size + via]! + shortest[via * size + (pair % size)]!;
        shortest[pair] = Math.min(shortest[pair]!, over);
      }
    }
    return shortest;
  };
  const classes = problem.classes.map((facts) => ({
    ...facts,
    changeoverMin: closed(facts.changeoverMin),
    changeoverCost: closed(facts.changeoverCost),
  }));
  return { ...problem, classes };
}

/** The same works where changing over costs money and takes no time: no line can gain by another's change before its release. */
function withInstantChanges(problem: PlanProblem): PlanProblem {
  const classes = problem.classes.map((facts) => ({
    ...facts,
    changeoverMin: facts.changeoverMin.map(() => 0),
  }));
  return { ...problem, classes };
}

function solvedShops(change: (problem: PlanProblem) => PlanProblem): Solved[] {
  const found: Solved[] = [];
  for (let seed = 0; found.length < SHOPS; seed++) {
    const problem = change(withoutShortCuts(tinyProblem(seed)));
    const asked = problem.lines.length - 1;
    const last = problem.lines[asked]!;
    if (!problem.lines.every((line) => line.optionIndices.length > 0 || line.buyOut)) continue;
    if (!last.allowLate || last.perPiece) continue;
    const lines = problem.lines.map((line) => (line.index === asked ? { ...line, quantity: 0 } : line));
    const without = { ...problem, lines };
    const before = exhaustivePlan(without, MOST_NODES);
    const after = exhaustivePlan(problem, MOST_NODES);
    if (!before.isComplete || !after.isComplete || !before.schedule || !after.schedule) continue;
    const trueCost = after.schedule.cost - before.schedule.cost;
    found.push({ seed, problem, without, standing: before.schedule, trueCost, asked });
  }
  return found;
}

const shops = solvedShops((problem) => problem);

function inserted({ problem, asked, standing }: Solved): Schedule | null {
  const placer = new LinePlacer(problem, [asked], standing, 1);
  const { dueMin } = problem.lines[asked]!;
  const wish = { wantedMin: dueMin, allowLate: true, perMin: hurryPerMin(problem, asked) };
  const choice = choosePlaces(placer.all(), [wish]);
  if (!choice) return null;
  const schedule = placer.scheduleOf(choice.at);
  return schedule.unplaced.length > 0 ? null : { ...schedule, cost: scheduleCost(problem, schedule) };
}

/** How the floor's ranges of shops stand to the true marginal costs. */
function judgeFloors(solved: readonly Solved[]): { placed: number; exact: number; outside: string[] } {
  const outside: string[] = [];
  let placed = 0;
  let exact = 0;
  for (const shop of solved) {
    const schedule = inserted(shop);
    if (!schedule) continue;
    placed++;
    const bound = proveBound(shop.without, glpk, { now: () => 0, untilMs: 60_000 });
    const works = {
      bound,
      without: { problem: shop.without, schedule: shop.standing },
      with: { problem: shop.problem, schedule },
      lineIndices: [shop.asked],
    };
    const { lowest, highest } = floorBetween(works, POLISH);
    if (Math.abs(highest - shop.trueCost) < MONEY_TOLERANCE) exact++;
    const isInside = lowest <= shop.trueCost + MONEY_TOLERANCE && shop.trueCost <= highest + MONEY_TOLERANCE;
    if (!isInside) outside.push(`seed ${shop.seed}: ${lowest} to ${highest}, true ${shop.trueCost}`);
  }
  return { placed, exact, outside };
}

test(`on ${SHOPS} tiny shops the true marginal cost of a line lies inside the floor's range, and is its upper end on 9 of 10`, () => {
  const { placed, exact, outside } = judgeFloors(solvedShops(withInstantChanges));
  expect(outside).toEqual([]);
  expect(exact).toBeGreaterThan(0.9 * placed);
  expect(placed).toBeGreaterThan(0.9 * SHOPS);
}, 120_000);

test("where changing over takes time it does so on 99 of 100: a line may do another's change before that is released", () => {
  const { placed, exact, outside } = judgeFloors(shops);
  expect(outside.length, outside.join("; ")).toBeLessThanOrEqual(0.01 * placed);
  expect(exact).toBeGreaterThan(0.9 * placed);
}, 120_000);

test(`on ${SHOPS} tiny shops the cost of a line never falls when its date is earlier, whether it must hold or not`, () => {
  for (const { seed, problem, asked, standing } of shops) {
    const placer = new LinePlacer(problem, [asked], standing, 1);
    const perMin = hurryPerMin(problem, asked);
    const wishes = [placer.first(), placer.all()].flatMap((places) =>
      [true, false].map((allowLate) => ({ places, wish: { allowLate, perMin } })),
    );
    for (const { places, wish } of wishes) {
      const costs = WANTED.map((wantedMin) => {
        const choice = choosePlaces(places, [{ ...wish, wantedMin }]);
        return choice ? places[choice.at]!.extraCost : Infinity;
      });
      costs.slice(1).forEach((cost, at) => {
        expect(cost, `seed ${seed}, ${WANTED[at + 1]} min`).toBeGreaterThanOrEqual(
          costs[at]! - MONEY_TOLERANCE,
        );
      });
    }
  }
}, 60_000);

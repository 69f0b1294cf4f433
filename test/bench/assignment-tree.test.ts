import { describe, expect, it } from "vitest";
import { seededRandom } from "../../core/units/random.ts";
import { CHOSEN, Choices, OPEN, RULED_OUT } from "./assignment-choices.ts";
import { type AssignmentTask, PricedAssignment } from "./assignment-prices.ts";
import { cheapestAssignment } from "./assignment-tree.ts";
import { wholeBetween } from "./draw.ts";
import { Knapsack } from "./knapsack.ts";

const SEEDS = Array.from({ length: 40 }, (_, index) => index + 1);
const MACHINES = 3;
const JOBS = 7;

/** Small enough to try every assignment, tight enough that some have none. */
function randomTask(seed: number): AssignmentTask {
  const random = seededRandom(seed);
  const pairs = MACHINES * JOBS;
  return {
    cost: Float64Array.from({ length: pairs }, () => wholeBetween(random, 5, 25)),
    load: Int32Array.from({ length: pairs }, () => wholeBetween(random, 3, 12)),
    capacity: Array.from({ length: MACHINES }, () => wholeBetween(random, 12, 24)),
  };
}

/** Cost of an assignment; Infinity where a machine takes more than it can. */
function costOf({ cost, load, capacity }: AssignmentTask, machineOf: readonly number[]): number {
  const left = [...capacity];
  let sum = 0;
  machineOf.forEach((machine, job) => {
    left[machine]! -= load[machine * JOBS + job]!;
    sum += cost[machine * JOBS + job]!;
  });
  return left.some((room) => room < 0) ? Infinity : sum;
}

function leastByTryingAll(task: AssignmentTask): number {
  let least = Infinity;
  for (let code = 0; code < MACHINES ** JOBS; code++) {
    const machineOf = Array.from({ length: JOBS }, (_, job) => Math.floor(code / MACHINES ** job) % MACHINES);
    least = Math.min(least, costOf(task, machineOf));
  }
  return least;
}

const ALWAYS = (): boolean => true;

describe("the tree of prices", () => {
  it.each(SEEDS)("finds and proves what trying every assignment finds (seed %i)", (seed) => {
    const task = randomTask(seed);
    const least = leastByTryingAll(task);
    const { machineOf, bound } = cheapestAssignment(task, new Float64Array(JOBS), ALWAYS);
    expect(bound).toBe(least);
    expect(machineOf === null ? Infinity : costOf(task, machineOf)).toBe(least);
  });

  it("knows both kinds of task: with an assignment and without", () => {
    const values = SEEDS.map((seed) => leastByTryingAll(randomTask(seed)));
    expect(values).toContain(Infinity);
    expect(values.filter(Number.isFinite).length).toBeGreaterThan(20);
  });

  it("gives a bound and no assignment when the time is up at once", () => {
    const hard = SEEDS.map(randomTask).map((task) => ({
      least: leastByTryingAll(task),
      answer: cheapestAssignment(task, new Float64Array(JOBS), () => false),
    }));
    for (const { least, answer } of hard) expect(answer.bound).toBeLessThanOrEqual(least);
    expect(hard.some(({ answer }) => answer.machineOf === null && answer.bound < Infinity)).toBe(true);
  });
});

describe("the priced relaxation", () => {
  it.each([1, 2, 3, 4, 5, 6])("is below every assignment at any prices (seed %i)", (seed) => {
    const task = randomTask(seed);
    const least = leastByTryingAll(task);
    const random = seededRandom(seed + 100);
    for (let turn = 0; turn < 20; turn++) {
      const prices = Float64Array.from({ length: JOBS }, () => random() * 30);
      expect(new PricedAssignment(task).bound(prices, turn % 2 === 0)).toBeLessThanOrEqual(least + 1e-9);
    }
  });
});

describe("one knapsack", () => {
  const items = {
    weight: Int32Array.from([3, 4, 2]),
    value: Float64Array.from([-2, -3, 1]),
    count: 3,
  };
  const knapsack = new Knapsack(3, 10, items);

  it.each([
    [3, -2, [1, 0, 0]],
    [4, -3, [0, 1, 0]],
    [6, -3, [0, 1, 0]],
    [7, -5, [1, 1, 0]],
  ])("of capacity %i is packed at %i", (capacity, least, taken) => {
    expect(knapsack.pack(capacity)).toBe(least);
    expect([...knapsack.taken]).toEqual(taken);
  });

  it("tells what the other way costs for each item, Infinity where it cannot be", () => {
    knapsack.pack(5);
    knapsack.force(5);
    // Packed is the second alone (-3). First instead: -2. Without the second: -2. The third beside the first: -1.
    expect([...knapsack.rise]).toEqual([1, 1, 2]);
    knapsack.pack(3);
    knapsack.force(3);
    expect(knapsack.rise[1]).toBe(Infinity);
  });
});

/** Two machines and two jobs. */
const choices = (): Choices => new Choices(Int32Array.from([4, 4, 5, 5]), [6, 9]);

describe("choices", () => {
  it("send a job that has one machine left there, and take all of it back", () => {
    const made = choices();
    made.ruleOut(0);
    made.follow();
    expect([...made.of]).toEqual([RULED_OUT, OPEN, CHOSEN, OPEN]);
    expect([...made.left]).toEqual([6, 4]);
    made.undoTo(0);
    expect([...made.of]).toEqual([OPEN, OPEN, OPEN, OPEN]);
    expect([...made.left]).toEqual([6, 9]);
  });

  it("are impossible when a machine would hold more than it can", () => {
    const made = choices();
    made.choose(0);
    expect(made.isImpossible).toBe(false);
    made.choose(1);
    expect(made.isImpossible).toBe(true);
  });

  it("are impossible when a job has no machine left", () => {
    const made = choices();
    made.ruleOut(0);
    made.ruleOut(2);
    expect(made.isImpossible).toBe(true);
  });
});

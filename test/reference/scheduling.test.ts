import { describe, expect, it } from "vitest";
import { tardinessIndex } from "../../core/plan/search/tardiness-index.ts";
import { seededRandom } from "../../core/units/random.ts";
import type { Job, JobsProblem } from "../fixtures/jobs-problem.ts";
import { searchedJobs } from "../fixtures/searched-jobs.ts";

/**
 * Small problems of scheduling theory with known optima. First by the exact methods of the literature (helpers at the end of
 * this file), which checks the data; then by our own search where the problem can be said in its terms.
 */

/** Jackson 1955 (EDD), Smith 1956 (WSPT), Moore 1968: textbook data from Pinedo, "Scheduling" (from memory). */
const MOORE_TEN = jobs([19, 23, 5, 31, 17, 8, 32, 41, 26, 18], [48, 75, 170, 215, 205, 240, 85, 67, 100, 95]);
const MOORE_FIVE = jobs([7, 8, 4, 6, 6], [9, 17, 18, 19, 21]);
/** 1|r|Lmax, Pinedo (from memory). */
const RELEASES: readonly Job[] = [
  { runMin: [4], releaseMin: 0, dueMin: 8 },
  { runMin: [2], releaseMin: 1, dueMin: 12 },
  { runMin: [6], releaseMin: 3, dueMin: 11 },
  { runMin: [5], releaseMin: 5, dueMin: 10 },
];
/** 1||sum wC and 1||sum wT, Pinedo (from memory). */
const WEIGHTED = jobs([12, 8, 15, 9], [16, 26, 25, 27], [4, 5, 3, 5]);
const TIGHT = jobs([10, 10, 13, 4], [4, 2, 1, 12], [14, 12, 1, 12]);
/** R2||Cmax, own data, optimum by enumeration below. */
const UNRELATED = [
  [10, 4],
  [8, 6],
  [6, 9],
  [5, 7],
  [12, 5],
  [7, 12],
];

describe("one machine, exact methods", () => {
  it("1||sum U: Moore 1968 leaves 2 of 10 jobs late, and no fewer can be", () => {
    expect(mooreHodgson(MOORE_TEN)).toBe(2);
    expect(bestOverSubsets(MOORE_TEN, lateOne)).toBe(2);
  });

  it("1||sum U: 2 of 5 jobs late (Pinedo, from memory)", () => {
    expect(mooreHodgson(MOORE_FIVE)).toBe(2);
  });

  it("the orders that are given for these optima reach them", () => {
    expect(weightedSum(inOrder(MOORE_TEN, [1, 2, 10, 9, 3, 5, 4, 6, 8, 7]), lateOne)).toBe(2);
    expect(weightedSum(inOrder(MOORE_FIVE, [3, 4, 5, 1, 2]), lateOne)).toBe(2);
    expect(weightedSum(inOrder(WEIGHTED, [1, 2, 4, 3]), weightedLateness)).toBe(67);
    expect(weightedSum(inOrder(TIGHT, [1, 4, 2, 3]), weightedLateness)).toBe(408);
  });

  it("1||Lmax: earliest due date gives 59 and 10, sum of tardiness 110", () => {
    expect(latest(byDue(MOORE_TEN))).toBe(59);
    expect(latest(byDue(MOORE_FIVE))).toBe(10);
    expect(bestOverSubsets(MOORE_TEN, (job, end) => Math.max(0, end - job.due))).toBe(110);
  });

  it("1||sum wC: Smith 1956 gives 373 (2-4-1-3)", () => {
    const order = WEIGHTED.toSorted((a, b) => a.run / a.weight - b.run / b.weight);
    expect(weightedSum(order, (job, end) => job.weight * end)).toBe(373);
    expect(order.map((job) => WEIGHTED.indexOf(job) + 1)).toEqual([2, 4, 1, 3]);
  });

  it("1||sum wT: optimum 67; earliest due date 136, Smith's rule 109", () => {
    expect(bestOverSubsets(WEIGHTED, weightedLateness)).toBe(67);
    expect(weightedSum(byDue(WEIGHTED), weightedLateness)).toBe(136);
    expect(
      weightedSum(
        WEIGHTED.toSorted((a, b) => a.run / a.weight - b.run / b.weight),
        weightedLateness,
      ),
    ).toBe(109);
    expect(bestOverSubsets(TIGHT, weightedLateness)).toBe(408);
  });

  it("earliest due date has the least lateness of all orders, and Moore's count is the least, on random jobs", () => {
    const random = seededRandom(1);
    for (let round = 0; round < 200; round++) {
      const count = 1 + Math.floor(random() * 8);
      const draw = (most: number): number[] =>
        Array.from({ length: count }, () => 1 + Math.floor(random() * most));
      const list = jobs(draw(20), draw(60));
      expect(mooreHodgson(list)).toBe(bestOverSubsets(list, lateOne));
      const least = bestOverSubsets(list, (job, end) => end - job.due, Math.max, -Infinity);
      expect(latest(byDue(list))).toBe(least);
    }
  });
});

describe("several machines, exact methods", () => {
  it("P|pmtn|Cmax: McNaughton 1959", () => {
    expect(mcNaughton([8, 7, 6], 2)).toBe(10.5);
    expect(mcNaughton([10, 4, 3, 3], 3)).toBe(10);
    expect(mcNaughton([6, 5, 4, 3, 3, 2, 1], 3)).toBe(8);
  });

  it("P||Cmax: longest first is 5/4 and less off, within Graham's bound of 1969", () => {
    for (const [runs, machines, optimum, longestFirst] of GRAHAM) {
      expect(longestProcessingTime(runs, machines)).toBe(longestFirst);
      expect(longestFirst).toBeLessThanOrEqual((4 / 3 - 1 / (3 * machines)) * optimum + 1e-9);
    }
  });

  it("F2||Cmax: Johnson 1954 is never beaten by another order", () => {
    const random = seededRandom(2);
    for (let round = 0; round < 50; round++) {
      const pairs = Array.from(
        { length: 6 },
        () => [1 + Math.floor(random() * 9), 1 + Math.floor(random() * 9)] as const,
      );
      const least = Math.min(...permutations(pairs).map(flowShopEnd));
      expect(flowShopEnd(johnson(pairs))).toBe(least);
    }
  });

  it("R2||Cmax: the six jobs end at 18", () => {
    expect(leastMakespan(UNRELATED)).toBe(18);
  });
});

/** P||Cmax: run times, machines, optimum, longest-first. Graham's family and Pinedo (from memory). */
const GRAHAM: readonly (readonly [readonly number[], number, number, number])[] = [
  [[7, 7, 6, 6, 5, 5, 4, 4, 4], 4, 12, 15],
  [[5, 5, 4, 4, 3, 3, 3], 3, 9, 11],
  [[3, 3, 2, 2, 2], 2, 6, 7],
];

describe("apparent tardiness cost (Vepsalainen & Morton 1987)", () => {
  it("gives the indices at time 0 with look-ahead 2 (data of Pinedo, from memory)", () => {
    const expected = [0.277918, 0.275771, 0.126947, 0.24513];
    WEIGHTED.forEach((job, at) => {
      expect(indexAt(job, 0, 2)).toBeCloseTo(expected[at]!, 6);
    });
  });

  it.each([
    [1, 67],
    [2, 67],
    [3, 109],
  ])("dispatching with look-ahead %i costs %i", (k1, cost) => {
    expect(dispatched(WEIGHTED, k1)).toBe(cost);
  });

  it("falls with the set-up that a job would need (Lee, Bhaskaran & Pinedo 1997)", () => {
    const scale = { meanRun: 10, meanSetUp: 5, k1: 2, k2: 1 };
    const job = { lateCost: 2, run: 10, slack: 0, setUp: 5 };
    expect(tardinessIndex(job, scale)).toBeCloseTo(0.2 * Math.exp(-1), 12);
  });
});

describe("our search reaches the optimum", () => {
  it("1||sum wT: 67 and 408", () => {
    expect(searched({ jobs: asJobs(WEIGHTED) })).toBe(67);
    expect(searched({ jobs: asJobs(TIGHT) })).toBe(408);
  });

  it("1||sum T of ten jobs: 110", () => {
    expect(searched({ jobs: asJobs(MOORE_TEN) })).toBe(110);
  });

  it("1||sum wC: 373", () => {
    expect(searched({ jobs: asJobs(WEIGHTED).map((job) => ({ ...job, dueMin: 0 })) })).toBe(373);
  });

  it("1||sum wT of random jobs: what dynamic programming gives, and dispatching never less", () => {
    const random = seededRandom(4);
    for (let round = 0; round < 20; round++) {
      const draw = (most: number): number[] =>
        Array.from({ length: 7 }, () => 1 + Math.floor(random() * most));
      const list = jobs(draw(20), draw(60), draw(9));
      const least = bestOverSubsets(list, weightedLateness);
      expect(searched({ jobs: asJobs(list) }, 20_000, least)).toBe(least);
      for (const k1 of [1, 2, 3]) expect(dispatched(list, k1)).toBeGreaterThanOrEqual(least);
    }
  });

  it.each([
    ["1|r|Lmax of four jobs", 5, RELEASES],
    ["1||Lmax of five jobs", 10, asJobs(MOORE_FIVE)],
    ["1||Lmax of ten jobs", 59, asJobs(MOORE_TEN)],
  ])(
    "%s: the optimum is %i; due dates later by as much can all be kept, by one less not",
    (_, latestMin, list) => {
      expect(searched({ jobs: dueLater(list, latestMin) })).toBe(0);
      expect(searched({ jobs: dueLater(list, latestMin - 1) })).toBeGreaterThan(0);
    },
  );

  it("P2||Cmax of 8, 7 and 6: 13, where runs that may be split end at 10.5", () => {
    const list = [8, 7, 6].map((run) => ({ runMin: [run, run] }));
    expect(searched({ jobs: list, makespanCostPerMin: 1 })).toBe(13);
  });

  it("P||Cmax: 12, 9 and 6, where longest-first gives 15, 11 and 7", () => {
    for (const [runs, machines, optimum] of GRAHAM) {
      const list = runs.map((run) => ({ runMin: Array.from({ length: machines }, () => run) }));
      expect(searched({ jobs: list, makespanCostPerMin: 1 })).toBe(optimum);
    }
  });

  it("P2||sum C of runs 1 to 6: 34", () => {
    const list = [1, 2, 3, 4, 5, 6].map((run) => ({ runMin: [run, run], dueMin: 0, weight: 1 }));
    expect(searched({ jobs: list })).toBe(34);
  });

  it("R2||Cmax: 18", () => {
    expect(searched({ jobs: UNRELATED.map((runMin) => ({ runMin })), makespanCostPerMin: 1 })).toBe(18);
  });

  it("a path of set-ups from what is loaded: 2.5 h by B, D, C", () => {
    const hours = [
      [0.5, 2, 1],
      [NaN, 2, 1.5],
      [1.5, NaN, 0.5],
      [2, 0.5, NaN],
    ];
    const setUpMin = (_: number, from: number, to: number): number =>
      from === to ? 0 : hours[from + 1]![to]! * 60;
    const list = [1, 1, 1].map((run) => ({ runMin: [run] }));
    expect(searched({ jobs: list, setUpMin, makespanCostPerMin: 1 }) - 3).toBe(150);
  });
});

/** Cost of the best schedule that the search finds in so many steps; it ends early where it reaches `optimum`. */
function searched(problem: JobsProblem, iterations = 20_000, optimum = -Infinity): number {
  return searchedJobs(problem, iterations, optimum).cost;
}

/** One job with one machine's run time. */
interface Known {
  readonly run: number;
  readonly due: number;
  readonly weight: number;
}

function jobs(runs: readonly number[], dues: readonly number[], weights: readonly number[] = []): Known[] {
  return runs.map((run, index) => ({ run, due: dues[index]!, weight: weights[index] ?? 1 }));
}

function asJobs(list: readonly Known[]): Job[] {
  return list.map(({ run, due, weight }) => ({ runMin: [run], dueMin: due, weight }));
}

function inOrder(list: readonly Known[], order: readonly number[]): Known[] {
  return order.map((number) => list[number - 1]!);
}

function dueLater(list: readonly Job[], minutes: number): Job[] {
  return list.map((job) => ({ ...job, weight: 1, dueMin: (job.dueMin ?? 0) + minutes }));
}

function weightedLateness(job: Known, end: number): number {
  return job.weight * Math.max(0, end - job.due);
}

/** 1 for a job that ends late, else 0. */
function lateOne(job: Known, end: number): number {
  return end > job.due ? 1 : 0;
}

/** Weighted tardiness when the job of the highest index always goes next. */
function dispatched(list: readonly Known[], k1: number): number {
  const left = [...list];
  let time = 0;
  let money = 0;
  while (left.length > 0) {
    left.sort((a, b) => indexAt(b, time, k1) - indexAt(a, time, k1));
    const next = left.shift()!;
    time += next.run;
    money += weightedLateness(next, time);
  }
  return money;
}

/** Index of a job of the textbook data (mean run 11) at a time. */
function indexAt(job: Known, time: number, k1: number): number {
  return tardinessIndex(
    { lateCost: job.weight, run: job.run, slack: job.due - job.run - time, setUp: 0 },
    { meanRun: 11, meanSetUp: 0, k1, k2: 1 },
  );
}

function byDue(list: readonly Known[]): Known[] {
  return list.toSorted((a, b) => a.due - b.due);
}

function latest(order: readonly Known[]): number {
  let end = 0;
  return order.reduce((worst, job) => {
    end += job.run;
    return Math.max(worst, end - job.due);
  }, -Infinity);
}

function weightedSum(order: readonly Known[], cost: (job: Known, end: number) => number): number {
  let end = 0;
  return order.reduce((sum, job) => {
    end += job.run;
    return sum + cost(job, end);
  }, 0);
}

/** Late jobs: through the jobs by due date, dropping the longest whenever the last one is late. */
function mooreHodgson(list: readonly Known[]): number {
  const kept: number[] = [];
  let end = 0;
  let late = 0;
  for (const job of byDue(list)) {
    kept.push(job.run);
    end += job.run;
    if (end <= job.due) continue;
    const longest = Math.max(...kept);
    kept.splice(kept.indexOf(longest), 1);
    end -= longest;
    late++;
  }
  return late;
}

/** Least cost over all orders by dynamic programming over subsets: f(S) = min over the last job (Held & Karp 1962). */
function bestOverSubsets(
  list: readonly Known[],
  cost: (job: Known, end: number) => number,
  join: (a: number, b: number) => number = (a, b) => a + b,
  none = 0,
): number {
  const best = new Float64Array(1 << list.length).fill(Infinity);
  best[0] = none;
  for (let subset = 1; subset < best.length; subset++) {
    const end = list.reduce((sum, job, index) => (subset & (1 << index) ? sum + job.run : sum), 0);
    list.forEach((job, index) => {
      if (!(subset & (1 << index))) return;
      best[subset] = Math.min(best[subset]!, join(best[subset ^ (1 << index)]!, cost(job, end)));
    });
  }
  return best.at(-1)!;
}

function mcNaughton(runs: readonly number[], machines: number): number {
  return Math.max(Math.max(...runs), runs.reduce((sum, run) => sum + run, 0) / machines);
}

function longestProcessingTime(runs: readonly number[], machines: number): number {
  const ends = Array.from({ length: machines }, () => 0);
  for (const run of runs.toSorted((a, b) => b - a)) {
    const first = ends.indexOf(Math.min(...ends));
    ends[first] = ends[first]! + run;
  }
  return Math.max(...ends);
}

type Pair = readonly [number, number];

function johnson(pairs: readonly Pair[]): Pair[] {
  const first = pairs.filter(([a, b]) => a <= b).toSorted((x, y) => x[0] - y[0]);
  const last = pairs.filter(([a, b]) => a > b).toSorted((x, y) => y[1] - x[1]);
  return [...first, ...last];
}

function flowShopEnd(order: readonly Pair[]): number {
  let one = 0;
  let two = 0;
  for (const [a, b] of order) {
    one += a;
    two = Math.max(one, two) + b;
  }
  return two;
}

function permutations<Kind>(list: readonly Kind[]): Kind[][] {
  if (list.length <= 1) return [[...list]];
  return list.flatMap((item, index) =>
    permutations([...list.slice(0, index), ...list.slice(index + 1)]).map((rest) => [item, ...rest]),
  );
}

/** Least makespan on unrelated machines by trying every assignment. */
function leastMakespan(runs: readonly (readonly number[])[]): number {
  const machines = runs[0]?.length ?? 1;
  const place = (job: number, ends: readonly number[]): number => {
    const run = runs[job];
    if (!run) return Math.max(...ends);
    return Math.min(
      ...Array.from({ length: machines }, (_, machine) =>
        place(
          job + 1,
          ends.map((end, index) => (index === machine ? end + run[machine]! : end)),
        ),
      ),
    );
  };
  return place(
    0,
    Array.from({ length: machines }, () => 0),
  );
}

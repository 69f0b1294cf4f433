import { describe, expect, test } from "vitest";
import { tardinessIndex } from "../../core/plan/search/tardiness-index.ts";
import { setUpInstances } from "../bench/weighted-tardiness-setups.ts";
import type { JobsProblem } from "../fixtures/jobs-problem.ts";
import { searchedJobs, weightedTardiness } from "../fixtures/searched-jobs.ts";

/**
 * Single-machine weighted tardiness with set-ups that depend on sequence: V. A. Cicirello 2003, "Weighted tardiness scheduling
 * with sequence-dependent setups: a benchmark library". Instance 1; the library lists no totals with its data, so the search
 * is held against plain dispatching.
 */
const first = setUpInstances()?.find(({ number }) => number === 1)?.problem;
const STEPS = 100_000;

describe.skipIf(!first)(
  "weighted tardiness with set-ups (skipped where ../shared/checks/weighted-tardiness-setups is absent)",
  () => {
    const problem = first ?? { jobs: [] };
    const { jobs, setUpMin } = problem;

    test("instance 1 is read as it stands in the file: 60 jobs, and a set-up before each of them", () => {
      expect(jobs).toHaveLength(60);
      expect(jobs[0]).toEqual({ runMin: [81], weight: 4, dueMin: 4925 });
      expect(jobs[59]).toEqual({ runMin: [87], weight: 2, dueMin: 4933 });
      expect([setUpMin?.(0, -1, 0), setUpMin?.(0, -1, 22), setUpMin?.(0, 59, 58)]).toEqual([43, 0, 37]);
    });

    test("instance 1: the search's total is that of its sequence, no job is left out, and dispatching costs more", () => {
      const { cost, sequences } = searchedJobs(problem, STEPS);
      const sequence = sequences[0] ?? [];
      expect(sequence.toSorted((a, b) => a - b)).toEqual(jobs.map((_, job) => job));
      expect(cost).toBe(weightedTardiness(problem, sequence));
      expect(cost).toBeLessThanOrEqual(weightedTardiness(problem, byDueDate(problem)));
      expect(cost).toBeLessThanOrEqual(weightedTardiness(problem, byIndex(problem)));
    });
  },
);

function byDueDate({ jobs }: JobsProblem): number[] {
  return [...jobs.keys()].toSorted((a, b) => (jobs[a]?.dueMin ?? 0) - (jobs[b]?.dueMin ?? 0));
}

/** Always the waiting job of the largest apparent tardiness cost: Lee, Bhaskaran and Pinedo 1997 (from memory). */
function byIndex({ jobs, setUpMin }: JobsProblem): number[] {
  const meanRun = jobs.reduce((sum, { runMin }) => sum + (runMin[0] ?? 0), 0) / jobs.length;
  const scale = { meanRun, meanSetUp: MEAN_SET_UP_MIN, k1: 2, k2: 0.4 };
  const waiting = new Set(jobs.keys());
  const sequence: number[] = [];
  let timeMin = 0;
  while (waiting.size > 0) {
    const before = sequence.at(-1) ?? -1;
    const indexOf = (job: number): number => {
      const { runMin, dueMin = 0, weight = 0 } = jobs[job] ?? { runMin: [] };
      const run = runMin[0] ?? NaN;
      const setUp = setUpMin?.(0, before, job) ?? 0;
      return tardinessIndex({ lateCost: weight, run, slack: dueMin - run - timeMin, setUp }, scale);
    };
    const next = [...waiting].reduce((best, job) => (indexOf(job) > indexOf(best) ? job : best));
    timeMin += (setUpMin?.(0, before, next) ?? 0) + (jobs[next]?.runMin[0] ?? NaN);
    waiting.delete(next);
    sequence.push(next);
  }
  return sequence;
}

/** Named in the head of the instance's file. */
const MEAN_SET_UP_MIN = 25;

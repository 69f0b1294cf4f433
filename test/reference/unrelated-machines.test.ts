import { describe, expect, test } from "vitest";
import { makespanInstances } from "../bench/unrelated-machines.ts";
import type { Job, JobsProblem } from "../fixtures/jobs-problem.ts";
import { endsInSequence, searchedJobs } from "../fixtures/searched-jobs.ts";

/**
 * Unrelated parallel machines with set-ups that depend on sequence and machine, least makespan: Vallada and Ruiz 2011.
 * Every fifth of the instances of 6 and 8 jobs, whose optimum is proven here anew; the bench runs all that are there.
 */
const small = makespanInstances()?.filter(({ jobCount }) => jobCount <= 8);
const chosen = (small ?? []).filter((_, index) => index % 5 === 0);
const STEPS = 200_000;

describe.skipIf(!small)(
  "unrelated machines with set-ups (skipped where ../shared/checks/unrelated-machines-setups is absent)",
  () => {
    test("at least twelve instances are chosen, of 6 and of 8 jobs", () => {
      expect(chosen.length).toBeGreaterThanOrEqual(12);
      expect(new Set(chosen.map(({ jobCount }) => jobCount))).toEqual(new Set([6, 8]));
    });

    test("the listed optimum is the least makespan of all plans", () => {
      const proven = chosen.map(({ name, problem }) => [name, leastMakespan(problem)]);
      expect(proven).toEqual(chosen.map(({ name, optimum }) => [name, optimum]));
    });

    test("the search reaches it within 200 000 steps, and its sequences added up by hand end then", () => {
      for (const { name, jobCount, problem, optimum } of chosen) {
        const { cost, sequences } = searchedJobs(problem, STEPS, optimum);
        const ends = sequences.flatMap((sequence, machine) => endsInSequence(problem, machine, sequence));
        expect([name, cost, Math.max(...ends)]).toEqual([name, optimum, optimum]);
        expect(sequences.flat().toSorted((a, b) => a - b)).toEqual([...Array(jobCount).keys()]);
      }
    });
  },
);

/** Least makespan: first the shortest sequence of each set of jobs on each machine, then every division of the jobs. */
function leastMakespan(problem: JobsProblem): number {
  const sets = 1 << problem.jobs.length;
  const machines = problem.jobs[0]?.runMin.length ?? 0;
  let ends = new Float64Array(sets).fill(Infinity);
  ends[0] = 0;
  for (let machine = 0; machine < machines; machine++) {
    const shortest = shortestSequences(problem, machine);
    const others = ends;
    ends = Float64Array.from({ length: sets }, (_, all) => {
      const divided = subsetsOf(all).map((own) => Math.max(shortest[own]!, others[all ^ own]!));
      return Math.min(...divided);
    });
  }
  return ends.at(-1) ?? NaN;
}

function subsetsOf(all: number): number[] {
  return Array.from({ length: all + 1 }, (_, own) => own).filter((own) => (own & all) === own);
}

/** Length of the shortest sequence of each set of jobs on one machine, by the last job (Held and Karp 1962, from memory). */
function shortestSequences({ jobs, setUpMin }: JobsProblem, machine: number): Float64Array {
  const byLast: number[][] = [jobs.map(() => Infinity)];
  for (let set = 1; set < 1 << jobs.length; set++) {
    const endWith = ({ runMin }: Job, last: number): number => {
      if (!(set & (1 << last))) return Infinity;
      const rest = set ^ (1 << last);
      const minutes = (before: number): number => (setUpMin?.(machine, before, last) ?? 0) + runMin[machine]!;
      if (rest === 0) return minutes(-1);
      return Math.min(
        ...byLast[rest]!.map((end, before) => (before === last ? Infinity : end + minutes(before))),
      );
    };
    byLast.push(jobs.map(endWith));
  }
  return Float64Array.from(byLast, (ends, set) => (set === 0 ? 0 : Math.min(...ends)));
}

import { describe, expect, test } from "vitest";
import { tardinessInstances } from "../bench/weighted-tardiness.ts";
import { searchedJobs, weightedTardiness } from "../fixtures/searched-jobs.ts";

/**
 * Single-machine weighted tardiness, OR-Library wt40 with its listed totals: Crauwels, Potts and Van Wassenhove 1998. Five of
 * 125 instances; the bench runs more of them, and wt50.
 */
const instances = tardinessInstances(40);
const NUMBERS = [6, 11, 31, 56, 86];
const STEPS = 400_000;

describe.skipIf(!instances)(
  "weighted tardiness of 40 jobs (skipped where ../shared/checks/weighted-tardiness is absent)",
  () => {
    test("the file holds 125 instances of 40 jobs, every number a whole one", () => {
      expect(instances).toHaveLength(125);
      for (const { name, jobs } of instances ?? []) {
        const numbers = jobs.flatMap(({ runMin, weight, dueMin }) => [...runMin, weight, dueMin]);
        expect([name, numbers.length, numbers.every(Number.isInteger)]).toEqual([name, 120, true]);
      }
    });

    test.each(NUMBERS)(
      "instance %i: the listed total within 400 000 steps, and the sequence added up by hand has it too",
      (number) => {
        const instance = instances?.[number - 1];
        if (!instance) throw new Error("an instance is missing");
        const { jobs, listed } = instance;
        const { cost, sequences } = searchedJobs({ jobs }, STEPS, listed);
        const sequence = sequences[0] ?? [];
        expect(sequence.toSorted((a, b) => a - b)).toEqual(jobs.map((_, job) => job));
        expect([cost, weightedTardiness({ jobs }, sequence)]).toEqual([listed, listed]);
      },
    );
  },
);

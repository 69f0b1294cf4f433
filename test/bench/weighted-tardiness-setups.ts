import { existsSync, readdirSync, readFileSync } from "node:fs";
import type { JobsProblem } from "../fixtures/jobs-problem.ts";

/**
 * Single-machine weighted tardiness with set-ups that depend on sequence, 60 jobs: V. A. Cicirello 2003, "Weighted tardiness
 * scheduling with sequence-dependent setups: a benchmark library". Read from beside the project, not part of it.
 */
const DATA = new URL("../../../shared/checks/weighted-tardiness-setups/", import.meta.url);

export interface SetUpInstance {
  readonly number: number;
  readonly problem: JobsProblem;
}

/** The instances, or null where the data is not there. */
export function setUpInstances(): SetUpInstance[] | null {
  if (!existsSync(DATA)) return null;
  return readdirSync(DATA)
    .filter((file) => file.endsWith(".instance"))
    .map((file) => instanceOf(readFileSync(new URL(file, DATA), "utf8")))
    .toSorted((a, b) => a.number - b.number);
}

function instanceOf(text: string): SetUpInstance {
  const number = Number(/Problem Instance:\s*(\d+)/.exec(text)?.[1]);
  const runs = numbersAfter(text, "Process Times:");
  const weights = numbersAfter(text, "Weights:");
  const dues = numbersAfter(text, "Duedates:");
  const setUps = new Map<string, number>();
  for (const [, from, to, minutes] of text.matchAll(/^(-?\d+)\s+(\d+)\s+(\d+)\s*$/gm)) {
    setUps.set(`${from} ${to}`, Number(minutes));
  }
  return {
    number,
    problem: {
      jobs: runs.map((run, job) => ({
        runMin: [run],
        weight: weights[job] ?? NaN,
        dueMin: dues[job] ?? NaN,
      })),
      setUpMin: (_, from, to) => setUps.get(`${from} ${to}`) ?? 0,
    },
  };
}

function numbersAfter(text: string, head: string): number[] {
  const lines = text
    .slice(text.indexOf(head) + head.length)
    .trim()
    .split("\n");
  const end = lines.findIndex((line) => !/^\s*\d+\s*$/.test(line));
  return lines.slice(0, end < 0 ? lines.length : end).map(Number);
}

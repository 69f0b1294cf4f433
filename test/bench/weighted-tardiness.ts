import { existsSync, readFileSync } from "node:fs";
import type { Job } from "../fixtures/jobs-problem.ts";

/**
 * Single-machine total weighted tardiness, OR-Library wt40 and wt50 (125 instances each), with the optimal or best-known
 * totals kept there: Crauwels, Potts and Van Wassenhove 1998, "Local search heuristics for the single machine total weighted
 * tardiness scheduling problem". Read from beside the project, not part of it.
 */
const DATA = new URL("../../../shared/checks/weighted-tardiness/", import.meta.url);

export interface TardinessInstance {
  readonly name: string;
  readonly jobs: readonly Job[];
  /** optimal or best-known total */
  readonly listed: number;
}

/** The instances of 40 or 50 jobs, or null where the data is not there. */
export function tardinessInstances(size: 40 | 50): TardinessInstance[] | null {
  if (!existsSync(DATA)) return null;
  const data = numbersOf(`wt${size}.txt`);
  const listed = numbersOf(`wtopt${size}.txt`);
  return listed.map((value, index) => {
    const from = index * 3 * size;
    const jobs = Array.from({ length: size }, (_, job) => ({
      runMin: [data[from + job] ?? NaN],
      weight: data[from + size + job] ?? NaN,
      dueMin: data[from + 2 * size + job] ?? NaN,
    }));
    return { name: `wt${size} ${index + 1}`, jobs, listed: value };
  });
}

function numbersOf(file: string): number[] {
  return readFileSync(new URL(file, DATA), "utf8").trim().split(/\s+/).map(Number);
}

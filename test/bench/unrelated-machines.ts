import { existsSync, readdirSync, readFileSync } from "node:fs";
import type { JobsProblem } from "../fixtures/jobs-problem.ts";

/**
 * Unrelated parallel machines with set-ups that depend on sequence and machine, least makespan: Vallada and Ruiz 2011, "A
 * genetic algorithm for the unrelated parallel machine scheduling problem with sequence dependent setup times"; small
 * instances with optima proven anew by dynamic programming over subsets. No set-up before the first job of a machine. Read
 * from beside the project, not part of it.
 */
const DATA = new URL("../../../shared/checks/unrelated-machines-setups/", import.meta.url);

export interface MakespanInstance {
  readonly name: string;
  readonly jobCount: number;
  readonly problem: JobsProblem;
  readonly optimum: number;
}

/** The instances, or null where the data is not there. */
export function makespanInstances(): MakespanInstance[] | null {
  if (!existsSync(DATA)) return null;
  const optima = optimaByFile();
  return readdirSync(new URL("small/", DATA)).map((file) => {
    const problem = problemOf(readFileSync(new URL(`small/${file}`, DATA), "utf8"));
    const optimum = optima.get(`small/${file}`);
    if (optimum === undefined) throw new Error(`no optimum is listed for ${file}`);
    return { name: file.replace(".txt", ""), jobCount: problem.jobs.length, problem, optimum };
  });
}

function optimaByFile(): Map<string, number> {
  const [head = "", ...rows] = readFileSync(new URL("best_known.csv", DATA), "utf8").trim().split("\n");
  const column = head.split(",").indexOf("best_known");
  return new Map(rows.map((row) => [row.split(",")[0] ?? "", Number(row.split(",")[column])]));
}

function problemOf(text: string): JobsProblem {
  const [runs = "", setUps = ""] = text.split("SSD");
  const [jobCount = 0, machineCount = 0, , , ...pairs] = runs.trim().split(/\s+/).map(Number);
  const minutes = setUps.replace(/M\d+/g, " ").trim().split(/\s+/).map(Number);
  const perMachine = jobCount * jobCount;
  return {
    jobs: Array.from({ length: jobCount }, (_, job) => ({
      runMin: Array.from(
        { length: machineCount },
        (__, machine) => pairs[2 * (job * machineCount + machine) + 1] ?? NaN,
      ),
    })),
    setUpMin: (machine, from, to) =>
      from < 0 ? 0 : (minutes[machine * perMachine + from * jobCount + to] ?? NaN),
    makespanCostPerMin: 1,
  };
}

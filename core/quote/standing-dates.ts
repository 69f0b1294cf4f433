import { type SimulatedDates, simulate } from "./dates/simulate.ts";
import { simulationTask } from "./dates/simulation-task.ts";
import type { QuoteDesk } from "./quote-desk.ts";

const known = new WeakMap<QuoteDesk, SimulatedDates>();

/**
 * The standing work lived through, against which every question's lines are compared; worked out once for a desk, with the
 * desk's seed. Null: it was stopped. Example: asked a second time for 2000 runs it takes no time.
 */
export function standingDates(desk: QuoteDesk, runs: number, stopped?: () => boolean): SimulatedDates | null {
  const before = known.get(desk);
  if (before && before.runs >= runs) return before;
  const task = simulationTask(desk.shop, desk.standingPlan);
  const dates = simulate(task, { runs, seed: desk.request.seed, ...(stopped ? { stopped } : {}) });
  if (dates.runs < runs) return null;
  known.set(desk, dates);
  return dates;
}

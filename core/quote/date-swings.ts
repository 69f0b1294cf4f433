import { dateDrivers, type DriversControl } from "./dates/date-drivers.ts";
import type { SimulationTask } from "./dates/simulation-task.ts";
import type { DateSwing } from "./quote-answer.ts";

/** How the date is looked at. */
export interface SwingControl extends Pick<DriversControl, "runs" | "seed" | "stopped"> {
  /** likelihood of the date whose swing is told, % */
  readonly promisePct: number;
}

/** Runs for each input that is tried, at most: a swing is read by eye. */
const MOST_RUNS = 1000;

/**
 * The five inputs that move a line's date most as plain data, in which a swing without end is null. Example: print times of its
 * machine move the date kept with 80 % by 326 min.
 */
export function dateSwings(
  task: SimulationTask,
  orderId: string,
  { promisePct: likelihoodPct, runs, ...control }: SwingControl,
): DateSwing[] {
  const tried = { ...control, likelihoodPct, runs: Math.min(MOST_RUNS, runs) };
  return dateDrivers(task, orderId, tried).drivers.map((driver) => ({
    ...driver,
    swingMin: Number.isFinite(driver.swingMin) ? driver.swingMin : null,
  }));
}

import { simulate, type SimulatedDates } from "../../core/quote/dates/simulate.ts";
import { type SimulationTask, simulationTask } from "../../core/quote/dates/simulation-task.ts";
import { sampleQuantile } from "../../core/quote/sample-quantile.ts";
import { aHandPlan } from "../fixtures/a-hand-plan.ts";
import { atLeast, atMost, type BenchCall, type BenchRow, median, told } from "./bench-row.ts";

const RUNS = 2000;
const BUILDS = 500;
const SECONDS = 2;
const REFERENCE_RUNS = 50_000;
const SHARES = [0.5, 0.8, 0.95] as const;
/** Quantiles of one part in a hundred of the reference are told apart. */
const WITHIN = 0.01;

/**
 * Simulating a plan of the L shop, made by a rule of thumb: how long 2000 runs take, brought to 500 builds, and how far their quantiles lie from those
 * of 50 000 other runs, as a share of the time from the start of the plan. A quantile that falls where the works sleeps jumps
 * over the night with the least of changes, so its likelihood in the reference is told too.
 */
export async function benchDates(call: BenchCall): Promise<BenchRow[]> {
  const { shop, plan } = aHandPlan("L", 1);
  const startedMs = performance.now();
  const task = simulationTask(shop, plan);
  const preparedMs = performance.now() - startedMs;
  const builds = task.builds.ids.length;
  const seconds = [1, 2, 3].map((seed) => secondsOf(task, seed));
  const perBuilds = (median(seconds) * BUILDS) / builds;
  call.say(`dates: ${builds} builds on ${task.machines.ids.length} machines, ${plan.orders.length} orders`);
  const reference = simulate(task, { runs: call.quick ? REFERENCE_RUNS / 5 : REFERENCE_RUNS, seed: 999 });
  const errors = errorsOf(simulate(task, { runs: RUNS, seed: 1 }), reference);
  return [
    told("dates: a plan of the L shop made ready for simulation", preparedMs / 1000, "s"),
    atMost(`dates: ${RUNS} runs of ${BUILDS} builds, median of 3`, perBuilds, "s", SECONDS),
    ...SHARES.flatMap((share, place) => {
      const own = errors[place] ?? { time: [], level: [] };
      const near = own.time.filter((error) => error <= WITHIN).length / own.time.length;
      const name = `dates: ${100 * share} % quantiles`;
      return [
        atMost(`${name}, median distance from ${reference.runs} runs`, 100 * median(own.time), "%", 1),
        atLeast(`${name}, share of orders within 1 %`, 100 * near, "%", 90),
        told(`${name}, largest distance`, 100 * Math.max(...own.time), "%"),
        atMost(`${name}, largest distance of their likelihood`, 100 * Math.max(...own.level), "%", 5),
      ];
    }),
  ];
}

function secondsOf(task: SimulationTask, seed: number): number {
  const startedMs = performance.now();
  simulate(task, { runs: RUNS, seed });
  return (performance.now() - startedMs) / 1000;
}

/** By share, over the orders that are whole in nearly all runs: distance in time (share of it) and in likelihood. */
function errorsOf(dates: SimulatedDates, reference: SimulatedDates): { time: number[]; level: number[] }[] {
  const errors = SHARES.map(() => ({ time: [] as number[], level: [] as number[] }));
  dates.finishedMin.forEach((finishes, order) => {
    const own = finishes.toSorted();
    const all = (reference.finishedMin[order] ?? NONE).toSorted();
    if (all[Math.ceil(0.97 * (all.length - 1))] === Infinity) return;
    SHARES.forEach((share, place) => {
      const ownMin = sampleQuantile(own, share);
      errors[place]?.time.push(Math.abs(ownMin / sampleQuantile(all, share) - 1));
      errors[place]?.level.push(levelError(all, ownMin, share));
    });
  });
  return errors;
}

const NONE = new Float64Array(0);

/** How far the share of the reference by a time lies from the share meant; 0 where many runs end at that very time. */
function levelError(all: Float64Array, atMin: number, share: number): number {
  const before = all.findIndex((value) => value >= atMin - DUST_MIN) / all.length;
  const beyond = all.findIndex((value) => value > atMin + DUST_MIN);
  const upTo = (beyond < 0 ? all.length : beyond) / all.length;
  return Math.max(0, before - share, share - upTo);
}

const DUST_MIN = 1e-6;

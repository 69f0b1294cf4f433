import type { SimulationTask } from "./simulation-task.ts";

/** One input of a simulation changed: by a factor, by people, or by minutes. */
export type TaskChange =
  | { readonly kind: "printTime"; readonly machine: number; readonly factor: number }
  | { readonly kind: "failures"; readonly machine: number; readonly factor: number }
  | { readonly kind: "spread"; readonly factor: number }
  | { readonly kind: "work"; readonly factor: number }
  | { readonly kind: "people"; readonly more: number }
  | { readonly kind: "feedstock"; readonly laterMin: number };

/**
 * The same task with one input changed: print times or failures of one machine (by its place in the task), the spread of all
 * print times, the time of all set-ups and unloads, the operators of every staffed stretch (never below one where there was
 * one), or when late feedstock is ready. Example: `{ kind: "failures", machine: 0, factor: 2 }` doubles the first hazard.
 */
export function changedTask(task: SimulationTask, change: TaskChange): SimulationTask {
  switch (change.kind) {
    case "printTime":
      return withPrintTime(task, change.machine, change.factor);
    case "failures":
      return withFailures(task, change.machine, change.factor);
    case "spread":
      return withSpread(task, change.factor);
    case "work":
      return withWork(task, change.factor);
    case "people":
      return withPeople(task, change.more);
    case "feedstock":
      return withFeedstock(task, change.laterMin);
  }
}

/** Longer prints are drawn longer; what they are planned to take, by which they are begun, stays the estimate. */
function withPrintTime(task: SimulationTask, machine: number, factor: number): SimulationTask {
  const biasOf = task.machines.timeFactor.slice();
  biasOf[machine] = biasOf[machine]! * factor;
  return { ...task, machines: { ...task.machines, timeFactor: biasOf } };
}

function withFailures(task: SimulationTask, machine: number, factor: number): SimulationTask {
  const hazardPerMin = task.machines.hazardPerMin.slice();
  hazardPerMin[machine] = hazardPerMin[machine]! * factor;
  return { ...task, machines: { ...task.machines, hazardPerMin } };
}

function withSpread(task: SimulationTask, factor: number): SimulationTask {
  const { buildVariation, machineVariation } = task.chances;
  return {
    ...task,
    chances: {
      ...task.chances,
      buildVariation: buildVariation * factor,
      machineVariation: machineVariation * factor,
    },
  };
}

function withWork(task: SimulationTask, factor: number): SimulationTask {
  const scaled = (lengths: Float64Array): Float64Array => lengths.map((lengthMin) => lengthMin * factor);
  const { builds, machines } = task;
  return {
    ...task,
    builds: { ...builds, setUpMin: scaled(builds.setUpMin), againMin: scaled(builds.againMin) },
    machines: { ...machines, unloadMin: scaled(machines.unloadMin) },
  };
}

function withPeople(task: SimulationTask, more: number): SimulationTask {
  const { operators, spare } = task.calendars;
  return {
    ...task,
    calendars: {
      ...task.calendars,
      operators: operators.map((people) => (people > 0 ? Math.max(1, people + more) : 0)),
      spare: spare.map((people) => Math.max(0, people + more)),
    },
  };
}

function withFeedstock(task: SimulationTask, laterMin: number): SimulationTask {
  const { earliestMin, setUpAtMin } = task.builds;
  const moved = earliestMin.map((atMin, build) => {
    const plannedMin = setUpAtMin[build]!;
    return atMin > plannedMin ? Math.max(plannedMin, atMin + laterMin) : atMin;
  });
  return { ...task, builds: { ...task.builds, earliestMin: moved } };
}

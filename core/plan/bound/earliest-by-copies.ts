import { leastInto } from "./cheapest-changeover.ts";
import { earliestUnloadEnd, firstEndingFrom } from "./earliest-completion.ts";
import type { PlanMachine, PlanOption, PlanProblem } from "../plan-problem.ts";

/**
 * Earliest unload of a build of one option by its copies, on the best of its machines if they were empty, remembered. Before
 * a machine prints in a state that it did not start in it has been changed to it, perhaps for an earlier build; and nothing
 * starts before its release.
 */
export function earliestByCopies(problem: PlanProblem, option: PlanOption): (copies: number) => number {
  const { setUpMin, unloadMin } = problem.classes[option.classIndex]!;
  const starts = distinctStarts(problem, option);
  const known = new Float64Array(option.copiesMax + 1);
  return (copies) => {
    if (known[copies]! > 0) return known[copies]!;
    const runMin = option.runMinByCopies[copies]!;
    let earliest = Number.POSITIVE_INFINITY;
    for (const { machine, fromMin } of starts) {
      earliest = Math.min(earliest, earliestUnloadEnd(machine, { fromMin, setUpMin, runMin, unloadMin }));
    }
    known[copies] = earliest;
    return earliest;
  };
}

interface Start {
  readonly machine: PlanMachine;
  readonly fromMin: number;
}

/** Machines and the first minute for the option's set-up on each; machines that cannot differ are asked once. */
function distinctStarts(problem: PlanProblem, option: PlanOption): Start[] {
  const { changeoverMin } = problem.classes[option.classIndex]!;
  const releaseMin = Math.max(problem.startMin, problem.lines[option.lineIndex]!.releaseMin);
  const size = problem.states.length;
  const starts = new Map<string, Start>();
  for (const index of option.machineIndices) {
    const machine = problem.machines[index]!;
    const { startState } = machine;
    const isLoaded = startState === option.stateIndex;
    const changeMin = isLoaded ? 0 : leastInto(changeoverMin, size, option.stateIndex, startState === size);
    const fromMin = Math.max(releaseMin, firstStaffedMin(machine, problem.startMin) + changeMin);
    starts.set(`${likeness(machine, index)} from ${fromMin}`, { machine, fromMin });
  }
  return [...starts.values()];
}

/** Machines of one class share their calendar, so only times out of service and committed builds make them differ. */
function likeness({ blocks, windows, segments, freeFromMin }: PlanMachine, index: number): string {
  if (blocks.length > 0) return `machine ${index}`;
  return `free ${freeFromMin}, ${windows.length} windows, ${segments.length} segments`;
}

/** First minute at which somebody can set the machine up; Infinity where never. */
function firstStaffedMin(machine: PlanMachine, startMin: number): number {
  const fromMin = Math.max(startMin, machine.freeFromMin);
  const window = machine.windows[firstEndingFrom(machine.windows, fromMin)];
  return window ? Math.max(window.startMin, fromMin) : Number.POSITIVE_INFINITY;
}

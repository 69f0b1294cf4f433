import { durationText } from "../../shop/time-words.ts";
import { at } from "../at.ts";
import type { PlanLine, PlanMachine, PlanOption, Stretch } from "../plan-problem.ts";
import type { PlanSource } from "./plan-source.ts";

/** One build that was tried: what it takes on a machine from what is loaded there, and the longest time it could have, min. */
interface Attempt {
  readonly machine: PlanMachine;
  readonly setUpMin: number;
  readonly changeoverMin: number;
  readonly runMin: number;
  readonly windowMin: number;
  readonly stretchMin: number;
}

/**
 * Why a line finds no time on any machine, with the figures of the machine that comes closest: set-up, changeover and the
 * shortest run against the longest staffed time and the longest time of one print.
 * Example: "… on Bench 1 set-up takes 10 min, changeover 9 h and the run 2 h; its longest staffed time is 8 h, …".
 */
export function noTimeWords(source: PlanSource, line: PlanLine, copies: number): string {
  const attempts = line.optionIndices.flatMap((index) =>
    attemptsOf(source, at(source.problem.options, index)),
  );
  const what = `${copies} ${copies === 1 ? "copy" : "copies"} of it`;
  const closest = attempts.toSorted((a, b) => missingMin(a) - missingMin(b))[0];
  if (!closest || missingMin(closest) === 0) return `No staffed time was found for ${what} on any machine.`;
  const { machine, setUpMin, changeoverMin, runMin, windowMin, stretchMin } = closest;
  const needs = `set-up takes ${durationText(setUpMin)}, changeover ${durationText(changeoverMin)} and the run ${durationText(runMin)}`;
  const has = `its longest staffed time is ${durationText(windowMin)}, one print may last ${durationText(stretchMin)}`;
  const { name } = source.machine(machine.machineId);
  return `No machine that can make it has a staffed time long enough for ${what}: on ${name} ${needs}; ${has}.`;
}

function attemptsOf({ problem }: PlanSource, option: PlanOption): Attempt[] {
  const { setUpMin, changeoverMin } = at(problem.classes, option.classIndex);
  return option.machineIndices.map((index) => {
    const machine = at(problem.machines, index);
    const place = machine.startState * problem.states.length + option.stateIndex;
    return {
      machine,
      setUpMin,
      changeoverMin: changeoverMin[place] ?? 0,
      runMin: option.runMinByCopies[option.copiesMin] ?? 0,
      windowMin: longestMin(machine.windows),
      stretchMin: longestMin(machine.segments),
    };
  });
}

/** How much longer the staffed time, or the time of one print, would have to be. */
function missingMin({ setUpMin, changeoverMin, runMin, windowMin, stretchMin }: Attempt): number {
  return Math.max(0, setUpMin + changeoverMin - windowMin) + Math.max(0, runMin - stretchMin);
}

function longestMin(stretches: readonly Stretch[]): number {
  return stretches.reduce((longest, { startMin, endMin }) => Math.max(longest, endMin - startMin), 0);
}

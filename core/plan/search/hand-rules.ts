import type { PlanProblem } from "../plan-problem.ts";
import { takeOutBroken } from "./promises.ts";
import { buildSize } from "./recreate.ts";
import { toSchedule } from "./saved-plan.ts";
import type { Schedule } from "../schedule.ts";
import { SearchData } from "./search-data.ts";
import type { SearchState } from "./search-state.ts";
import { emptyPlan } from "./start-plans.ts";
import type { Trial } from "./trial.ts";

/** A machine and the option to run on it. */
interface Way {
  readonly machine: number;
  readonly option: number;
}

/**
 * What a person with a list would plan: lines by due date, every build to the machine that is free first among those that
 * can make it, by the first option in the list. The yardstick for what planning is worth.
 */
export function earliestDueFirstFit(problem: PlanProblem): Schedule {
  return byDueDate(problem, (state, line) => {
    const given = problem.lines[line]?.optionIndices ?? [];
    const usable = given.filter((option) => state.data.lineOptions[line]!.includes(option));
    return machinesByFreeTime(state).flatMap((machine) => {
      const option = usable.find((index) => state.data.optionMachines[index]!.includes(machine));
      return option === undefined ? [] : [{ machine, option }];
    });
  });
}

/**
 * What a careful person with a list would plan: lines by due date, by the option that is cheapest by copy, to its machine
 * that is free first.
 */
export function earliestDueCheapest(problem: PlanProblem): Schedule {
  return byDueDate(problem, (state, line) => {
    const machines = machinesByFreeTime(state);
    return [...state.data.lineOptions[line]!].flatMap((option) =>
      machines
        .filter((machine) => state.data.optionMachines[option]!.includes(machine))
        .map((machine) => ({ machine, option })),
    );
  });
}

function byDueDate(
  problem: PlanProblem,
  ways: (state: SearchState, line: number) => readonly Way[],
): Schedule {
  const trial = emptyPlan(new SearchData(problem));
  const { state } = trial;
  const lines = problem.lines.map((_, line) => line);
  lines.sort((a, b) => state.data.dueMin[a]! - state.data.dueMin[b]! || a - b);
  for (const line of lines) {
    while (state.unplaced[line]! > 0) {
      if (!ways(state, line).some((way) => append(trial, line, way))) break;
    }
    if (state.unplaced[line]! > 0) buyRest(trial, line);
  }
  takeOutBroken(trial);
  return toSchedule(state);
}

function append(trial: Trial, line: number, { machine, option }: Way): boolean {
  const { state } = trial;
  const { data } = state;
  const copies = buildSize(state.unplaced[line]!, data.optionMin[option]!, data.optionMax[option]!);
  const build = copies > 0 ? trial.addSingle(option, copies) : -1;
  if (build < 0) return false;
  trial.setCounts(line, state.boughtOut[line]!, state.unplaced[line]! - copies);
  trial.splices.open(machine, state.length[machine]!, state.length[machine]!);
  trial.splices.put(build);
  const isPlaced = trial.evaluate() < Infinity;
  if (isPlaced) trial.commit();
  else trial.discard();
  return isPlaced;
}

function buyRest(trial: Trial, line: number): void {
  const { state } = trial;
  if (state.data.buyPrice[line] === Infinity) return;
  trial.setCounts(line, state.boughtOut[line]! + state.unplaced[line]!, 0);
  trial.evaluate();
  trial.commit();
}

function machinesByFreeTime(state: SearchState): number[] {
  const freeAt = (machine: number): number => {
    const length = state.length[machine]!;
    if (length > 0) return state.endAt[state.sequence[machine]![length - 1]!]!;
    return state.windows.windowStart[state.windows.firstWindow[machine]!] ?? 0;
  };
  return [...state.length.keys()].toSorted((a, b) => freeAt(a) - freeAt(b) || a - b);
}

import type { Chain, WeekProgram } from "./week-program.ts";

/** What one week hands to the next. */
export interface WeekState {
  /** machines that have each class and state loaded, in the program's order; parts of machines where it changes often */
  readonly loaded: Float64Array;
  /** share of each tool path that is paid for */
  readonly pathsDone: Float64Array;
  /** left over of each chain, in the order of `allChains` */
  readonly left: Float64Array;
}

/** Every chain of a program, in one order. */
export function allChains({ chains }: WeekProgram): Chain[] {
  return [...chains.staffed, ...chains.gaps.flat(), ...chains.operators];
}

/** The state before the first week: what the shop's machines have loaded, and nothing left over. */
export function firstState(program: WeekProgram): WeekState {
  const { machines, classes } = program.fleet.problem;
  const loaded = program.states.map(
    ({ classIndex, stateIndex }) =>
      classes[classIndex]!.machineIndices.filter((index) => machines[index]!.startState === stateIndex)
        .length,
  );
  return {
    loaded: Float64Array.from(loaded),
    pathsDone: new Float64Array(program.toolPaths.length),
    left: new Float64Array(allChains(program).length),
  };
}

/**
 * The state after a week. Machines of a class end the week loaded as their hours were shared out; a class with no work stays
 * as it was. What is left over is only good for orders that were known: at most the supply of so many weeks.
 */
export function nextState(
  program: WeekProgram,
  state: WeekState,
  week: {
    readonly values: Float64Array;
    readonly stateHours: Float64Array;
    readonly supplies: readonly number[];
  },
): WeekState {
  const classH = new Map<number, number>();
  program.states.forEach(({ classIndex }, at) => {
    classH.set(classIndex, (classH.get(classIndex) ?? 0) + week.stateHours[at]!);
  });
  return {
    loaded: state.loaded.map((before, at) => {
      const { classIndex } = program.states[at]!;
      const totalH = classH.get(classIndex)!;
      const machines = program.fleet.week.classes[classIndex]!.machines;
      return totalH > LEAST_HOURS ? (machines * week.stateHours[at]!) / totalH : before;
    }),
    pathsDone: state.pathsDone.map((done, at) =>
      pathsPaid(done, week.values[program.toolPaths[at]!.column]!),
    ),
    left: Float64Array.from(allChains(program), ({ leftColumn }, at) =>
      Math.max(0, Math.min(week.values[leftColumn]!, program.knownWeeksAhead * week.supplies[at]!)),
    ),
  };
}

/**
 * Share of a tool path that is paid for after a week: tool paths are made whole as soon as the program has paid for half of
 * them. Example: 0.3 before and 0.1 in the week are 0.4; 0.3 and 0.2 are 1.
 */
export function pathsPaid(before: number, more: number): number {
  const paid = before + more;
  return paid < MADE_WHOLE - DUST ? paid : 1;
}

const MADE_WHOLE = 0.5;
const DUST = 1e-9;

/** Fewer hours of a class than this say nothing about what it has loaded. */
const LEAST_HOURS = 1e-6;

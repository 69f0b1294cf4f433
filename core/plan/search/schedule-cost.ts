import type { Delivery } from "../write/lateness.ts";
import { latenessOf } from "../write/lateness.ts";
import type { PlanProblem } from "../plan-problem.ts";
import { movingCost } from "../replan/kept-builds.ts";
import type { Schedule, ScheduledBuild } from "../schedule.ts";

/** Everything that a schedule decides, without its cost. */
export type ScheduleDecisions = Omit<Schedule, "cost">;

/**
 * Money of a schedule from the problem alone, every part added up anew: builds, changeovers by what each machine had loaded,
 * tool paths once each, copies bought out, lateness, builds of an earlier plan that were moved. Copies without a place cost nothing here.
 */
export function scheduleCost(problem: PlanProblem, schedule: ScheduleDecisions): number {
  const builds = schedule.builds.reduce((sum, build) => sum + buildMoney(problem, build), 0);
  const bought = schedule.boughtOut.reduce(
    (sum, { lineIndex, copies }) => sum + copies * (lineAt(problem, lineIndex).buyOut?.pricePerPiece ?? 0),
    0,
  );
  return (
    builds +
    bought +
    changeoverMoney(problem, schedule) +
    engineeringMoney(problem, schedule) +
    lateMoney(problem, schedule) +
    makespanMoney(problem, schedule) +
    movingCost(problem, schedule.builds)
  );
}

function buildMoney(problem: PlanProblem, { items }: ScheduledBuild): number {
  const only = items[0];
  if (!only) throw new RangeError("a build with no items");
  if (items.length > 1) return problem.mixedCost(items);
  return optionAt(problem, only.optionIndex).costByCopies[only.copies] ?? Infinity;
}

function changeoverMoney(problem: PlanProblem, { builds }: ScheduleDecisions): number {
  let money = 0;
  problem.machines.forEach((machine, machineIndex) => {
    const facts = problem.classes[machine.classIndex];
    let loaded = machine.startState;
    const own = builds.filter((build) => build.machineIndex === machineIndex);
    for (const { items } of own.toSorted((a, b) => a.setUpStartMin - b.setUpStartMin)) {
      const target = optionAt(problem, items[0]?.optionIndex ?? -1).stateIndex;
      money += facts?.changeoverCost[loaded * problem.states.length + target] ?? Infinity;
      loaded = target;
    }
  });
  return money;
}

function engineeringMoney(problem: PlanProblem, { builds }: ScheduleDecisions): number {
  const used = new Set(
    builds.flatMap(({ items }) => items.map((item) => optionAt(problem, item.optionIndex).engineeringIndex)),
  );
  return [...used].reduce((sum, index) => sum + (problem.engineering[index]?.cost ?? 0), 0);
}

function lateMoney(problem: PlanProblem, { builds, boughtOut }: ScheduleDecisions): number {
  const deliveries: Delivery[][] = problem.lines.map(() => []);
  for (const { items, unloadEndMin } of builds) {
    for (const { optionIndex, copies } of items) {
      deliveries[optionAt(problem, optionIndex).lineIndex]?.push({ copies, endMin: unloadEndMin });
    }
  }
  for (const { lineIndex, copies } of boughtOut) {
    const endMin = lineAt(problem, lineIndex).buyOut?.arriveMin ?? Infinity;
    deliveries[lineIndex]?.push({ copies, endMin });
  }
  return problem.lines.reduce(
    (sum, line, index) => sum + latenessOf(line, deliveries[index] ?? []).chargedMin * line.lateCostPerMin,
    0,
  );
}

function makespanMoney(problem: PlanProblem, { builds }: ScheduleDecisions): number {
  const lastMin = builds.reduce((last, build) => Math.max(last, build.unloadEndMin), problem.startMin);
  return (problem.makespanCostPerMin ?? 0) * (lastMin - problem.startMin);
}

function optionAt(problem: PlanProblem, index: number): PlanProblem["options"][number] {
  const option = problem.options[index];
  if (!option) throw new RangeError(`no such option: ${index}`);
  return option;
}

function lineAt(problem: PlanProblem, index: number): PlanProblem["lines"][number] {
  const line = problem.lines[index];
  if (!line) throw new RangeError(`no such line: ${index}`);
  return line;
}

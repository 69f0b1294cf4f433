import { listed } from "../../shop/finding.ts";
import { durationText } from "../../shop/time-words.ts";
import { earliestFinish } from "../compile/earliest-finish.ts";
import type { LineOutcome } from "./line-outcomes.ts";
import type { PlanDocument } from "../plan-document.ts";
import type { PlanLine } from "../plan-problem.ts";
import { at } from "../at.ts";
import type { PlanSource } from "./plan-source.ts";
import type { ScheduledBuild } from "../schedule.ts";
import { whatHelps } from "./what-helps.ts";

/**
 * Why a line is late and what would help, in sentences made of the plan's own facts: what comes off last, when it would be
 * finished with no other order in the way, what its machine makes before it, and how long it waits for people.
 */
export function whyLate(source: PlanSource, outcome: LineOutcome, prices: PlanDocument["prices"]): string[] {
  const { line, lateness } = outcome;
  const last = lastBuild(source, line);
  const facts = [lastWords(source, outcome, last), aloneWords(source, outcome)];
  if (last) facts.push(...waitWords(source, line, last), ...unloadWords(source, last));
  return [...facts.filter((words) => words !== ""), ...whatHelps(source, line, lateness, last, prices)];
}

/** The build that brings a line's last copies; null where those are bought out. */
function lastBuild({ problem, schedule }: PlanSource, line: PlanLine): ScheduledBuild | null {
  let last: ScheduledBuild | null = null;
  for (const build of schedule.builds) {
    const makesIt = build.items.some(
      (item) => at(problem.options, item.optionIndex).lineIndex === line.index,
    );
    if (makesIt && (!last || build.unloadEndMin > last.unloadEndMin)) last = build;
  }
  const bought = schedule.boughtOut.some(({ lineIndex }) => lineIndex === line.index);
  const arriveMin = bought ? (line.buyOut?.arriveMin ?? 0) : 0;
  return last && last.unloadEndMin >= arriveMin ? last : null;
}

function lastWords(source: PlanSource, { line, lateness }: LineOutcome, last: ScheduledBuild | null): string {
  const finished = source.when(lateness.finishedMin ?? line.dueMin);
  const late = `${durationText(lateness.lateMin)} after the due date`;
  if (!last) return `Its last copies are bought out and arrive on ${finished}, ${late}.`;
  const { machineId } = at(source.problem.machines, last.machineIndex);
  return `Its last copies come off ${source.machine(machineId).name} on ${finished}, ${late}.`;
}

function aloneWords(source: PlanSource, { line }: LineOutcome): string {
  const planned = plannedCopies(source, line);
  const alone = planned > 0 ? earliestFinish(source.problem, line, planned) : null;
  if (!alone) return "";
  const finish = source.when(alone.finishMin);
  if (alone.finishMin <= line.dueMin) {
    return `With no other order in the way it would be finished on ${finish}, in time: it gives way to other orders, or to a cheaper way of making it.`;
  }
  const late = durationText(alone.finishMin - line.dueMin);
  const released =
    line.releaseMin > source.problem.startMin
      ? ` It is released only on ${source.when(line.releaseMin)}.`
      : "";
  return `Even with no other order in the way it would be finished only on ${finish}, ${late} after the due date.${released}`;
}

function plannedCopies({ problem, schedule }: PlanSource, line: PlanLine): number {
  let copies = 0;
  for (const build of schedule.builds) {
    for (const item of build.items) {
      if (at(problem.options, item.optionIndex).lineIndex === line.index) copies += item.copies;
    }
  }
  return copies;
}

/** What the machine does between the moment the line could start there and its last build. */
function waitWords(source: PlanSource, line: PlanLine, last: ScheduledBuild): string[] {
  const { problem, schedule } = source;
  const machine = at(problem.machines, last.machineIndex);
  const fromMin = Math.max(line.releaseMin, machine.freeFromMin);
  const before = schedule.builds
    .filter((build) => build.machineIndex === last.machineIndex)
    .filter((build) => build.unloadEndMin > fromMin && build.setUpStartMin < last.setUpStartMin)
    .toSorted((a, b) => b.setUpStartMin - a.setUpStartMin);
  const { name } = source.machine(machine.machineId);
  const start = source.when(last.setUpStartMin);
  const words =
    before.length > 0
      ? [`Before it, until ${start}, ${name} makes, the latest first, ${ordersText(source, before)}.`]
      : [];
  const idleFromMin = Math.max(fromMin, before[0]?.unloadEndMin ?? fromMin);
  const idleMin = last.setUpStartMin - idleFromMin;
  if (idleMin < WORTH_SAYING_MIN) return words;
  const idle = `From ${source.when(idleFromMin)} to ${start} nobody sets it up: ${durationText(idleMin)}, of which ${durationText(staffedMin(source, last.machineIndex, idleFromMin, last.setUpStartMin))} are staffed for ${name}.`;
  return [...words, idle];
}

function staffedMin({ problem }: PlanSource, machineIndex: number, fromMin: number, toMin: number): number {
  return at(problem.machines, machineIndex).windows.reduce(
    (sum, { startMin, endMin }) => sum + Math.max(0, Math.min(endMin, toMin) - Math.max(startMin, fromMin)),
    0,
  );
}

function unloadWords(source: PlanSource, last: ScheduledBuild): string[] {
  const { classIndex } = at(source.problem.machines, last.machineIndex);
  const unloadFromMin = last.unloadEndMin - at(source.problem.classes, classIndex).unloadMin;
  const waitMin = unloadFromMin - last.printEndMin;
  if (waitMin < WORTH_SAYING_MIN) return [];
  return [
    `It is printed by ${source.when(last.printEndMin)} and waits ${durationText(waitMin)} for somebody to take it off.`,
  ];
}

/** Shorter waits explain nothing. */
const WORTH_SAYING_MIN = 60;

function ordersText({ problem }: PlanSource, builds: readonly ScheduledBuild[]): string {
  const ids = builds.flatMap((build) =>
    build.items.map((item) => at(problem.lines, at(problem.options, item.optionIndex).lineIndex).orderId),
  );
  return listed([...new Set(ids)]);
}

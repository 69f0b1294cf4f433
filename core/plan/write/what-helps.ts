import { findRoutes } from "../../estimate/find-routes.ts";
import type { RouteAnswer, RouteReason } from "../../estimate/route.ts";
import type { Machine } from "../../shop/machine.ts";
import { roundMoney } from "../../units/money.ts";
import { durationText } from "../../shop/time-words.ts";
import { copiesBy } from "../compile/earliest-finish.ts";
import type { Lateness } from "./lateness.ts";
import type { PlanDocument } from "../plan-document.ts";
import type { PlanLine } from "../plan-problem.ts";
import { at } from "../at.ts";
import type { PlanSource } from "./plan-source.ts";
import type { ScheduledBuild } from "../schedule.ts";

/**
 * What would bring a late line forward, in sentences: somebody there at a certain hour, one more staffed hour at its
 * confirmed price, machines that are ruled out and why, a pin taken off, buying out, a smaller quantity first.
 */
export function whatHelps(
  source: PlanSource,
  line: PlanLine,
  lateness: Lateness,
  last: ScheduledBuild | null,
  prices: PlanDocument["prices"],
): string[] {
  return [
    ...(last ? earlierSetUp(source, line, last, lateness) : []),
    ...(last ? overtime(source, last, lateness) : []),
    ...(last ? pricedHours(source, last, line, prices) : []),
    ...pin(source, line),
    ...(timeIsMissing(source, line, last) ? [] : ruledOut(source, line)),
    ...buyOut(source, line, lateness),
    ...smallerFirst(source, line),
  ];
}

/** Where its machine stands idle before it for as long as it is late, and is not out of service then. */
function earlierSetUp(
  source: PlanSource,
  line: PlanLine,
  last: ScheduledBuild,
  lateness: Lateness,
): string[] {
  const machine = at(source.problem.machines, last.machineIndex);
  const ends = source.schedule.builds
    .filter((build) => build.machineIndex === last.machineIndex && build.setUpStartMin < last.setUpStartMin)
    .map((build) => build.unloadEndMin);
  const idleMin = last.setUpStartMin - Math.max(line.releaseMin, machine.freeFromMin, ...ends);
  const fromMin = last.setUpStartMin - lateness.lateMin;
  const isOut = machine.blocks.some((b) => b.startMin < last.setUpStartMin && b.endMin > fromMin);
  if (idleMin < lateness.lateMin || isOut) return [];
  const { name } = source.machine(machine.machineId);
  return [
    `Would help: somebody at ${name} to set it up ${durationText(lateness.lateMin)} before ${source.when(last.setUpStartMin)}; it stands idle then.`,
  ];
}

function overtime(source: PlanSource, last: ScheduledBuild, lateness: Lateness): string[] {
  const { classIndex, machineId } = at(source.problem.machines, last.machineIndex);
  const { unloadMin } = at(source.problem.classes, classIndex);
  const savedMin = Math.min(lateness.lateMin, last.unloadEndMin - unloadMin - last.printEndMin);
  if (savedMin < WORTH_SAYING_MIN) return [];
  const end = source.when(last.printEndMin);
  return [
    `Would help: somebody at ${source.machine(machineId).name} on ${end} to take it off brings it forward by ${durationText(savedMin)}.`,
  ];
}

const WORTH_SAYING_MIN = 60;

/** The dearest confirmed machine hour on its machine before it is finished. */
function pricedHours(
  source: PlanSource,
  last: ScheduledBuild,
  line: PlanLine,
  prices: PlanDocument["prices"],
): string[] {
  const { machineId } = at(source.problem.machines, last.machineIndex);
  const useful = prices.machineHour
    .filter((price) => price.machineIds.includes(machineId) && price.moreSavesPerH > 0)
    .filter(
      (price) => source.minute(price.from) < last.unloadEndMin && source.minute(price.to) > line.releaseMin,
    )
    .toSorted((a, b) => b.moreSavesPerH - a.moreSavesPerH);
  const best = useful[0];
  if (!best) return [];
  const { currency } = source.shop;
  const from = source.when(source.minute(best.from));
  const to = source.when(source.minute(best.to));
  const saving = `${roundMoney(best.moreSavesPerH, currency)} ${currency}`;
  return [
    `Would help: one more staffed hour on ${source.machine(machineId).name} between ${from} and ${to} saves about ${saving} in the whole plan.`,
  ];
}

function pin(source: PlanSource, line: PlanLine): string[] {
  const { pinned } = source.order(line.orderId);
  const to = [
    ...(pinned?.machineId ? [`machine ${source.machine(pinned.machineId).name}`] : []),
    ...(pinned?.feedstockId ? [`feedstock ${source.feedstock(pinned.feedstockId).name}`] : []),
  ];
  return to.length > 0
    ? [`Would help: taking off its pin to ${to.join(" and ")}, if others can make it.`]
    : [];
}

/**
 * Whether machines could make it and only their time is missing: it is bought out all the same, or none of them is staffed
 * before it is due. What is wrong with other machines matters little then.
 */
function timeIsMissing({ problem }: PlanSource, line: PlanLine, last: ScheduledBuild | null): boolean {
  if (line.optionIndices.length === 0) return false;
  if (!last) return true;
  const machines = new Set(line.optionIndices.flatMap((index) => at(problem.options, index).machineIndices));
  return [...machines].every((index) =>
    at(problem.machines, index).windows.every(
      ({ startMin, endMin }) => Math.max(startMin, line.releaseMin) >= Math.min(endMin, line.dueMin),
    ),
  );
}

/** Machines that cannot make it, those with the fewest reasons against them first. */
function ruledOut(source: PlanSource, line: PlanLine): string[] {
  const { problem, shop } = source;
  if (shop.orders.length > 0 && source.order(line.orderId).pinned?.machineId) return [];
  const possible = new Set(line.optionIndices.map((index) => at(problem.options, index).classIndex));
  const part = source.part(line.partId);
  const refused = problem.classes.flatMap((facts, classIndex) => {
    if (possible.has(classIndex)) return [];
    const machine = source.machine(at(problem.machines, at(facts.machineIndices, 0)).machineId);
    const reasons = fewestReasons(findRoutes(part, machine, shop.feedstocks));
    return reasons.length > 0 ? [{ machine, reasons }] : [];
  });
  return refused
    .filter(({ reasons }) => reasons.length <= MOST_REASONS)
    .toSorted((a, b) => a.reasons.length - b.reasons.length)
    .slice(0, SHOWN)
    .map(({ machine, reasons }) => ruledOutWords(machine, reasons));
}

const SHOWN = 2;
/** A machine with more reasons against it is too far off to be worth a word. */
const MOST_REASONS = 2;

function ruledOutWords(machine: Machine, reasons: readonly RouteReason[]): string {
  const why = reasons.map(({ sentence }) => sentence.replace(/\.$/, "")).join("; ");
  return `Ruled out: ${machine.name} (${why}).`;
}

function fewestReasons(answers: readonly RouteAnswer[]): readonly RouteReason[] {
  let fewest: readonly RouteReason[] = [];
  for (const answer of answers) {
    if (answer.status !== "refused") return [];
    if (fewest.length === 0 || answer.reasons.length < fewest.length) fewest = answer.reasons;
  }
  return fewest;
}

function buyOut(source: PlanSource, line: PlanLine, lateness: Lateness): string[] {
  const { currency } = source.shop;
  if (!line.buyOut || (lateness.finishedMin ?? 0) <= line.buyOut.arriveMin) return [];
  const inTime = line.buyOut.arriveMin <= line.dueMin ? "in time" : "earlier, though also late";
  const price = `${roundMoney(line.buyOut.pricePerPiece, currency)} ${currency} a copy`;
  return [
    `Would help: copies made elsewhere arrive on ${source.when(line.buyOut.arriveMin)}, ${inTime}, for ${price}; the plan found that dearer than being late.`,
  ];
}

function smallerFirst(source: PlanSource, line: PlanLine): string[] {
  if (line.quantity < 2) return [];
  const done = copiesInTime(source, line);
  if (done > 0) {
    return [
      `Would help: a part delivery. ${done} of ${line.quantity} copies ${done === 1 ? "is" : "are"} finished by the due date in this plan.`,
    ];
  }
  const possible = copiesBy(source.problem, line, line.dueMin);
  if (possible === 0 || possible === line.quantity) return [];
  return [
    `Would help: a smaller quantity first. With no other order in the way ${possible} of ${line.quantity} copies could be finished by the due date.`,
  ];
}

function copiesInTime({ problem, schedule }: PlanSource, line: PlanLine): number {
  let copies = 0;
  for (const build of schedule.builds) {
    if (build.unloadEndMin > line.dueMin) continue;
    for (const item of build.items) {
      if (at(problem.options, item.optionIndex).lineIndex === line.index) copies += item.copies;
    }
  }
  return copies;
}

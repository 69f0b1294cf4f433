import type { CostLine } from "../cost/cost-line.ts";
import type { PlanDocument, PlannedBuild } from "../plan/plan-document.ts";
import type { Machine } from "../shop/machine.ts";
import type { Shop } from "../shop/shop.ts";
import { minuteOf } from "../shop/instants.ts";
import { MIN_PER_H } from "../units/conversions.ts";
import { roundToTotal } from "../units/money.ts";
import { countText, fixedText } from "./display.ts";

/** Facts of a plan that every report states, put in one order so that all reports say the same. */
export type OrderOutcome = PlanDocument["orders"][number];
export type PlanTask = PlanDocument["tasks"][number];

/** Late orders, the costliest lateness first. */
export function lateOrders(plan: PlanDocument): OrderOutcome[] {
  return plan.orders
    .filter((order) => order.lateMin > 0)
    .toSorted((a, b) => b.lateCost - a.lateCost || b.lateMin - a.lateMin || compare(a.orderId, b.orderId));
}

/** Every cost line of a plan with the amount that is shown: rounded so that the shown amounts add up to the shown total. */
export function shownCostLines(plan: PlanDocument): { readonly line: CostLine; readonly shown: number }[] {
  const lines: CostLine[] = [...plan.builds.flatMap((build) => build.costLines), ...plan.costLines].map(
    asCostLine,
  );
  const shown = roundToTotal(
    lines.map((line) => line.amount),
    plan.currency,
  );
  return lines.map((line, index) => ({ line, shown: shown[index] ?? 0 }));
}

/** Machines in the order of the shop with their builds in time order; a machine that the shop no longer has comes last. */
export function buildsByMachine(
  shop: Shop,
  plan: PlanDocument,
): { readonly machineId: string; readonly machine: Machine | null; readonly builds: PlannedBuild[] }[] {
  const known = new Map(shop.machines.map((machine) => [machine.id, machine]));
  const groups = new Map<string, PlannedBuild[]>(shop.machines.map((machine) => [machine.id, []]));
  for (const build of plan.builds)
    groups.set(build.machineId, [...(groups.get(build.machineId) ?? []), build]);
  return [...groups].map(([machineId, builds]) => ({
    machineId,
    machine: known.get(machineId) ?? null,
    builds: inTimeOrder(builds, (build) => build.setUpStart, plan.timeZone),
  }));
}

/** Operators' tasks by local day, in time order. */
export function tasksByDay(
  plan: PlanDocument,
  dateOf: (epochMin: number) => string,
): { readonly date: string; readonly tasks: PlanTask[] }[] {
  const days = new Map<string, PlanTask[]>();
  for (const task of inTimeOrder(plan.tasks, (entry) => entry.at, plan.timeZone)) {
    const date = dateOf(minuteOf(task.at, plan.timeZone));
    days.set(date, [...(days.get(date) ?? []), task]);
  }
  return [...days].map(([date, tasks]) => ({ date, tasks }));
}

/** A list by time. Instants are compared as times, not as text: offsets differ where clocks change. */
export function inTimeOrder<T>(
  entries: readonly T[],
  instantOfEntry: (entry: T) => string,
  timeZone: string,
): T[] {
  return entries
    .map((entry) => ({ entry, atMin: minuteOf(instantOfEntry(entry), timeZone) }))
    .toSorted((a, b) => a.atMin - b.atMin)
    .map(({ entry }) => entry);
}

/** Hours from the start of set-up to the end of unloading, all builds of the plan that still run or are to come. */
export function machineHours(plan: PlanDocument): number {
  let minutes = 0;
  for (const build of plan.builds)
    minutes += minuteOf(build.unloadEnd, plan.timeZone) - minuteOf(build.setUpStart, plan.timeZone);
  return minutes / MIN_PER_H;
}

/** Copies of one order that have no place in the plan, with every reason, none twice. */
export interface WithoutPlace {
  readonly orderId: string;
  readonly copies: number;
  readonly sentences: readonly string[];
}

/** The reasons of a late or unplanned order, and apart from them what would help: sentences that the plan marks so. */
export function reasonsAndHelp(why: readonly string[]): { reasons: string[]; help: string[] } {
  return {
    reasons: why.filter((sentence) => !sentence.startsWith(HELP_MARK)),
    help: why
      .filter((sentence) => sentence.startsWith(HELP_MARK))
      .map((sentence) => capital(sentence.slice(HELP_MARK.length))),
  };
}

const HELP_MARK = "Would help: ";

/** A sentence of `help` with its mark again, for plain text. Example: "A part delivery." gives "Would help: a part delivery." */
export function withMark(sentence: string): string {
  return HELP_MARK + sentence.charAt(0).toLowerCase() + sentence.slice(1);
}

/** A text with a capital first letter. Example: "this plan" gives "This plan". */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Copies without a place, one entry for each order, in the order of the plan. */
export function withoutPlace(plan: PlanDocument): WithoutPlace[] {
  const byOrder = new Map<string, WithoutPlace>();
  for (const { orderId, copies, reasons } of plan.unplanned) {
    const before = byOrder.get(orderId) ?? { orderId, copies: 0, sentences: [] };
    const sentences = new Set([...before.sentences, ...reasons.map((reason) => reason.sentence)]);
    byOrder.set(orderId, { orderId, copies: before.copies + copies, sentences: [...sentences] });
  }
  return [...byOrder.values()];
}

/**
 * Copies of those ordered; 0 stands for a quantity that cannot be read. Example: 2 of 6 gives "2 of 6 copies", 1 of 1 gives
 * "1 copy", 2 of an unknown order "2 copies".
 */
export function shareText(copies: number, ordered: number | undefined): string {
  if (copies === 0) return "copies that cannot be counted";
  if (ordered === undefined || ordered === copies) return countText(copies, "copy", "copies");
  return `${fixedText(copies, 0)} of ${countText(ordered, "copy", "copies")}`;
}

/** Copies bought out by order. */
export function boughtOutCopies(plan: PlanDocument): Map<string, number> {
  const copies = new Map<string, number>();
  for (const entry of plan.boughtOut)
    copies.set(entry.orderId, (copies.get(entry.orderId) ?? 0) + entry.copies);
  return copies;
}

/** Copies without a place in the plan. */
export function unplannedCopies(plan: PlanDocument): number {
  return plan.unplanned.reduce((sum, entry) => sum + entry.copies, 0);
}

/** Said beside the cost of a plan that leaves copies out, which makes it cheap. Example: 3 gives "3 copies without a place". */
export function withoutPlaceText(copies: number): string {
  return `${countText(copies, "copy", "copies")} without a place`;
}

/** What one hour more or less is worth: of a machine or, where a calendar is named, of an operator. */
export interface HourWorth {
  readonly machineIds: readonly string[];
  readonly calendarId: string | null;
  readonly from: string;
  readonly to: string;
  readonly moreSavesPerH: number;
  readonly lessCostsPerH: number;
}

/** Hours that are worth anything, those that save most first. */
export function hoursWorth({ prices }: PlanDocument): HourWorth[] {
  return [
    ...prices.machineHour.map((price) => ({ ...price, calendarId: null })),
    ...prices.operatorHour.map((price) => ({ ...price, machineIds: [] })),
  ]
    .filter((price) => price.moreSavesPerH > 0 || price.lessCostsPerH > 0)
    .toSorted((a, b) => b.moreSavesPerH - a.moreSavesPerH || b.lessCostsPerH - a.lessCostsPerH);
}

/** What a build makes, short. Example: "O-17 × 4, O-21 × 2". */
export function itemsText(build: PlannedBuild): string {
  return build.items.map((item) => `${item.orderId} × ${item.copies}`).join(", ");
}

/** Text order that is the same on every machine, whatever its language. */
export function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function asCostLine(line: PlanDocument["costLines"][number]): CostLine {
  const { machineId, feedstockId, buildId, ...rest } = line;
  return {
    ...rest,
    ...(machineId === undefined ? {} : { machineId }),
    ...(feedstockId === undefined ? {} : { feedstockId }),
    ...(buildId === undefined ? {} : { buildId }),
  };
}

import { say } from "../../estimate/say.ts";
import { listed } from "../../shop/finding.ts";
import { localDayNumber } from "../../shop/instants.ts";
import { durationText } from "../../shop/time-words.ts";
import { MIN_PER_H } from "../../units/conversions.ts";
import type { OperatorTask, PlannedBuild } from "../plan-document.ts";
import type { Stretch } from "../plan-problem.ts";
import type { PlanSource } from "./plan-source.ts";
import { joinTouching } from "../time/stretches.ts";

/**
 * Drying ends when a build's set-up starts, so it begins `dryH` before or, where nobody is there then, shortly before
 * people leave the last time. Builds of one feedstock and calendar whose drying begins in the same staffed stretch of one
 * day are one task, at the earliest of their starts. Where the plan begins too late to dry long enough, the task says so.
 * Example: 4 h for a set-up at 06:00 on Tuesday with people there until 22:00 on Monday begins on Monday at 21:45.
 */
export function dryTasks(
  source: PlanSource,
  builds: readonly PlannedBuild[],
  fromMin: number,
): OperatorTask[] {
  const groups = new Map<string, Drying[]>();
  for (const build of builds) {
    if (source.feedstock(build.feedstockId).dryH === 0 || source.minute(build.setUpStart) < fromMin) continue;
    const drying = dryingOf(source, build, fromMin);
    groups.set(drying.group, [...(groups.get(drying.group) ?? []), drying]);
  }
  return [...groups.values()].map((group) => dryTask(source, group));
}

/** When the feedstock of one build goes into the dryer. */
interface Drying {
  readonly build: PlannedBuild;
  readonly startMin: number;
  readonly setUpStartMin: number;
  /** dryings with equal groups are one task */
  readonly group: string;
}

function dryingOf(source: PlanSource, build: PlannedBuild, fromMin: number): Drying {
  const { calendarId } = source.machine(build.machineId);
  const setUpStartMin = source.minute(build.setUpStart);
  const latestMin = setUpStartMin - dryMin(source, build);
  const staffed = staffedStretches(source, calendarId);
  const stretch = staffed.findLast(({ startMin }) => startMin <= latestMin);
  if (!stretch) {
    const startMin = Math.min(setUpStartMin, Math.max(fromMin, staffed[0]?.startMin ?? fromMin));
    return { build, startMin, setUpStartMin, group: key(build, calendarId, "short", startMin) };
  }
  const lastMin = Math.max(stretch.startMin, stretch.endMin - BEFORE_LEAVING_MIN);
  const startMin = latestMin < stretch.endMin ? latestMin : lastMin;
  const day = localDayNumber(startMin, source.shop.timeZone);
  return { build, startMin, setUpStartMin, group: key(build, calendarId, stretch.startMin, day) };
}

/** Nobody fills a dryer in the last minutes of a shift. */
const BEFORE_LEAVING_MIN = 15;

function key(build: PlannedBuild, ...rest: readonly (string | number)[]): string {
  return JSON.stringify([build.feedstockId, ...rest]);
}

function dryMin(source: PlanSource, build: PlannedBuild): number {
  return Math.round(source.feedstock(build.feedstockId).dryH * MIN_PER_H);
}

/** Time from the plan's start on in which somebody is there. */
function staffedStretches({ problem }: PlanSource, calendarId: string): Stretch[] {
  const calendar = problem.calendars.find((candidate) => candidate.calendarId === calendarId);
  return joinTouching((calendar?.operators ?? []).filter(({ operators }) => operators > 0));
}

function dryTask(source: PlanSource, group: readonly Drying[]): OperatorTask {
  const inOrder = group.toSorted((a, b) => a.startMin - b.startMin || a.setUpStartMin - b.setUpStartMin);
  const [first, ...others] = inOrder;
  if (!first) throw new Error("a drying task needs a build");
  const { name, dryC, dryH } = source.feedstock(first.build.feedstockId);
  const massKg = group.reduce((sum, { build }) => sum + build.massKg, 0);
  const needing = new Set(group.map(({ build }) => build.machineId));
  const machines = source.shop.machines.filter(({ id }) => needing.has(id)).map((machine) => machine.name);
  const leftMin = Math.min(...group.map(({ setUpStartMin }) => setUpStartMin)) - first.startMin;
  const isShort = leftMin < dryMin(source, first.build);
  const drying = `${say(dryH)} h at ${say(dryC)} \u00b0C`;
  const left = leftMin > 0 ? `only ${durationText(leftMin)}` : "no time";
  return {
    at: source.instant(first.startMin),
    endAt: source.instant(first.startMin + (isShort ? leftMin : dryMin(source, first.build))),
    kind: "dry",
    machineId: null,
    buildId: first.build.id,
    ...(others.length > 0 ? { alsoFor: others.map(({ build }) => build.id) } : {}),
    text: `${say(massKg)} kg of ${name} for ${listed(machines)}: ${isShort ? `${left} for ${drying}, use what is dry` : drying}`,
  };
}

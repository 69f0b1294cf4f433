import type { Machine } from "../shop/machine.ts";
import { MIN_PER_H } from "../units/conversions.ts";
import { say } from "../estimate/say.ts";
import { listed } from "../shop/finding.ts";
import { lengthText, localText } from "./local-moments.ts";
import type { PlanDocument, PlannedBuild } from "./plan-document.ts";
import type { PlanSource } from "./plan-source.ts";

export type OperatorTask = PlanDocument["tasks"][number];

/**
 * The operators' work of all builds from a given minute on, in time order: dry the feedstock, change over, set up, unload,
 * finish. Feedstock that several builds need dry at the same minute is one task. Drying, changing over and setting up end
 * when the build is ready to print; finishing starts when it is unloaded and may be done later.
 */
export function operatorTasks(
  source: PlanSource,
  builds: readonly PlannedBuild[],
  fromMin: number,
): OperatorTask[] {
  const ahead = builds.filter((build) => source.minute(build.unloadEnd) > fromMin);
  const tasks = ahead.flatMap((build) => buildTasks(source, build, fromMin));
  const all = [...dryTasks(source, ahead, fromMin), ...tasks];
  return all.toSorted((a, b) => source.minute(a.at) - source.minute(b.at) || order(a) - order(b));
}

function order(task: OperatorTask): number {
  return ["unload", "finish", "dry", "changeOver", "setUp"].indexOf(task.kind);
}

function buildTasks(source: PlanSource, build: PlannedBuild, fromMin: number): OperatorTask[] {
  const machine = source.machine(build.machineId);
  const setUp = source.minute(build.setUpStart) >= fromMin ? setUpTasks(source, build, machine) : [];
  return [...setUp, unloadTask(source, build, machine), ...finishTask(source, build)];
}

function setUpTasks(source: PlanSource, build: PlannedBuild, machine: Machine): OperatorTask[] {
  const startMin = source.minute(build.setUpStart);
  const changedMin = startMin + Math.round(build.changeoverMin);
  const task = taskOf(source, build);
  const feedstock = source.feedstock(build.feedstockId).name;
  const setUp = task("setUp", changedMin, source.minute(build.printStart), machine.id, [
    `Set up ${machine.name} and start ${piecesText(source, build)}`,
    `: ${feedstock}, nozzle ${build.nozzleId}, layer ${numberText(build.layerHeightMm)} mm,`,
    ` bead ${numberText(build.beadWidthMm)} mm, axis ${build.orientation} up.`,
  ]);
  if (build.changeoverMin === 0) return [setUp];
  const change = task("changeOver", startMin, changedMin, machine.id, [
    `Change ${machine.name} over to ${feedstock} with nozzle ${build.nozzleId}: ${lengthText(build.changeoverMin)}.`,
  ]);
  return [change, setUp];
}

function unloadTask(source: PlanSource, build: PlannedBuild, machine: Machine): OperatorTask {
  const endMin = source.minute(build.unloadEnd);
  const printed = localText(source.minute(build.printEnd), source.shop.timeZone);
  return taskOf(source, build)("unload", endMin - Math.ceil(machine.unloadMin), endMin, machine.id, [
    `Take ${piecesText(source, build)} off ${machine.name}; printing ends at ${printed}.`,
  ]);
}

function finishTask(source: PlanSource, build: PlannedBuild): OperatorTask[] {
  let labourMin = 0;
  let machiningMin = 0;
  for (const { orderId, copies } of build.items) {
    const { finishing } = source.part(source.order(orderId).partId);
    labourMin += copies * finishing.labourMin;
    machiningMin += copies * finishing.machiningMin;
  }
  if (labourMin + machiningMin === 0) return [];
  const startMin = source.minute(build.unloadEnd);
  const endMin = startMin + Math.ceil(labourMin + machiningMin);
  const parts = [
    ...(labourMin > 0 ? [`${lengthText(labourMin)} by hand`] : []),
    ...(machiningMin > 0 ? [`${lengthText(machiningMin)} of machining`] : []),
  ];
  return [
    taskOf(source, build)("finish", startMin, endMin, null, [
      `Finish ${piecesText(source, build)}: ${listed(parts)}, from then on.`,
    ]),
  ];
}

/** Drying ends when the set-up starts. Builds that need the same feedstock dry at the same minute share one task. */
function dryTasks(source: PlanSource, builds: readonly PlannedBuild[], fromMin: number): OperatorTask[] {
  const groups = new Map<string, PlannedBuild[]>();
  for (const build of builds) {
    const startMin = source.minute(build.setUpStart);
    if (source.feedstock(build.feedstockId).dryH === 0 || startMin < fromMin) continue;
    const key = JSON.stringify([build.feedstockId, startMin]);
    groups.set(key, [...(groups.get(key) ?? []), build]);
  }
  return [...groups.values()].flatMap((group) => dryTask(source, group, fromMin));
}

function dryTask(source: PlanSource, group: readonly PlannedBuild[], fromMin: number): OperatorTask[] {
  const first = group[0];
  if (!first) return [];
  const { name, dryC, dryH } = source.feedstock(first.feedstockId);
  const endMin = source.minute(first.setUpStart);
  const wantedMin = endMin - Math.round(dryH * MIN_PER_H);
  const startMin = Math.max(wantedMin, fromMin);
  const massKg = group.reduce((sum, build) => sum + build.massKg, 0);
  const machines = listed(group.map((build) => source.machine(build.machineId).name));
  const machine = source.machine(first.machineId);
  const cautions = [
    ...(wantedMin < fromMin
      ? [`; only ${lengthText(endMin - startMin)} are left: use what is dry already`]
      : []),
    ...(isStaffed(source, machine, startMin) ? [] : ["; nobody is there when it must begin: plan for that"]),
  ];
  return [
    taskOf(source, first)("dry", startMin, endMin, null, [
      `Dry ${say(massKg)} kg of ${name} for ${machines}: ${numberText(dryH)} h at ${numberText(dryC)} \u00b0C${cautions.join("")}.`,
    ]),
  ];
}

function isStaffed({ problem }: PlanSource, machine: Machine, minute: number): boolean {
  const calendar = problem.calendars.find(({ calendarId }) => calendarId === machine.calendarId);
  return calendar?.windows.some(({ startMin, endMin }) => startMin <= minute && minute < endMin) ?? false;
}

function taskOf(source: PlanSource, build: PlannedBuild) {
  return (
    kind: OperatorTask["kind"],
    startMin: number,
    endMin: number,
    machineId: string | null,
    words: readonly string[],
  ): OperatorTask => ({
    at: source.instant(startMin),
    endAt: source.instant(endMin),
    kind,
    machineId,
    buildId: build.id,
    text: words.join(""),
  });
}

/** Example: "10 x Clip (O-1) and 2 x Hook (O-7)". */
function piecesText(source: PlanSource, build: PlannedBuild): string {
  const pieces = build.items.map(
    ({ orderId, copies }) =>
      `${copies} \u00d7 ${source.part(source.order(orderId).partId).name} (${orderId})`,
  );
  return listed(pieces);
}

/** At most three significant decimals, zeros at the end dropped. Example: 0.4200001 gives "0.42". */
function numberText(value: number): string {
  return String(Number(value.toFixed(3)));
}

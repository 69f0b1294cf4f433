import type { Machine } from "../../shop/machine.ts";
import { say } from "../../estimate/say.ts";
import { sideUp } from "../../shop/direction.ts";
import { listed } from "../../shop/finding.ts";
import { MIN_PER_H } from "../../units/conversions.ts";
import { dryTasks } from "./dry-tasks.ts";
import type { OperatorTask, PlannedBuild } from "../plan-document.ts";
import type { PlanSource } from "./plan-source.ts";

/**
 * The operators' work of all builds from a given minute on, in time order: dry the feedstock, change over, set up, unload,
 * finish. The texts say what the fields of a task do not: its kind, machine and times stand beside them. Finishing starts
 * when a build is unloaded and may be done later.
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
    `${piecesText(source, build)}: ${feedstock}, nozzle ${build.nozzleId},`,
    ` layer ${say(build.layerHeightMm)} mm, ${sideUp(build.orientation)}${turnText(build)}`,
  ]);
  if (build.changeoverMin === 0) return [setUp];
  const change = task("changeOver", startMin, changedMin, machine.id, [
    `to ${feedstock} with nozzle ${build.nozzleId}`,
  ]);
  return [change, setUp];
}

/** Example: ", O-1 turned 45° about the vertical"; nothing where no copy is turned. */
function turnText({ items }: PlannedBuild): string {
  const turned = items.flatMap(({ orderId, rotationDeg }) =>
    rotationDeg ? [`${items.length > 1 ? `${orderId} ` : ""}turned ${say(rotationDeg)}°`] : [],
  );
  return turned.length === 0 ? "" : `, ${listed(turned)} about the vertical`;
}

function unloadTask(source: PlanSource, build: PlannedBuild, machine: Machine): OperatorTask {
  const endMin = source.minute(build.unloadEnd);
  const startMin = endMin - Math.ceil(machine.unloadMin);
  const printEndMin = source.minute(build.printEnd);
  const waited = printEndMin < startMin ? `, printed by ${source.when(printEndMin)}` : "";
  return taskOf(source, build)("unload", startMin, endMin, machine.id, [piecesText(source, build), waited]);
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
    ...(labourMin > 0 ? [`${workText(labourMin)} by hand`] : []),
    ...(machiningMin > 0 ? [`${workText(machiningMin)} machining`] : []),
  ];
  return [
    taskOf(source, build)("finish", startMin, endMin, null, [
      `${piecesText(source, build)}: ${listed(parts)}`,
    ]),
  ];
}

/** Time at work, in minutes below an hour, else in hours: a day of work is no day. Example: 210 gives "3.5 h". */
function workText(lengthMin: number): string {
  return lengthMin < MIN_PER_H ? `${say(lengthMin)} min` : `${say(lengthMin / MIN_PER_H)} h`;
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

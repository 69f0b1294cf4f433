import type { Finding } from "../../shop/finding.ts";
import { checkDryTasks } from "./check-dry-tasks.ts";
import { broken } from "./check-source.ts";
import type { CheckedBuild, CheckSource } from "./check-source.ts";
import type { OperatorTask } from "../plan-document.ts";

/** The operators' tasks are in time order and cover every build ahead: change over, set up, unload, finish, and dry before. */
export function checkTasks(source: CheckSource): Finding[] {
  return [...checkTaskOrder(source), ...checkEveryBuild(source), ...checkDryTasks(source)];
}

function checkTaskOrder({ plan, minute }: CheckSource): Finding[] {
  const index = plan.tasks.findIndex((task, place) => {
    const before = plan.tasks[place - 1];
    return before !== undefined && minute(before.at) > minute(task.at);
  });
  const task = plan.tasks[index];
  if (!task) return [];
  return [
    broken(
      "task-order",
      ["tasks", String(index)],
      `The task at ${task.at} (${task.text}) comes after a later one.`,
    ),
  ];
}

/** A task that must be there. */
interface Wanted {
  readonly kind: OperatorTask["kind"];
  readonly startMin: number | null;
  readonly endMin: number | null;
}

function checkEveryBuild(source: CheckSource): Finding[] {
  const { plan } = source;
  const byBuild = new Map<string, OperatorTask[]>();
  for (const task of plan.tasks) byBuild.set(task.buildId, [...(byBuild.get(task.buildId) ?? []), task]);
  return [...source.planned, ...source.fixed].flatMap((checked) => {
    const tasks = byBuild.get(checked.build.id) ?? [];
    const missing = wanted(source, checked).filter(
      (task) => !tasks.some((given) => isTask(source, given, task)),
    );
    return missing.map(({ kind }) => missingTask(checked, kind));
  });
}

function missingTask({ build }: CheckedBuild, kind: OperatorTask["kind"]): Finding {
  return broken(
    "task-missing",
    ["tasks", build.id],
    `The tasks have no "${kind}" for build ${build.id} at its time (set-up ${build.setUpStart}, print ${build.printStart} to ${build.printEnd}, off at ${build.unloadEnd}).`,
  );
}

function wanted(source: CheckSource, checked: CheckedBuild): Wanted[] {
  const { build, setUpStartMin, printStartMin, unloadStartMin, unloadEndMin } = checked;
  if (unloadEndMin <= source.startMin) return [];
  const finished = build.items.some(({ orderId }) => needsFinishing(source, orderId));
  const last: Wanted[] = [
    { kind: "unload", startMin: unloadStartMin, endMin: unloadEndMin },
    ...(finished ? [{ kind: "finish" as const, startMin: unloadEndMin, endMin: null }] : []),
  ];
  if (setUpStartMin < source.startMin) return last;
  const changedMin = setUpStartMin + Math.round(build.changeoverMin);
  const change: Wanted[] =
    build.changeoverMin > 0 ? [{ kind: "changeOver", startMin: setUpStartMin, endMin: changedMin }] : [];
  return [...change, { kind: "setUp", startMin: changedMin, endMin: printStartMin }, ...last];
}

function needsFinishing(source: CheckSource, orderId: string): boolean {
  const order = source.order(orderId);
  const finishing = order ? source.part(order).finishing : undefined;
  return finishing !== undefined && finishing.labourMin + finishing.machiningMin > 0;
}

function isTask({ minute }: CheckSource, given: OperatorTask, { kind, startMin, endMin }: Wanted): boolean {
  if (given.kind !== kind) return false;
  if (startMin !== null && minute(given.at) !== startMin) return false;
  return endMin === null || minute(given.endAt) === endMin;
}

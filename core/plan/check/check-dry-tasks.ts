import type { Finding } from "../../shop/finding.ts";
import { MIN_PER_H } from "../../units/conversions.ts";
import { broken } from "./check-source.ts";
import type { CheckedBuild, CheckSource } from "./check-source.ts";
import type { OperatorTask } from "../plan-document.ts";

/**
 * Every build ahead whose feedstock must be dried is in one drying task of that feedstock. It begins when somebody is there
 * and long enough before the set-up; only where nobody is there early enough it begins as soon as somebody is, and says so.
 */
export function checkDryTasks(source: CheckSource): Finding[] {
  const byBuild = dryingsByBuild(source);
  const builds = [...source.planned, ...source.fixed];
  return builds.flatMap((checked) => {
    const { build, feedstock, setUpStartMin } = checked;
    if (feedstock.dryH === 0 || setUpStartMin < source.startMin) return [];
    const given = (byBuild.get(build.id) ?? []).filter((task) => isOf(source, task, build.feedstockId));
    const [task] = given;
    if (!task || given.length > 1) return [wrongDrying(checked, `${given.length} drying tasks, not one`)];
    const reason = wrongStart(source, checked, task);
    return reason === "" ? [] : [wrongDrying(checked, reason)];
  });
}

function dryingsByBuild({ plan }: CheckSource): Map<string, OperatorTask[]> {
  const byBuild = new Map<string, OperatorTask[]>();
  for (const task of plan.tasks) {
    if (task.kind !== "dry") continue;
    for (const id of [task.buildId, ...(task.alsoFor ?? [])]) {
      byBuild.set(id, [...(byBuild.get(id) ?? []), task]);
    }
  }
  return byBuild;
}

/** The drying is named after a build with the same feedstock. */
function isOf({ plan }: CheckSource, task: OperatorTask, feedstockId: string): boolean {
  return plan.builds.some((build) => build.id === task.buildId && build.feedstockId === feedstockId);
}

/** Why a drying begins at a wrong time; empty where it does not. */
function wrongStart(source: CheckSource, checked: CheckedBuild, task: OperatorTask): string {
  const atMin = source.minute(task.at);
  const latestMin = checked.setUpStartMin - Math.round(checked.feedstock.dryH * MIN_PER_H);
  const staffed = source
    .working(checked.machine)
    .operators.filter(({ operators, endMin }) => operators > 0 && endMin > source.startMin);
  const firstMin = Math.max(source.startMin, staffed[0]?.startMin ?? source.startMin);
  if (latestMin >= firstMin && atMin > latestMin) return `a drying that begins only at ${task.at}`;
  if (latestMin >= firstMin) {
    const isThere = staffed.some(({ startMin, endMin }) => startMin <= atMin && atMin < endMin);
    return isThere && atMin >= source.startMin ? "" : `a drying at ${task.at}, when nobody is there`;
  }
  if (atMin !== Math.min(firstMin, checked.setUpStartMin))
    return `a drying at ${task.at}, not as soon as somebody is there`;
  return task.text.includes("use what is dry") ? "" : "a drying that does not say that time is short";
}

function wrongDrying({ build, feedstock }: CheckedBuild, what: string): Finding {
  return broken(
    "task-dry",
    ["tasks", build.id],
    `Build ${build.id} (set-up ${build.setUpStart}, ${feedstock.dryH} h of drying) has ${what}.`,
  );
}

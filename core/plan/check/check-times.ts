import type { Finding } from "../../shop/finding.ts";
import { MIN_PER_H } from "../../units/conversions.ts";
import { broken } from "./check-source.ts";
import type { CheckedBuild, CheckSource } from "./check-source.ts";
import type { Stretch } from "../plan-problem.ts";

/**
 * When things happen: nothing before the plan starts or an order is released, nothing while a machine is out of service or
 * the works is shut, set-ups and unloads inside a shift, prints inside staffed time unless the machine may run unattended,
 * and then over no longer gap than was approved.
 */
export function checkTimes(source: CheckSource): Finding[] {
  return source.planned.flatMap((checked) => [
    ...checkStart(source, checked),
    ...checkRelease(source, checked),
    ...checkUnloadOrder(checked),
    ...checkService(source, checked),
    ...checkShifts(source, checked),
    ...(checked.machine.unattended ? checkUnattended(source, checked) : checkAttended(source, checked)),
  ]);
}

function checkStart({ plan, startMin }: CheckSource, { build, setUpStartMin }: CheckedBuild): Finding[] {
  if (setUpStartMin >= startMin) return [];
  return [
    broken(
      "plan-start",
      ["builds", build.id, "setUpStart"],
      `Build ${build.id} is set up from ${build.setUpStart}, before the plan starts at ${plan.plannedFrom}.`,
    ),
  ];
}

function checkRelease(source: CheckSource, { build, setUpStartMin }: CheckedBuild): Finding[] {
  return build.items.flatMap(({ orderId }) => {
    const releaseAt = source.order(orderId)?.releaseAt;
    if (releaseAt === undefined || setUpStartMin >= source.minute(releaseAt)) return [];
    return [
      broken(
        "release",
        ["builds", build.id, "setUpStart"],
        `Build ${build.id} is set up from ${build.setUpStart}, before order ${orderId} is released at ${releaseAt}.`,
      ),
    ];
  });
}

function checkUnloadOrder({ build, machine, printEndMin, unloadStartMin }: CheckedBuild): Finding[] {
  if (unloadStartMin >= printEndMin) return [];
  return [
    broken(
      "unload-early",
      ["builds", build.id, "unloadEnd"],
      `Build ${build.id} is off the machine at ${build.unloadEnd}, less than the ${machine.unloadMin} min of unloading after its print ends at ${build.printEnd}.`,
    ),
  ];
}

/** The part stands on the machine until it is unloaded, so the whole interval counts. */
function checkService(
  source: CheckSource,
  { build, machine, setUpStartMin, unloadEndMin }: CheckedBuild,
): Finding[] {
  const hit = machine.outOfService.find(
    ({ from, to }) => source.minute(from) < unloadEndMin && source.minute(to) > setUpStartMin,
  );
  if (!hit) return [];
  return [
    broken(
      "out-of-service",
      ["builds", build.id],
      `Build ${build.id} is on ${machine.id} from ${build.setUpStart} to ${build.unloadEnd}, which is out of service from ${hit.from} to ${hit.to}.`,
    ),
  ];
}

function checkShifts(source: CheckSource, checked: CheckedBuild): Finding[] {
  const { build, machine } = checked;
  const { windows } = source.working(machine);
  const works = [
    ["set-up", "set up", checked.setUpStartMin, checked.printStartMin],
    ["unload", "unloaded", checked.unloadStartMin, checked.unloadEndMin],
  ] as const;
  return works
    .filter(([, , startMin, endMin]) => !isInside(windows, startMin, endMin))
    .map(([code, words]) =>
      broken(
        `${code}-shift`,
        ["builds", build.id],
        `Build ${build.id} is ${words} ${code === "unload" ? `until ${build.unloadEnd}` : `from ${build.setUpStart}`}, not inside one shift of calendar ${machine.calendarId}.`,
      ),
    );
}

function checkAttended(source: CheckSource, checked: CheckedBuild): Finding[] {
  const { build, machine, printStartMin, printEndMin } = checked;
  if (isInside(source.working(machine).windows, printStartMin, printEndMin)) return [];
  return [
    broken(
      "attended",
      ["builds", build.id],
      `Build ${build.id} prints from ${build.printStart} to ${build.printEnd}, not all of it staffed, and ${machine.id} is not approved to run unattended.`,
    ),
  ];
}

function checkUnattended(
  source: CheckSource,
  { build, machine, printStartMin, printEndMin }: CheckedBuild,
): Finding[] {
  const { windows, closures } = source.working(machine);
  const findings: Finding[] = [];
  if (closures.some((closure) => overlaps(closure, printStartMin, printEndMin))) {
    findings.push(
      broken(
        "closure",
        ["builds", build.id],
        `Build ${build.id} prints from ${build.printStart} to ${build.printEnd}, over a day on which calendar ${machine.calendarId} is closed.`,
      ),
    );
  }
  const limitMin = machine.unattendedMaxH === undefined ? Infinity : machine.unattendedMaxH * MIN_PER_H;
  const gap = longestGapMin(windows, printStartMin, printEndMin);
  if (gap > limitMin) {
    findings.push(
      broken(
        "unattended-limit",
        ["builds", build.id],
        `Build ${build.id} prints over ${gap / MIN_PER_H} h with nobody there; ${machine.id} is approved for ${machine.unattendedMaxH} h.`,
      ),
    );
  }
  return findings;
}

/** Longest unstaffed gap that a print reaches into, min. */
function longestGapMin(windows: readonly Stretch[], startMin: number, endMin: number): number {
  let longest = 0;
  for (const [index, { startMin: gapEndMin }] of windows.entries()) {
    const gapStartMin = windows[index - 1]?.endMin;
    if (gapStartMin === undefined || gapStartMin >= endMin || gapEndMin <= startMin) continue;
    longest = Math.max(longest, gapEndMin - gapStartMin);
  }
  return longest;
}

function isInside(windows: readonly Stretch[], startMin: number, endMin: number): boolean {
  return windows.some((window) => window.startMin <= startMin && window.endMin >= endMin);
}

function overlaps(stretch: Stretch, startMin: number, endMin: number): boolean {
  return stretch.startMin < endMin && stretch.endMin > startMin;
}

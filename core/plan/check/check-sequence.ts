import type { LoadedState } from "../../cost/changeover-cost.ts";
import type { Finding } from "../../shop/finding.ts";
import type { Machine } from "../../shop/machine.ts";
import { broken } from "./check-source.ts";
import type { CheckedBuild, CheckSource } from "./check-source.ts";

/** A planned build with what its machine has loaded before it, by the builds ahead of it on that machine. */
export interface BuildInSequence {
  readonly checked: CheckedBuild;
  readonly before: LoadedState | null;
}

/** Planned builds of one machine after another, each with what is loaded before it: committed builds come first. */
export function inSequence(source: CheckSource): BuildInSequence[] {
  return source.shop.machines.flatMap((machine) => {
    let before: LoadedState | null = lastFixed(source, machine)?.build ?? machine.loaded;
    return source.planned
      .filter((checked) => checked.machine === machine)
      .map((checked) => {
        const entry = { checked, before };
        before = checked.build;
        return entry;
      });
  });
}

function lastFixed(source: CheckSource, machine: Machine): CheckedBuild | undefined {
  let last: CheckedBuild | undefined;
  for (const checked of source.fixed) {
    if (checked.machine === machine && (!last || checked.unloadEndMin > last.unloadEndMin)) last = checked;
  }
  return last;
}

/**
 * What follows what on one machine: intervals from set-up start to unload end never overlap, planned builds come after
 * committed ones, and a set-up lasts as long as the machine's own plus the changeover from what is loaded before.
 */
export function checkSequence(source: CheckSource): Finding[] {
  return [
    ...source.shop.machines.flatMap((machine) => checkMachine(source, machine)),
    ...checkSetUps(source),
  ];
}

function checkMachine(source: CheckSource, machine: Machine): Finding[] {
  const planned = source.planned.filter((checked) => checked.machine === machine);
  const freeFrom = lastFixed(source, machine);
  let before = freeFrom;
  return planned.flatMap((checked) => {
    const earlier = before;
    if (!before || checked.unloadEndMin > before.unloadEndMin) before = checked;
    if (!earlier || checked.setUpStartMin >= earlier.unloadEndMin) return [];
    const code = earlier === freeFrom ? "before-committed" : "overlap";
    return [
      broken(
        code,
        ["builds", checked.build.id, "setUpStart"],
        `Build ${checked.build.id} starts on ${machine.id} at ${checked.build.setUpStart}, before build ${earlier.build.id} is taken off at ${earlier.build.unloadEnd}.`,
      ),
    ];
  });
}

function checkSetUps(source: CheckSource): Finding[] {
  return inSequence(source).flatMap(({ checked, before }) => {
    const { build, machine, setUpStartMin, printStartMin } = checked;
    const { minutes } = source.costing.changeoverAmounts(machine, before, build);
    const plannedMin = printStartMin - setUpStartMin;
    if (isSetUpLength(plannedMin, machine.setUpMin, minutes) && build.changeoverMin === minutes) return [];
    const from = before ? `${before.feedstockId} and nozzle ${before.nozzleId}` : "nothing loaded";
    return [
      broken(
        "set-up-length",
        ["builds", build.id, "printStart"],
        `Build ${build.id} is set up for ${plannedMin} min with ${build.changeoverMin} min of changeover; from ${from} on ${machine.id} it takes ${machine.setUpMin} + ${minutes} min.`,
      ),
    ];
  });
}

/** Lengths are whole minutes: fractions may be rounded up together or each by itself. */
function isSetUpLength(plannedMin: number, setUpMin: number, changeoverMin: number): boolean {
  const exactMin = setUpMin + changeoverMin;
  return plannedMin >= exactMin - DUST_MIN && plannedMin <= Math.ceil(setUpMin) + Math.ceil(changeoverMin);
}

const DUST_MIN = 1e-6;

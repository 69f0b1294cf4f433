import { makeBuildCosting } from "../../cost/build-cost.ts";
import type { BuildCosting } from "../../cost/build-cost.ts";
import type { Machine } from "../../shop/machine.ts";
import type { Shop } from "../../shop/shop.ts";
import { type CheckedBuild, type CheckSource, openCheck } from "../check/check-source.ts";
import type { PlanDocument, PlannedBuild } from "../plan-document.ts";

/**
 * One build taken in hand: it may be tried at other places, while all others stay where they are. Nothing here is changed by a
 * trial.
 */
export interface MoveDesk {
  readonly build: PlannedBuild;
  /** all other builds stand in it as fixed, so that the rules of `check-plan` judge the one in hand alone */
  readonly source: CheckSource;
  /** other builds of each machine, by set-up start */
  readonly others: ReadonlyMap<string, readonly CheckedBuild[]>;
  readonly costing: BuildCosting;
  readonly machine: (machineId: string) => Machine;
}

/**
 * Takes one build of a plan in hand. `builds` are those that stand now, the one in hand among them; the plan gives start and
 * time zone. Example: with 90 builds, one is in hand and 89 stand in its way.
 */
export function openMoves(
  shop: Shop,
  plan: PlanDocument,
  builds: readonly PlannedBuild[],
  buildId: string,
): MoveDesk {
  const build = builds.find(({ id }) => id === buildId);
  if (!build) throw new RangeError(`no such build: ${buildId}`);
  const standing = builds
    .filter(({ id }) => id !== buildId)
    .map((other) => ({ ...other, state: "committed" as const }));
  const source = openCheck(shop, { ...plan, builds: standing });
  const others = new Map<string, CheckedBuild[]>();
  for (const other of source.fixed) {
    others.set(other.machine.id, [...(others.get(other.machine.id) ?? []), other]);
  }
  const machines = new Map(shop.machines.map((machine) => [machine.id, machine]));
  return {
    build,
    source,
    others,
    costing: makeBuildCosting(shop),
    machine: (machineId) => {
      const machine = machines.get(machineId);
      if (!machine) throw new RangeError(`no such machine: ${machineId}`);
      return machine;
    },
  };
}

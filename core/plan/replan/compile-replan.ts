import type { Build } from "../../shop/build.ts";
import { minuteOf } from "../../shop/instants.ts";
import type { Shop } from "../../shop/shop.ts";
import type { EarlierBuild, PlanLine, PlanMachine, PlanOption, Replan, SetUpState } from "../plan-problem.ts";
import { aboutMin, earlierBuilds } from "./earlier-builds.ts";

/** What the numbers of an earlier plan's builds are looked up in. */
interface ReplanLists {
  readonly machines: readonly PlanMachine[];
  readonly states: readonly SetUpState[];
  readonly lines: readonly PlanLine[];
  readonly options: readonly PlanOption[];
}

/** The builds of an earlier plan in numbers, in the order of their starts and ids; null where there are none. */
export function compileReplan(shop: Shop, fromMin: number, lists: ReplanLists): Replan | null {
  const builds = earlierBuilds(shop, fromMin).map((build) => compileBuild(shop, build, lists));
  if (builds.length === 0) return null;
  return {
    costPerBuild: shop.costing.moveCostPerBuild ?? 0,
    builds: builds.toSorted((a, b) => a.setUpStartMin - b.setUpStartMin || (a.buildId < b.buildId ? -1 : 1)),
  };
}

function compileBuild(shop: Shop, build: Build, lists: ReplanLists): EarlierBuild {
  const setUpStartMin = minuteOf(build.setUpStart, shop.timeZone);
  const machineIndex = lists.machines.findIndex(({ machineId }) => machineId === build.machineId);
  const items = build.items.flatMap(({ orderId, copies }) => {
    const option = optionOf(build, orderId, machineIndex, lists);
    const isPossible = option && copies >= option.copiesMin && copies <= option.copiesMax;
    return isPossible ? [{ optionIndex: option.index, copies }] : [];
  });
  return {
    buildId: build.id,
    machineIndex,
    items: items.length === build.items.length ? items : [],
    setUpStartMin,
    aboutMin: aboutMin(setUpStartMin, minuteOf(build.unloadEnd, shop.timeZone)),
  };
}

/** The way to make an order on the build's machine with its nozzle and feedstock. */
function optionOf(
  build: Build,
  orderId: string,
  machineIndex: number,
  { states, lines, options }: ReplanLists,
): PlanOption | undefined {
  const line = lines.find((candidate) => candidate.orderId === orderId);
  return line?.optionIndices
    .map((index) => options[index])
    .find((option) => {
      const state = states[option?.stateIndex ?? -1];
      return (
        state?.feedstockId === build.feedstockId &&
        state.nozzleId === build.nozzleId &&
        option?.machineIndices.includes(machineIndex)
      );
    });
}

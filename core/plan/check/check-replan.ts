import type { CostLine } from "../../cost/cost-line.ts";
import { moveLines } from "../../cost/move-cost.ts";
import type { Build } from "../../shop/build.ts";
import type { Finding } from "../../shop/finding.ts";
import { listed } from "../../shop/finding.ts";
import { minorUnitDigits } from "../../units/currency.ts";
import { aboutMin, earlierBuilds } from "../replan/earlier-builds.ts";
import { broken, type CheckedBuild, type CheckSource } from "./check-source.ts";

/**
 * What the plan says of the builds of an earlier one: how many stay, which were moved or dropped, and that those which stay
 * kept their ids. The money is recomputed with all other cost lines. A plan that leaves everything in place cannot be cheaper.
 */
export function checkReplan(source: CheckSource): Finding[] {
  const { plan, shop } = source;
  const { kept, moved } = matched(source);
  const earlier = kept.size + moved.length;
  const costPerBuild = shop.costing.moveCostPerBuild ?? 0;
  const said = plan.replan ?? { costPerBuild, earlierBuilds: 0, keptBuilds: 0, movedIds: [], stayCost: null };
  const movedIds = moved.map(({ id }) => id);
  const isRight =
    said.costPerBuild === costPerBuild &&
    said.earlierBuilds === earlier &&
    said.keptBuilds === kept.size &&
    said.movedIds.toSorted().join() === movedIds.toSorted().join();
  const figures = isRight
    ? []
    : [
        broken(
          "replan",
          ["replan"],
          `Of ${said.earlierBuilds} builds planned before, the plan says that ${said.keptBuilds} stay and it moves ${listed(said.movedIds)}; its builds keep ${kept.size} of ${earlier} and move ${listed(movedIds)}.`,
        ),
      ];
  return [...figures, ...checkKeptIds(source, kept), ...checkStayCost(source)];
}

/** Cost lines of the builds that were moved. */
export function movingLines(source: CheckSource): CostLine[] {
  const { costing, currency } = source.shop;
  return matched(source).moved.flatMap((build) => moveLines(build, costing.moveCostPerBuild ?? 0, currency));
}

/** Earlier builds by the plan's build that stands in their place, and those that have none. */
interface Matched {
  readonly kept: ReadonlyMap<CheckedBuild, Build>;
  readonly moved: readonly Build[];
}

/** Each earlier build, by start and then by id, takes the first free one like it that starts at about the same time. */
function matched({ shop, startMin, minute, planned }: CheckSource): Matched {
  const kept = new Map<CheckedBuild, Build>();
  const moved: Build[] = [];
  const earlier = earlierBuilds(shop, startMin).toSorted(
    (a, b) => minute(a.setUpStart) - minute(b.setUpStart) || (a.id < b.id ? -1 : 1),
  );
  for (const build of earlier) {
    const wasMin = minute(build.setUpStart);
    const about = aboutMin(wasMin, minute(build.unloadEnd));
    const found = planned.find(
      (now) => !kept.has(now) && isLike(now.build, build) && Math.abs(now.setUpStartMin - wasMin) <= about,
    );
    if (found) kept.set(found, build);
    else moved.push(build);
  }
  return { kept, moved };
}

function isLike(now: Build, before: Build): boolean {
  return (
    now.machineId === before.machineId &&
    now.nozzleId === before.nozzleId &&
    now.feedstockId === before.feedstockId &&
    itemsText(now) === itemsText(before)
  );
}

function itemsText({ items }: Build): string {
  return items
    .map(({ orderId, copies }) => JSON.stringify([orderId, copies]))
    .toSorted()
    .join();
}

/** A build that stays keeps its id, and no other takes the id of an earlier one. */
function checkKeptIds({ plan, shop }: CheckSource, kept: Matched["kept"]): Finding[] {
  const rightId = new Map([...kept].map(([{ build }, before]) => [build, before.id]));
  const known = new Set(shop.builds.filter(({ state }) => state === "planned").map(({ id }) => id));
  return plan.builds.flatMap((build) => {
    const right = rightId.get(build);
    const isRight = right === undefined ? !known.has(build.id) : right === build.id;
    if (isRight) return [];
    const what =
      right === undefined
        ? "has the id of a build of an earlier plan, but is not where that was"
        : `is build ${right} of an earlier plan, which must keep its id`;
    return [broken("replan", ["builds", build.id], `Build ${build.id} ${what}.`)];
  });
}

function checkStayCost({ plan }: CheckSource): Finding[] {
  const stayCost = plan.replan?.stayCost ?? null;
  const unit = 1 / 10 ** minorUnitDigits(plan.currency);
  if (stayCost === null || plan.cost.total <= stayCost + unit) return [];
  return [
    broken(
      "replan",
      ["replan", "stayCost"],
      `The plan costs ${plan.cost.total}; leaving all builds in place would cost less, ${stayCost}.`,
    ),
  ];
}

import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import type { Format } from "../../format/format.ts";

/**
 * What a new plan does to the accepted one's builds and what that costs; null where none of them was still ahead. Example: "Of 14
 * builds planned before, 12 stay; moving or dropping 2 costs 50.00 EUR, 25.00 EUR each, which is in its cost. Leaving all of
 * them where they are would cost 184.50 EUR more."
 */
export function movingSentence({ replan, cost }: PlanDocument, format: Format): string | null {
  if (!replan) return null;
  const { earlierBuilds, keptBuilds, movedIds, costPerBuild, stayCost } = replan;
  const builds = earlierBuilds === 1 ? "1 build" : `${format.number(earlierBuilds, 0)} builds`;
  const lead = `Of ${builds} planned before, ${format.number(keptBuilds, 0)} ${keptBuilds === 1 ? "stays" : "stay"}`;
  const count = movedIds.length;
  if (count === 0) return `${lead}; none is moved.`;
  const price =
    costPerBuild > 0
      ? `costs ${format.money(cost.byKind.moving)}, ${format.money(costPerBuild)} each, which is in its cost`
      : "costs nothing: the money rules on the Costs page give moving a build no price";
  const stay = stayCost === null ? null : stayCost - cost.total;
  return `${lead}; moving or dropping ${format.number(count, 0)} ${price}.${stayWords(stay, format)}`;
}

function stayWords(more: number | null, format: Format): string {
  if (more === null) return " Leaving all of them where they are would leave more copies without a place.";
  return more > 0 ? ` Leaving all of them where they are would cost ${format.money(more)} more.` : "";
}

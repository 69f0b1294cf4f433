import type { PlanDocument } from "../plan/plan-document.ts";
import { countText, type Display } from "./display.ts";

/**
 * What became of the builds of an earlier plan, in sentences; null where there was none. Example: "Of 14 builds planned before,
 * 12 stay; 2 are moved or dropped, at 25.00 EUR each. Leaving all of them would cost 1 234.50 EUR, 184.50 EUR more."
 */
export function replanText({ replan, cost }: PlanDocument, display: Display): string | null {
  if (!replan) return null;
  const { earlierBuilds, keptBuilds, movedIds, costPerBuild, stayCost } = replan;
  const lead = `Of ${countText(earlierBuilds, "build")} planned before, ${keptBuilds} ${keptBuilds === 1 ? "stays" : "stay"}`;
  if (movedIds.length === 0) return `${lead}; none is moved.`;
  const moved = `${movedIds.length} ${movedIds.length === 1 ? "is" : "are"} moved or dropped`;
  const price = costPerBuild > 0 ? `at ${display.money(costPerBuild)} each` : "at no cost";
  return `${lead}; ${moved}, ${price}.${stayText(stayCost, cost.total, display)}`;
}

function stayText(stayCost: number | null, total: number, display: Display): string {
  if (stayCost === null) return " Leaving all of them would leave more copies without a place.";
  const more = stayCost - total;
  if (more <= 0) return "";
  return ` Leaving all of them would cost ${display.money(stayCost)}, ${display.money(more)} more.`;
}

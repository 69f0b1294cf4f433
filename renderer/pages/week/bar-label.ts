import { shortText } from "../../../core/report/plain-text.ts";
import { itemsText } from "../../../core/report/week-facts.ts";
import type { PlannedBuild } from "../../../core/plan/plan-document.ts";

/** Less of a name than this tells nothing. */
const FEWEST_CHARS = 4;

/** Signs of builds that no plan moves, the same as on the printed sheet. */
const STATE_SIGNS: Readonly<Partial<Record<PlannedBuild["state"], string>>> = {
  committed: "● ",
  running: "▶ ",
};

/**
 * As much of a build's orders as fits so many characters; empty: nothing that would tell anything.
 * Example: "O-17 × 4, O-21 × 2" in 8 characters gives "O-17 +1".
 */
export function barLabel(build: PlannedBuild, chars: number): string {
  const sign = STATE_SIGNS[build.state] ?? "";
  const room = chars - sign.length;
  const first = build.items[0]?.orderId ?? "";
  const others = build.items.length > 1 ? ` +${build.items.length - 1}` : "";
  const fitting = [itemsText(build), first + others].find((text) => [...text].length <= room);
  if (fitting !== undefined) return sign + fitting;
  return room >= FEWEST_CHARS ? sign + shortText(first, room) : sign.trim();
}

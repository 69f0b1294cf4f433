import { itemsText } from "../../../core/report/week-facts.ts";
import type { Format } from "../../format/format.ts";
import type { WeekBuild } from "./week-picture.ts";

const STATES: Readonly<Record<WeekBuild["build"]["state"], string>> = {
  planned: "planned",
  committed: "committed",
  running: "running",
  done: "finished",
  failed: "failed",
};

/** The state of a build in words. Example: a committed build of a pinned order, moved by hand: "committed, moved, pinned". */
export function stateWords({ build, isMoved, isPinned }: WeekBuild): string {
  return [STATES[build.state], ...(isMoved ? ["moved"] : []), ...(isPinned ? ["pinned"] : [])].join(", ");
}

/** How late or early. Example: 90 min late gives "▼ 1 h 30 min late". */
export function lateWords({ lateMin }: { readonly lateMin: number }, format: Format): string {
  return lateMin > 0 ? `▼ ${format.duration(lateMin)} late` : "● in time";
}

/** One build in a sentence, for the tip under the pointer and for assistive technology. */
export function buildSentence(entry: WeekBuild, format: Format): string {
  const { build } = entry;
  const when = `from ${format.dateTime(build.setUpStart)} to ${format.dateTime(build.unloadEnd)}`;
  return `${build.id}: ${itemsText(build)} on ${build.machineId} ${when}, ${stateWords(entry)}, ${lateWords(entry, format).slice(2)}.`;
}

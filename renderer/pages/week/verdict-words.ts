import type { Format } from "../../format/format.ts";
import { sentenceInUnits } from "../../format/shown-units.ts";
import type { Carried } from "./hand-desk.ts";

/** More refusals than this are not read before a drop. */
const MOST_SAID = 2;

/** What would become of a build where it is held, in one sentence: does not fit, late by, costs more by. */
export function verdictSentence(carried: Carried, format: Format): string {
  const { verdict, refusals } = carried;
  if (refusals.length > 0) {
    const more = refusals.length > MOST_SAID ? ` And ${refusals.length - MOST_SAID} more reasons.` : "";
    return `It cannot stand there: ${sentenceInUnits(refusals.slice(0, MOST_SAID).join(" "), format)}${more}`;
  }
  if (!verdict) return "This is where it stands.";
  const { build, lateMin } = verdict;
  const place = `${build.machineId} from ${format.dateTime(build.setUpStart)} to ${format.dateTime(build.unloadEnd)}`;
  const late = lateMin > 0 ? `late by ${format.duration(lateMin)}` : "in time";
  return `${place}: ${late}, ${costWords(verdict.extraCost, format)}.`;
}

/** Example: 12.5 gives "costs 12.50 EUR more", -3 "saves 3.00 EUR". */
export function costWords(extraCost: number, format: Format): string {
  if (Math.abs(extraCost) < 0.005) return "costs the same";
  return extraCost > 0 ? `costs ${format.money(extraCost)} more` : `saves ${format.money(-extraCost)}`;
}

import { say } from "../../estimate/say.ts";
import { durationText } from "../../shop/time-words.ts";
import type { Chances } from "./chances.ts";

/**
 * What simulated dates take for granted, in sentences for whoever answers for them.
 * Example: the usual chances say "Print times lie about their estimates by 10 % (one standard deviation)."
 */
export function chanceWords(chances: Chances): string[] {
  const { buildVariation, machineVariation, stayOnMin, overtimeMin } = chances;
  const spreadPct = 100 * Math.hypot(buildVariation, machineVariation);
  return [
    `Print times lie about their estimates by ${say(spreadPct)} % (one standard deviation), ${say(100 * machineVariation)} % of it alike for all builds of a machine.`,
    `Prints fail by each machine's failures per hour${failureText(chances)}. A failed print is cleared and set up again only when somebody is there and free.`,
    "Builds keep the plan's order on each machine; set-ups and unloads wait for people, first come first served.",
    earlyText(chances.earlyStartMin),
    `A build that is behind is begun where its print should end within working time or at most ${durationText(overtimeMin)} after.`,
    `A print that may not run alone is stopped and lost where it would last more than ${durationText(stayOnMin)} after people leave.`,
    "Copies made elsewhere come when they are said to.",
  ];
}

function failureText({ startFailureShare, seenAtEnd }: Chances): string {
  const starts = startFailureShare > 0 ? `, and ${say(100 * startFailureShare)} % of starts fail` : "";
  const seen = seenAtEnd
    ? "a failure is seen only when the print should have ended"
    : "the machine stops at once and shows it";
  return `${starts}; ${seen}`;
}

function earlyText(earlyMin: number): string {
  if (earlyMin <= 0) return "A build begins when planned or later, never earlier.";
  const early = Number.isFinite(earlyMin) ? `up to ${durationText(earlyMin)}` : "at any time";
  return `A build may begin ${early} before its time in the plan where all is ready.`;
}

import { expect, test } from "vitest";
import { chanceWords } from "../../../../core/quote/dates/chance-words.ts";
import { USUAL_CHANCES } from "../../../../core/quote/dates/chances.ts";

test("the usual chances are said in seven sentences", () => {
  expect(chanceWords(USUAL_CHANCES)).toEqual([
    "Print times lie about their estimates by 10 % (one standard deviation), 6 % of it alike for all builds of a machine.",
    "Prints fail by each machine's failures per hour; the machine stops at once and shows it. A failed print is cleared and set up again only when somebody is there and free.",
    "Builds keep the plan's order on each machine; set-ups and unloads wait for people, first come first served.",
    "A build begins when planned or later, never earlier.",
    "A build that is behind is begun where its print should end within working time or at most 30 min after.",
    "A print that may not run alone is stopped and lost where it would last more than 2 h after people leave.",
    "Copies made elsewhere come when they are said to.",
  ]);
});

test("failed starts, late seeing and early beginning are said where they are taken", () => {
  const words = chanceWords({
    ...USUAL_CHANCES,
    startFailureShare: 0.05,
    seenAtEnd: true,
    earlyStartMin: Infinity,
  }).join(" ");
  expect(words).toContain(
    "failures per hour, and 5 % of starts fail; a failure is seen only when the print should have ended.",
  );
  expect(words).toContain("A build may begin at any time before its time in the plan where all is ready.");
});

import { describe, expect, test } from "vitest";
import { findRoutes } from "../../../core/estimate/find-routes.ts";
import type { MeasuredCut } from "../../../core/shop/standing.ts";
import { aCut, aMeasuredPart, aStanding } from "../../fixtures/a-measured-part.ts";
import { aFeedstock, aMachine, aNozzle } from "../../fixtures/a-route.ts";

/** Lays beads of 0.45 mm, layers of 0.2 mm. */
const MACHINE = aMachine({ nozzles: [aNozzle({ beadWidthMm: { min: 0.45, max: 0.45 } })] });

/** A part of 100 layers with a plate of 40 x 0.4 mm from that layer on, else 40 x 30 mm. */
function answerOf(thin: Partial<MeasuredCut>, fromLayer: number, allowanceMm = 0) {
  const cuts = [
    aCut({ zMm: fromLayer * 0.2, areaMm2: 1200, perimeterMm: 140, thinnestMm: 30 }),
    aCut({ zMm: 20, ...thin }),
  ];
  const finishing = { labourMin: 0, machiningMin: 0, machiningPerH: 0, allowanceMm };
  const [answer] = findRoutes(aMeasuredPart({ finishing }, [aStanding({ cuts })]), MACHINE, [aFeedstock()]);
  if (!answer) throw new Error("no answer");
  return answer.status === "route"
    ? answer.route.cautions.join(" ")
    : answer.reasons.map(({ sentence }) => sentence).join(" ");
}

describe("walls of 0.2 mm and a bead of 0.45 mm", () => {
  const wall = { areaMm2: 8, perimeterMm: 80.4, thinnestMm: 0.2 };

  test("in more than a tenth of the layers refuse the part and say which", () => {
    expect(answerOf(wall, 89)).toBe(
      "its walls are 0.199 mm thick on average in layers 90 to 100 of 100 with z up, less than half a bead of 0.45 mm: a finer nozzle or another direction up would cure it.",
    );
  });

  test("in a tenth of them are a caution", () => {
    expect(answerOf(wall, 90)).toContain(
      "Walls down to 0.2 mm in layers 91 to 100 are thinner than the bead of 0.45 mm: they come out thicker, or with gaps.",
    );
  });

  test("in the last two, as a tip has them, are not worth a word", () => {
    expect(answerOf(wall, 98)).not.toContain("thinner than the bead");
    expect(answerOf(wall, 97)).toContain("in layers 98 to 100 are thinner");
  });

  test("are thick enough with an allowance on either side", () => {
    expect(answerOf(wall, 50, 0.2)).not.toContain("thinner than the bead");
  });
});

test("a sharp edge in every layer of a thick body is a caution only", () => {
  const wedge = { areaMm2: 600, perimeterMm: 120, thinnestMm: 0.05 };
  expect(answerOf(wedge, 50)).toContain("Walls down to 0.05 mm in layers 51 to 100 are thinner");
});

test("walls of one bead and empty cuts are not thin", () => {
  expect(answerOf({ areaMm2: 18, perimeterMm: 80.9, thinnestMm: 0.45 }, 50)).not.toContain("thinner");
  expect(answerOf({ areaMm2: 0, perimeterMm: 0, thinnestMm: 0, islands: 0 }, 50)).not.toContain("thinner");
});

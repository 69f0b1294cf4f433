import { expect, test } from "vitest";
import { feedstockCost } from "../../core/cost/feedstock-cost.ts";
import { expectedFailures, hazardPerH, lostShare } from "../../core/cost/expected-failure-cost.ts";
import { timeCost } from "../../core/cost/time-cost.ts";
import { seededRandom } from "../../core/units/random.ts";
import { aFeedstock } from "../fixtures/a-route.ts";

/**
 * RESTART: a build that fails is begun again. Asmussen, Fiorini, Lipsky, Rolski and Sheahan 2008, "Asymptotic behavior of
 * total times for jobs that must start over if a failure occurs", Math. Oper. Res., doi 10.1287/moor.1080.0329 (abstract
 * read). Mean (e^(ht) - 1)/h derived by hand; the instances are our own, computed by another program.
 */
function meanTotalH(failuresPer1000H: number, runH: number): number {
  return runH * (1 + lostShare(hazardPerH(failuresPer1000H), runH));
}

test("hazard 0.005 per h and 40 h: 0.818731 good at first, 44.2806 h in all, 44.7234 h with 2 h to reset, 48.8561 h if seen late", () => {
  const failures = expectedFailures(0.005, 40);
  expect(1 / (1 + failures)).toBeCloseTo(0.818731, 6);
  expect(Math.abs(meanTotalH(5, 40) - 44.2806)).toBeLessThan(1e-4);
  expect(Math.abs(meanTotalH(5, 40) + 2 * failures - 44.7234)).toBeLessThan(1e-4);
  expect(Math.abs(40 * (1 + failures) - 48.8561)).toBeLessThan(1e-4);
});

test.each([
  [10, 100, 171.8282],
  [10, 10, 10.5171],
  [5, 10, 10.2542],
  [2, 48, 50.3795],
])("%f failures in 1000 h and a run of %f h take %f h on average", (failuresPer1000H, runH, meanH) => {
  expect(Math.abs(meanTotalH(failuresPer1000H, runH) - meanH)).toBeLessThan(1e-4);
});

test("hazard 0.01 per h and 100 h: 1.71828 failures, a failed attempt lasts 41.8023 h, 71.8282 h of feedstock are scrapped", () => {
  const failedAttempts = expectedFailures(0.01, 100);
  expect(failedAttempts).toBeCloseTo(1.71828, 5);
  const lostH = 100 * lostShare(0.01, 100);
  expect(lostH / failedAttempts).toBeCloseTo(41.8023, 4);
  expect(lostH).toBeCloseTo(71.8282, 4);
});

test("a simulation of 200 000 builds agrees with the mean", () => {
  const random = seededRandom(11);
  let totalH = 0;
  for (let build = 0; build < 200_000; build++) {
    let failureAtH = -Math.log(1 - random()) / 0.005;
    while (failureAtH < 40) {
      totalH += failureAtH;
      failureAtH = -Math.log(1 - random()) / 0.005;
    }
    totalH += 40;
  }
  expect(Math.abs(totalH / 200_000 - meanTotalH(5, 40))).toBeLessThan(0.15);
});

test("a build that is good with 0.93: 74.656 a try, 80.2753 until one is good, 95.2753 with labour, 136.1075 at 30 % margin", () => {
  const feedstock = feedstockCost(2.4, aFeedstock({ pricePerKg: 4, wastePct: 6 }));
  expect(feedstock).toBeCloseTo(10.176, 9);
  const oneTry = feedstock + timeCost(300, 12) + timeCost(300, 3.2 * 0.28);
  expect(oneTry).toBeCloseTo(74.656, 9);
  const untilGood = oneTry * (1 + expectedFailures(-Math.log(0.93) / 5, 5));
  expect(untilGood).toBeCloseTo(80.2753, 4);
  const full = untilGood + timeCost(30, 30);
  expect(full).toBeCloseTo(95.2753, 4);
  expect(full / (1 - 0.3)).toBeCloseTo(136.1075, 4);
});

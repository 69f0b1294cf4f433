import { expect, test } from "vitest";
import {
  expectedFailureCost,
  expectedFailures,
  lostShare,
} from "../../../core/cost/expected-failure-cost.ts";

const build = {
  hazardPerH: 0.005,
  runMin: 2400,
  operatorMin: 15,
  machinePerH: 6,
  labourPerH: 36,
  feedstockCost: 21,
};

test("a build of 40 h at 0.005 per h is expected to lose 30.2553", () => {
  expect(expectedFailureCost(build)).toBeCloseTo(30.2553, 4);
});

test("no hazard and no run lose nothing", () => {
  expect(expectedFailureCost({ ...build, hazardPerH: 0 })).toBe(0);
  expect(expectedFailureCost({ ...build, runMin: 0 })).toBe(0);
  expect(expectedFailures(0, 40)).toBe(0);
});

test("the lost share is (e^x - 1 - x)/x of hazard times hours, for small and large x", () => {
  for (const x of [1e-6, 0.00009, 0.00011, 0.05, 0.2, 1, 5]) {
    const series = x / 2 + x ** 2 / 6 + x ** 3 / 24;
    const expected = x < 0.001 ? series : (Math.exp(x) - 1 - x) / x;
    expect(Math.abs(lostShare(x, 1) / expected - 1)).toBeLessThan(1e-4);
  }
});

test("splitting a run in two more than halves the time lost", () => {
  const timeOnly = { ...build, operatorMin: 0, feedstockCost: 0 };
  const half = expectedFailureCost({ ...timeOnly, runMin: 1200 });
  expect(2 * half).toBeLessThan(expectedFailureCost(timeOnly) / 2);
});

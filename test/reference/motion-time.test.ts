/**
 * Motion with limited acceleration: kinematics of a straight stretch, arc through a corner, mean chord of Cauchy and Crofton.
 * Closed forms, computed by hand; common knowledge of mechanics and integral geometry.
 */
import { describe, expect, test } from "vitest";
import { layerPath } from "../../core/estimate/layer-path.ts";
import { depositS } from "../../core/estimate/layer-work.ts";
import { cornerSpeedMmPerS, meanChordMm, stretchS } from "../../core/estimate/motion-time.ts";
import { seededRandom } from "../../core/units/random.ts";

describe("a stretch from stop to stop", () => {
  test.each([
    [10, 60, 3000, 0.1866667],
    [1, 60, 3000, 0.0365148],
    [100, 150, 500, 0.9666667],
    [1000, 100, 250, 10.4],
  ])("of %f mm at %f mm/s and %f mm/s2 takes %f s", (lengthMm, speed, acceleration, seconds) => {
    const motion = { speedMmPerS: speed, accelerationMmPerS2: acceleration, cornerMmPerS: 0 };
    expect(stretchS(lengthMm, motion)).toBeCloseTo(seconds, 6);
  });

  test("has the efficiency 1 / (1 + v2 / aL) once it reaches its speed", () => {
    const motion = { speedMmPerS: 60, accelerationMmPerS2: 3000, cornerMmPerS: 0 };
    for (const lengthMm of [1.2, 5, 50]) {
      expect(lengthMm / 60 / stretchS(lengthMm, motion)).toBeCloseTo(1 / (1 + 3600 / (3000 * lengthMm)), 9);
    }
  });
});

test("a corner that may be cut faster than the machine goes costs nothing", () => {
  expect(stretchS(30, { speedMmPerS: 60, accelerationMmPerS2: 100, cornerMmPerS: 99 })).toBeCloseTo(0.5, 12);
  expect(stretchS(0, { speedMmPerS: 60, accelerationMmPerS2: 100, cornerMmPerS: 0 })).toBe(0);
});

describe("corner speed at 1000 mm/s2 and 0.05 mm", () => {
  test.each([
    [60, 7.0711],
    [90, 10.9868],
    [120, 17.9779],
    [150, 37.648],
  ])("at %i degrees is %f mm/s", (angleDeg, speed) => {
    expect(cornerSpeedMmPerS(1000, 0.05, angleDeg)).toBeCloseTo(speed, 3);
  });

  test("straight on is without limit", () => {
    expect(cornerSpeedMmPerS(1000, 0.05, 180)).toBe(Number.POSITIVE_INFINITY);
  });
});

test("mean chord: 15.70796 mm in a disc of radius 10, 18.84956 mm in 20 x 30", () => {
  expect(meanChordMm(Math.PI * 100, 2 * Math.PI * 10)).toBeCloseTo(15.70796, 5);
  expect(meanChordMm(600, 100)).toBeCloseTo(18.84956, 5);
});

test("100 000 random lines across 20 x 30 have a mean chord within 1 % of it", () => {
  const random = seededRandom(3);
  let [sum, hits] = [0, 0];
  for (let line = 0; line < 100_000; line++) {
    const chord = chordMm(random() * Math.PI, (2 * random() - 1) * Math.hypot(10, 15));
    sum += chord;
    if (chord > 0) hits++;
  }
  expect(Math.abs(sum / hits / meanChordMm(600, 100) - 1)).toBeLessThan(0.01);
});

test("the worked box takes 24.4275 s a sparse layer, 94.6695 s a solid one, 3004.68 s in all", () => {
  const cut = { areaMm2: 2400, perimeterMm: 200, islands: 1, shrinkPerMm: 8 };
  const cornerMmPerS = cornerSpeedMmPerS(1000, 0.05, 90);
  const motion = { speedMmPerS: 60, accelerationMmPerS2: 1000, cornerMmPerS };
  const layerS = (density: number) =>
    depositS(layerPath(cut, { beadWidthMm: 0.45, walls: 2, density }), { islands: 1 }, motion);
  expect(layerS(0.2)).toBeCloseTo(24.4275, 4);
  expect(layerS(1)).toBeCloseTo(94.6695, 4);
  expect(92 * layerS(0.2) + 8 * layerS(1)).toBeCloseTo(3004.68, 1);
});

/** Length inside 20 x 30 mm about the origin of the line at that distance whose normal has that angle, mm; 0: it misses. */
function chordMm(angle: number, distanceMm: number): number {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const inX = [(-10 - distanceMm * cos) / -sin, (10 - distanceMm * cos) / -sin];
  const inY = [(-15 - distanceMm * sin) / cos, (15 - distanceMm * sin) / cos];
  const from = Math.max(Math.min(...inX), Math.min(...inY));
  return Math.max(0, Math.min(Math.max(...inX), Math.max(...inY)) - from);
}

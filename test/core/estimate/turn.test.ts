import { describe, expect, test } from "vitest";
import { closestTurn, turnToFit } from "../../../core/estimate/turn.ts";
import type { MeasuredStanding } from "../../../core/shop/standing.ts";
import { aMachine } from "../../fixtures/a-route.ts";
import { aStanding, rectangle } from "../../fixtures/a-measured-part.ts";

/** 240 x 240 mm between the margins, 250 mm high, parts 5 mm apart. */
const MACHINE = aMachine();

function body(x: number, y: number, turnedDeg = 0, allowanceMm = 0) {
  const standing = aStanding({ hullMm: turned(rectangle(x, y), turnedDeg) });
  return { standing, boxMm: { x: 1000, y: 1000, z: 20 }, allowanceMm };
}

function turned(hull: MeasuredStanding["hullMm"], degrees: number): MeasuredStanding["hullMm"] {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return hull.map(([x, y]) => [x * cos - y * sin, x * sin + y * cos]);
}

describe("a footprint", () => {
  test("that lies along the platform is not turned", () => {
    expect(turnToFit(body(100, 60), MACHINE)).toEqual({
      footprintMm: { x: 100, y: 60 },
      copies: 6,
      rotationDeg: 0,
    });
  });

  test("that was drawn askew is turned until it lies along it, with as many copies", () => {
    const fill = turnToFit(body(100, 60, 17), MACHINE);
    expect(fill.copies).toBe(6);
    expect(fill.rotationDeg).toBeCloseTo(73, 9);
    expect(Math.min(fill.footprintMm.x, fill.footprintMm.y)).toBeCloseTo(60, 6);
  });

  test("longer than the platform lies across its diagonal, with the box that it then takes", () => {
    const fill = turnToFit(body(300, 20), MACHINE);
    expect(fill.copies).toBe(1);
    expect(fill.rotationDeg).toBeGreaterThan(30);
    expect(fill.rotationDeg).toBeLessThan(60);
    expect(Math.max(fill.footprintMm.x, fill.footprintMm.y)).toBeLessThanOrEqual(240 + 1e-6);
  });

  test("just short enough for the diagonal fits, one a little longer does not, nor one that the allowance makes longer", () => {
    const longestMm = 240 * Math.SQRT2 - 20;
    expect(turnToFit(body(longestMm, 20), MACHINE).copies).toBe(1);
    expect(turnToFit(body(longestMm + 0.01, 20), MACHINE).copies).toBe(0);
    expect(turnToFit(body(longestMm - 1, 20, 0, 1), MACHINE).copies).toBe(0);
  });

  test("of a round part keeps the box that was measured, though the outline kept of it is a little larger", () => {
    const corners = Array.from({ length: 24 }, (_, at): [number, number] => {
      const angle = ((at + 0.5) * Math.PI) / 12;
      const radiusMm = 120 / Math.cos(Math.PI / 24);
      return [radiusMm * Math.cos(angle), radiusMm * Math.sin(angle)];
    });
    const standing = aStanding({ hullMm: corners });
    const fill = turnToFit({ standing, boxMm: { x: 240, y: 240, z: 20 }, allowanceMm: 0 }, MACHINE);
    expect(fill).toEqual({ footprintMm: { x: 240, y: 240 }, copies: 1, rotationDeg: 0 });
  });
});

test("one too large for any turn says by how much it is too long in the best one", () => {
  const { excess, standing } = closestTurn(body(480, 480), MACHINE);
  expect(excess).toBeCloseTo(2, 9);
  expect(standing.footprintMm.x).toBeCloseTo(480, 9);
});

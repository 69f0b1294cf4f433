import { expect, test } from "vitest";
import { excess, fillPlatform, standUp, usableMm } from "../../../core/estimate/fit.ts";
import { aMachine } from "../../fixtures/a-route.ts";

const MACHINE = aMachine();

function standing(x: number, y: number, heightMm: number) {
  return { footprintMm: { x, y }, heightMm };
}

test("a box stands on each of its axes, the allowance on every side", () => {
  const box = { x: 40, y: 30, z: 20 };
  expect(standUp(box, "z", 0)).toEqual({ footprintMm: { x: 40, y: 30 }, heightMm: 20 });
  expect(standUp(box, "y", 0)).toEqual({ footprintMm: { x: 40, y: 20 }, heightMm: 30 });
  expect(standUp(box, "x", 2)).toEqual({ footprintMm: { x: 34, y: 24 }, heightMm: 44 });
});

test("the edge margin is taken off on both sides across, not in height", () => {
  expect(usableMm(MACHINE)).toEqual({ x: 240, y: 240, z: 250 });
});

test("a part of just the usable size fits once, a hair more not at all", () => {
  expect(fillPlatform(standing(240, 240, 250), MACHINE).copies).toBe(1);
  expect(fillPlatform(standing(240.01, 240, 250), MACHINE).copies).toBe(0);
  expect(fillPlatform(standing(240, 240, 250.01), MACHINE).copies).toBe(0);
});

test("two parts need the gap between them: 117.5 mm twice and 5 mm fill 240 mm", () => {
  expect(fillPlatform(standing(117.5, 240, 10), MACHINE).copies).toBe(2);
  expect(fillPlatform(standing(117.6, 240, 10), MACHINE).copies).toBe(1);
});

test("parts are turned when more fit that way", () => {
  const long = aMachine({ envelopeMm: { x: 410, y: 110, z: 100 } });
  expect(fillPlatform(standing(100, 60, 10), long)).toEqual({ footprintMm: { x: 60, y: 100 }, copies: 6 });
  expect(fillPlatform(standing(60, 100, 10), long)).toEqual({ footprintMm: { x: 60, y: 100 }, copies: 6 });
});

test("margins wider than the platform leave room for nothing", () => {
  expect(fillPlatform(standing(1, 1, 1), aMachine({ edgeMarginMm: 130 })).copies).toBe(0);
});

test("excess is the worst direction, turned the better way", () => {
  expect(excess(standing(240, 120, 100), MACHINE)).toBe(1);
  expect(excess(standing(480, 120, 100), MACHINE)).toBe(2);
  expect(excess(standing(24, 12, 500), MACHINE)).toBe(2);
});

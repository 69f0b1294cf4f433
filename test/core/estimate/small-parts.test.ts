import { expect, test } from "vitest";
import { dryerHopperKg } from "../../../core/estimate/drying.ts";
import { flowLimitMm3PerS } from "../../../core/estimate/melt-limit.ts";
import { say } from "../../../core/estimate/say.ts";
import { overhangMm2, supportVolumeMm3 } from "../../../core/estimate/supports.ts";
import { aFeedstock, aNozzle, aPart } from "../../fixtures/a-route.ts";

test("numbers in sentences keep what matters", () => {
  expect([812.04, 53.68, 9.876, 0.45, 0.0704, 1200, 0, -3.456].map(say)).toEqual([
    "812",
    "53.7",
    "9.88",
    "0.45",
    "0.07",
    "1200",
    "0",
    "-3.46",
  ]);
});

test("a dryer of 4 h holds 40 kg at 10 kg/h", () => {
  expect(dryerHopperKg(10, 4)).toBe(40);
});

test("36 cm3/h and a flow factor of 1.2 melt 12 mm3/s", () => {
  expect(flowLimitMm3PerS(aNozzle({ flowCm3PerH: 36 }), aFeedstock({ flowFactor: 1.2 }))).toBeCloseTo(12, 12);
});

test("200 mm2 overhang in a part of 20 mm take 300 mm3 of support", () => {
  expect(supportVolumeMm3(200, 20)).toBe(300);
});

test("a body that fills its box hangs over nowhere on its side; any other is taken to hang over as it does upright", () => {
  const measures = { volumeMm3: 1000, areaMm2: 600, boxMm: { x: 10, y: 10, z: 10 }, overhangAreaMm2: 7 };
  const part = (volumeMm3: number) =>
    aPart({ geometry: { kind: "measures", measures: { ...measures, volumeMm3 } } });
  expect(overhangMm2(part(1000), "x")).toBe(0);
  expect(overhangMm2(part(500), "x")).toBe(7);
  expect(overhangMm2(part(500), "z")).toBe(7);
  expect(overhangMm2(aPart(), "z")).toBe(0);
});

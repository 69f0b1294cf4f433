/**
 * Weld of a hot bead on a colder layer. Formula: Carslaw and Jaeger, "Conduction of Heat in Solids" (from memory). Measured
 * weld: Seppala and Migler (2016), "Infrared thermography of welding zones produced by polymer extrusion additive
 * manufacturing", Additive Manufacturing 12:71-76 (abstract): above the glass transition for about 1 s.
 */
import { describe, expect, test } from "vitest";
import { contactC, weldS } from "../../core/estimate/weld-time.ts";

const ABS = { depositC: 230, bondC: 105, layerHeightMm: 0.2, diffusivityM2PerS: 1.17e-7 };
const PLA = { depositC: 210, bondC: 60, layerHeightMm: 0.2, diffusivityM2PerS: 8.06e-8 };

describe("ABS at 230 degC, 0.2 mm", () => {
  test.each([
    [40, 135, 0.68],
    [70, 150, 2.039],
    [90, 160, 9.25],
  ])("on %i degC meets at %i degC and welds for %f s", (belowC, contact, seconds) => {
    expect(contactC(ABS.depositC, belowC)).toBe(contact);
    expect(weldS({ ...ABS, belowC }) / seconds).toBeCloseTo(1, 2);
  });

  test("a layer of 0.3 mm on 40 degC welds for 1.529 s", () => {
    expect(weldS({ ...ABS, belowC: 40, layerHeightMm: 0.3 })).toBeCloseTo(1.529, 2);
  });

  test("on 40 to 50 degC it welds for 0.5 to 1.5 s, as measured", () => {
    expect(weldS({ ...ABS, belowC: 40 })).toBeGreaterThan(0.5);
    expect(weldS({ ...ABS, belowC: 50 })).toBeLessThan(1.5);
  });
});

describe("PLA at 210 degC, 0.2 mm", () => {
  test.each([
    [25, 4.08],
    [35, 7.41],
  ])("on %i degC it welds for %f s", (belowC, seconds) => {
    expect(weldS({ ...PLA, belowC }) / seconds).toBeCloseTo(1, 2);
  });
});

describe("edges", () => {
  test("a contact colder than, or just at, the bonding temperature never welds", () => {
    expect(weldS({ ...ABS, depositC: 160, belowC: 40 })).toBe(0);
    expect(weldS({ ...ABS, depositC: 170, belowC: 40 })).toBe(0);
    expect(weldS({ ...ABS, depositC: 171, belowC: 40 })).toBeGreaterThan(0);
  });

  test("a layer that is itself hot enough welds without end", () => {
    expect(weldS({ ...ABS, belowC: 105 })).toBe(Number.POSITIVE_INFINITY);
  });
});

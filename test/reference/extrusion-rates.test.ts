/**
 * Rates of screw extruders and of both kinds of machine. Each figure names its source; ranges of the trade are common
 * practice, no source.
 */
import { describe, expect, test } from "vitest";
import { beadAreaMm2, massFlowKgPerH, speedMmPerS } from "../../core/estimate/bead.ts";
import { flowLimitMm3PerS, screwDragFlowMm3PerS } from "../../core/estimate/melt-limit.ts";
import { inFromMm, kgFromLb, lbFromKg, mmFromIn, S_PER_H } from "../../core/units/conversions.ts";
import { aFeedstock, aNozzle } from "../fixtures/a-route.ts";

describe("drag flow of a square-pitched screw (Tadmor and Gogos; Rauwendaal; from memory)", () => {
  test.each([
    [25, 1.5, 100, 2228.9, 8.02],
    [16, 1.2, 100, 730.4, 2.63],
    [50, 2.5, 60, 8915.7, 32.1],
  ])(
    "D %f mm, H %f mm at %f per min: %f mm3/s, %f kg/h at 1000 kg/m3",
    (diameterMm, channelDepthMm, revolutionsPerMin, flow, kgPerH) => {
      const dragged = screwDragFlowMm3PerS({ diameterMm, channelDepthMm, revolutionsPerMin });
      expect(dragged).toBeCloseTo(flow, 1);
      expect(massFlowKgPerH(dragged, 1000)).toBeCloseTo(kgPerH, 2);
    },
  );

  test.each([
    [25, 1.5, 100],
    [16, 1.2, 100],
    [50, 2.5, 60],
  ])(
    "the screw of %i mm agrees within 20 %% with 16 lb/h x D^2.2 in inches (rule of thumb, from memory)",
    (diameterMm, channelDepthMm, revolutionsPerMin) => {
      const dragged = screwDragFlowMm3PerS({ diameterMm, channelDepthMm, revolutionsPerMin });
      const thumb = thumbKgPerH(inFromMm(diameterMm));
      expect(Math.abs(massFlowKgPerH(dragged, 1000) / thumb - 1)).toBeLessThan(0.2);
    },
  );

  test.each([
    [0.5, 3.48, 1.58],
    [1, 16, 7.26],
    [1.5, 39, 17.7],
    [2, 73.5, 33.4],
  ])("by that rule a screw of %f in gives %f lb/h or %f kg/h", (diameterIn, lbPerH, kgPerH) => {
    expect(lbFromKg(thumbKgPerH(diameterIn)) / lbPerH).toBeCloseTo(1, 2);
    expect(thumbKgPerH(diameterIn) / kgPerH).toBeCloseTo(1, 2);
  });
});

describe("two large prints that were reported", () => {
  test("a car of 227 kg in 24 h (CompositesWorld on Oak Ridge, 2015) is 9.458 kg/h: 72 mm/s with a 8.382 x 3.81 mm bead", () => {
    const kgPerH = 227 / 24;
    expect(kgPerH).toBeCloseTo(9.458, 3);
    expect(speedMmPerS(flowOf(kgPerH, 1140), 8.382, 3.81)).toBeCloseTo(72, 0);
  });

  test("a tool of 748 kg in 30 h (Oak Ridge, 2016, six outlets) is 24.933 kg/h or 55.0 lb/h: 190 mm/s and 20.56 km with that bead", () => {
    const kgPerH = 748 / 30;
    expect(lbFromKg(kgPerH)).toBeCloseTo(55, 1);
    const volumeMm3 = (748 / 1140) * 1e9;
    const pathMm = volumeMm3 / beadAreaMm2(8.382, 3.81);
    expect(pathMm / 1e6).toBeCloseTo(20.56, 1);
    expect(pathMm / (30 * S_PER_H)).toBeCloseTo(190, 0);
    const boxMm3 = mmFromIn(17.5 * 12) * mmFromIn(5.5 * 12) * mmFromIn(1.5 * 12);
    expect(boxMm3 / 1e9).toBeCloseTo(4.0882, 4);
    expect(volumeMm3 / boxMm3).toBeCloseTo(0.1606, 3);
    expect(volumeMm3 / (82.4 * mmFromIn(12) ** 3)).toBeCloseTo(0.281, 3);
    const layers = mmFromIn(1.5 * 12) / 3.81;
    expect(layers).toBeCloseTo(120, 9);
    expect((30 * 60) / layers).toBeCloseTo(15, 9);
  });

  test("1650 lb is those 748 kg, and 500 lb in 24 h is 20.83 lb/h", () => {
    expect(kgFromLb(1650)).toBeCloseTo(748.4, 1);
    expect(lbFromKg(kgFromLb(500) / 24)).toBeCloseTo(20.83, 2);
  });

  test("500 to 1000 times a machine of 20 cm3/h (Prog. Addit. Manuf. 2022, s40964-022-00309-3) is 11.4 to 22.8 kg/h", () => {
    const flowMm3PerS = 20_000 / S_PER_H;
    expect(massFlowKgPerH(500 * flowMm3PerS, 1140)).toBeCloseTo(11.4, 6);
    expect(massFlowKgPerH(1000 * flowMm3PerS, 1140)).toBeCloseTo(22.8, 6);
  });
});

describe("ranges of the trade (common practice, no source) are reached by ordinary beads and speeds", () => {
  test.each([
    ["filament, lowest 0.005 lb/h", 0.005, 1240, 0.3, 0.15, 11.3],
    ["filament, highest 0.25 lb/h", 0.25, 1240, 1.0, 0.4, 63.5],
    ["pellet, lowest 0.5 lb/h", 0.5, 1140, 2, 1, 27.6],
    ["pellet, highest 20 lb/h", 20, 1140, 10, 5, 44.2],
  ])("%s", (_, lbPerH, density, widthMm, heightMm, speed) => {
    const flow = flowOf(kgFromLb(lbPerH), density);
    expect(speedMmPerS(flow, widthMm, heightMm)).toBeCloseTo(speed, 1);
  });

  test.each([
    [0.005, 1240, 2.268e-3, 0.508, 1.83],
    [0.25, 1240, 0.1134, 25.4, 91.5],
    [0.5, 1140, 0.2268, 55.26, 199],
    [20, 1140, 9.072, 2210.5, 7958],
  ])(
    "%f lb/h of a polymer of %i kg/m3 is %f kg/h, %f mm3/s or %f cm3/h",
    (lbPerH, density, kgPerH, flow, flowCm3PerH) => {
      expect(kgFromLb(lbPerH) / kgPerH).toBeCloseTo(1, 3);
      expect(massFlowKgPerH(flow, density) / kgPerH).toBeCloseTo(1, 3);
      const limit = flowLimitMm3PerS(aNozzle({ flowCm3PerH }), aFeedstock({ flowFactor: 1 }));
      expect(limit / flow).toBeCloseTo(1, 2);
    },
  );

  test("a pellet machine of 20 lb/h is 200 times a filament machine of 0.1 lb/h and 80 times the best of 0.25", () => {
    expect(20 / 0.1).toBeCloseTo(200, 9);
    expect(20 / 0.25).toBe(80);
    expect(flowOf(kgFromLb(0.1), 1240)).toBeCloseTo(10.2, 1);
  });

  test("10 x 5 mm at 100 mm/s would be 45 lb/h: 20 lb/h is a class of machines, not a limit of physics", () => {
    expect(lbFromKg(massFlowKgPerH(100 * beadAreaMm2(10, 5), 1140))).toBeCloseTo(45.2, 1);
  });
});

function thumbKgPerH(diameterIn: number): number {
  return kgFromLb(16 * diameterIn ** 2.2);
}

function flowOf(kgPerH: number, densityKgPerM3: number): number {
  return kgPerH / densityKgPerM3 / 1e-9 / S_PER_H;
}

/**
 * Melt limits of filament nozzles. Published maxima for PLA at 220 degC: Wüst, Kattinger, Dahmen, Spiehl, Bonten and Blaeser
 * (2026), JMMP 10(7) 233, Table 1 (read in a summary). Rod heated from outside: Carslaw and Jaeger, "Conduction of Heat in
 * Solids" (from memory). That heat to the core limits the rate: Go, Schiffres, Stevens and Hart (2017), "Rate limits of
 * additive manufacturing by fused filament fabrication and guidelines for high-throughput system design", Additive
 * Manufacturing 16:1-11 (abstract).
 */
import { describe, expect, test } from "vitest";
import { massFlowKgPerH } from "../../core/estimate/bead.ts";
import {
  coreMeltingLimitMm3PerS,
  flowLimitMm3PerS,
  heaterLimitMm3PerS,
} from "../../core/estimate/melt-limit.ts";
import { aFeedstock, aNozzle } from "../fixtures/a-route.ts";

const PLA = { conductivityWPerMK: 0.17, densityKgPerM3: 1240, specificHeatJPerKgK: 1700 };
const DIFFUSIVITY_MM2_PER_S = 0.080645;

function proposalFor(nozzleDiameterMm: number): number {
  return coreMeltingLimitMm3PerS({ ...PLA, nozzleDiameterMm, meltLengthMm: 12.5 });
}

describe("core-melting limit against published maxima of PLA", () => {
  test.each([
    [0.4, 12.5, 12.67, 13.0, 13.0, 0.244, 0.244],
    [0.4, 19.6, 19.86, 16.0, 24.0, 0.31, 0.207],
    [1.2, 21.0, 35.5, 38.5, 38.5, 0.138, 0.138],
    [1.2, 51.5, 86.98, 76.5, 87.5, 0.171, 0.149],
  ])(
    "bore %f mm and melt length %f mm give %f mm3/s, within 30 %% of the measured %f to %f",
    (nozzleDiameterMm, meltLengthMm, model, measuredLow, measuredHigh, fourierAtLow, fourierAtHigh) => {
      const limit = coreMeltingLimitMm3PerS({ ...PLA, nozzleDiameterMm, meltLengthMm });
      expect(limit / model).toBeCloseTo(1, 2);
      expect(limit).toBeGreaterThan(0.7 * measuredLow);
      expect(limit).toBeLessThan(1.3 * measuredHigh);
      const throughMm3PerS = Math.PI * DIFFUSIVITY_MM2_PER_S * meltLengthMm;
      expect(throughMm3PerS / measuredLow).toBeCloseTo(fourierAtLow, 3);
      expect(throughMm3PerS / measuredHigh).toBeCloseTo(fourierAtHigh, 3);
    },
  );

  test("between 0.6 and 1 mm the needed Fourier number falls on a straight line", () => {
    expect(proposalFor(0.6)).toBe(proposalFor(0.4));
    expect(proposalFor(0.8) / proposalFor(0.6)).toBeCloseTo(0.25 / 0.2, 12);
    expect(proposalFor(1) / proposalFor(0.6)).toBeCloseTo(0.25 / 0.15, 12);
    expect(proposalFor(3)).toBe(proposalFor(1));
  });

  test("ABS at 12.5 mm is proposed 18.4 mm3/s, over the 11 to 16 of common practice: a first guess only", () => {
    const abs = { conductivityWPerMK: 0.17, densityKgPerM3: 1040, specificHeatJPerKgK: 1397 };
    expect(coreMeltingLimitMm3PerS({ ...abs, nozzleDiameterMm: 0.4, meltLengthMm: 12.5 })).toBeCloseTo(
      18.4,
      1,
    );
  });
});

/** Zeros of the Bessel function J0 and the values of J1 there (tables, from memory; checked by the series below). */
const ZEROS = [2.404825558, 5.52007811, 8.653727913, 11.791534439, 14.930917708, 18.071063968];

describe("the fitted Fourier numbers leave a core that is hot enough to flow", () => {
  test.each([
    [0.1, 0.8484, 0.3942],
    [0.2, 0.5015, 0.2179],
    [0.25, 0.3768, 0.163],
    [0.3, 0.2825, 0.122],
    [0.5, 0.0889, 0.0384],
  ])("Fo %f leaves %f of the difference at the centre and %f in the mean", (fourier, centre, mean) => {
    expect(Math.abs(centreShare(fourier) - centre)).toBeLessThan(1e-4);
    expect(Math.abs(meanShare(fourier) - mean)).toBeLessThan(1e-4);
  });

  test("at Fo 0.25 a rod of 25 degC in a channel of 220 degC has a core of 146 to 147 degC", () => {
    expect(220 - (220 - 25) * centreShare(0.25)).toBeCloseTo(146.5, 0);
  });
});

test("a heater of 40 W at 60 % melts 59.92 mm3/s of an amorphous polymer with 190 K rise", () => {
  const heat = { heaterW: 40, efficiency: 0.6, densityKgPerM3: 1240, specificHeatJPerKgK: 1700, riseK: 190 };
  expect(heaterLimitMm3PerS({ ...heat, meltingJPerKg: 0 })).toBeCloseTo(59.92, 2);
  expect(heaterLimitMm3PerS({ ...heat, meltingJPerKg: 30_000 })).toBeLessThan(59.92);
});

test("heating 1 kg by 190 K at 1.8 kJ/(kg K) takes 0.095 kWh: less than that for a kg is a slip of the input", () => {
  const heat = { heaterW: 1000, efficiency: 1, densityKgPerM3: 1240, specificHeatJPerKgK: 1800, riseK: 190 };
  const kgPerH = massFlowKgPerH(heaterLimitMm3PerS({ ...heat, meltingJPerKg: 0 }), 1240);
  expect(1 / kgPerH).toBeCloseTo(0.095, 6);
});

test.each([
  ["on average", 127, 35],
  ["at its peak", 282, 78],
])(
  "a screw-fed filament machine heated by laser (Go and Hart 2017, from memory) laid down %s %i cm3/h or %i mm3/s",
  (_, flowCm3PerH, mm3PerS) => {
    const limit = flowLimitMm3PerS(aNozzle({ flowCm3PerH }), aFeedstock({ flowFactor: 1 }));
    expect(Math.abs(limit - mm3PerS)).toBeLessThan(0.5);
  },
);

function centreShare(fourier: number): number {
  return 2 * ZEROS.reduce((sum, zero) => sum + Math.exp(-(zero ** 2) * fourier) / (zero * besselJ1(zero)), 0);
}

function meanShare(fourier: number): number {
  return 4 * ZEROS.reduce((sum, zero) => sum + Math.exp(-(zero ** 2) * fourier) / zero ** 2, 0);
}

/** J1 by Bessel's integral, (1/pi) of cos(t - x sin t) from 0 to pi. */
function besselJ1(x: number): number {
  const steps = 2000;
  let sum = 0;
  for (let n = 0; n < steps; n++) {
    const angle = ((n + 0.5) * Math.PI) / steps;
    sum += Math.cos(angle - x * Math.sin(angle));
  }
  return sum / steps;
}

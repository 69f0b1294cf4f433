import { expect, test } from "vitest";
import { keyFigures } from "../../core/report/key-figures.ts";

/**
 * ISO 22400-2:2014, "Automation systems and integration - Key performance indicators (KPIs) for manufacturing operations
 * management - Part 2: Definitions and descriptions". Formulas as published in the ISO22400-2 ontology of Helmut Schmidt
 * University; the instance is our own, worked out by hand.
 */
const record = {
  plannedBusyH: 120,
  busyH: 96,
  productionH: 84,
  setUpH: 6,
  delayH: 6,
  plannedRunPerPieceH: 1.9,
  produced: 40,
  good: 38,
};

test("the key figures follow the standard's formulas", () => {
  const figures = keyFigures(record);
  expect(figures.allocationEfficiency).toBeCloseTo(0.8, 9);
  expect(figures.utilizationEfficiency).toBeCloseTo(0.875, 9);
  expect(figures.availability).toBeCloseTo(0.7, 9);
  expect(figures.effectiveness).toBeCloseTo(0.904762, 6);
  expect(figures.qualityRatio).toBeCloseTo(0.95, 9);
  expect(figures.oeeIndex).toBeCloseTo(0.601667, 6);
  expect(figures.neeIndex).toBeCloseTo(0.644643, 6);
  expect(figures.setUpRatio).toBeCloseTo(0.066667, 6);
  expect(figures.technicalEfficiency).toBeCloseTo(0.933333, 6);
});

test("availability is allocation times utilization, and the OEE index is good pieces x planned run time / planned busy time", () => {
  const figures = keyFigures(record);
  expect((figures.allocationEfficiency ?? 0) * (figures.utilizationEfficiency ?? 0)).toBeCloseTo(
    figures.availability ?? -1,
    12,
  );
  expect(figures.oeeIndex).toBeCloseTo((38 * 1.9) / 120, 12);
});

test("a machine that was never planned or used has no ratio rather than 0 or NaN", () => {
  const idle = {
    ...record,
    plannedBusyH: 0,
    busyH: 0,
    productionH: 0,
    setUpH: 0,
    delayH: 0,
    produced: 0,
    good: 0,
  };
  expect(Object.values(keyFigures(idle)).every((figure) => figure === null)).toBe(true);
});

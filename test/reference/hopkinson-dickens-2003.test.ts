import { expect, test } from "vitest";
import { addUp, depreciationPerYear } from "../../core/cost/machine-hour-rate.ts";
import type { RateTerm } from "../../core/cost/machine-hour-rate.ts";
import { timeCost } from "../../core/cost/time-cost.ts";

/**
 * Hopkinson and Dickens 2003, "Analysis of rapid manufacturing - using layer manufacturing processes for production",
 * Proc. IMechE Part C 217, 31-39: the cost of a lever on three kinds of machine, each with its platform full. Inputs and
 * results from memory, reproduced here. Material is the published total less machine and labour.
 */
const HOURS_PER_YEAR = 7884;
const LABOUR_PER_H = 5.3;

interface Lever {
  readonly process: string;
  readonly partsPerBuild: number;
  readonly buildH: number;
  readonly equipment: number;
  readonly maintenancePerYear: number;
  readonly labourMin: number;
  readonly partsPerYear: number;
  readonly machinePerYear: number;
  readonly machinePerPart: number;
  readonly labourPerBuild: number;
  readonly labourPerPart: number;
  readonly material: number;
  readonly total: number;
}

const levers: Lever[] = [
  {
    process: "material extrusion",
    partsPerBuild: 75,
    buildH: 67.27,
    equipment: 101_280,
    maintenancePerYear: 10_560,
    labourMin: 10 + 60,
    partsPerYear: 8790,
    machinePerYear: 23_220,
    machinePerPart: 2.64,
    labourPerBuild: 6.18,
    labourPerPart: 0.08,
    material: 1.75,
    total: 4.47,
  },
  {
    process: "vat photopolymerization",
    partsPerBuild: 190,
    buildH: 26.8,
    equipment: 1_040_000,
    maintenancePerYear: 89_000,
    labourMin: 33 + 49,
    partsPerYear: 55_894,
    machinePerYear: 219_000,
    machinePerPart: 3.92,
    labourPerBuild: 7.24,
    labourPerPart: 0.04,
    material: 1.29,
    total: 5.25,
  },
  {
    process: "powder bed fusion",
    partsPerBuild: 1056,
    buildH: 59.78,
    equipment: 340_000,
    maintenancePerYear: 30_450,
    labourMin: 120 + 360,
    partsPerYear: 139_269,
    machinePerYear: 72_950,
    machinePerPart: 0.52,
    labourPerBuild: 42.4,
    labourPerPart: 0.04,
    material: 1.64,
    total: 2.2,
  },
];

test.each(levers)(
  "the lever by $process costs $machinePerPart of machine and $labourPerPart of labour",
  (lever) => {
    const terms: RateTerm[] = [
      {
        name: "depreciation",
        kind: "fixed",
        amount: depreciationPerYear(lever.equipment, 0, 8),
        formula: "",
        inputs: [],
      },
      { name: "maintenance", kind: "fixed", amount: lever.maintenancePerYear, formula: "", inputs: [] },
    ];
    const rate = addUp(terms, HOURS_PER_YEAR);
    expect(rate.fixedPerYear).toBe(lever.machinePerYear);
    expect(Math.abs((HOURS_PER_YEAR / lever.buildH) * lever.partsPerBuild - lever.partsPerYear)).toBeLessThan(
      1,
    );
    const machine = timeCost(lever.buildH * 60, rate.perH) / lever.partsPerBuild;
    expect(Math.abs(machine - lever.machinePerPart)).toBeLessThan(0.01);
    const labourPerBuild = timeCost(lever.labourMin, LABOUR_PER_H);
    expect(Math.abs(labourPerBuild - lever.labourPerBuild)).toBeLessThan(0.01);
    const labour = labourPerBuild / lever.partsPerBuild;
    expect(Math.abs(labour - lever.labourPerPart)).toBeLessThan(0.01);
    expect(Math.abs(machine + labour + lever.material - lever.total)).toBeLessThan(0.01);
  },
);

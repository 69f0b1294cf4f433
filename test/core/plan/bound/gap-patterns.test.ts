import { expect, test } from "vitest";
import { classGaps } from "../../../../core/plan/bound/gap-patterns.ts";
import type { MachineClass, PlanMachine, Stretch } from "../../../../core/plan/plan-problem.ts";

const WINDOWS = [
  { startMin: 0, endMin: 100 },
  { startMin: 140, endMin: 240 },
  { startMin: 330, endMin: 430 },
];

function aClass(unattended: boolean): MachineClass {
  return {
    machineIndices: [0],
    calendarIndex: 0,
    process: "filament",
    setUpMin: 10,
    unloadMin: 5,
    mixedPlatform: false,
    unattended,
    unattendedMaxMin: unattended ? Infinity : 0,
    platformMm: { x: 100, y: 100 },
    partGapMm: 5,
    changeoverMin: new Float64Array(2),
    changeoverCost: new Float64Array(2),
  };
}

function aMachine(segments: readonly Stretch[]): PlanMachine {
  return {
    machineId: "M",
    classIndex: 0,
    freeFromMin: 0,
    startState: 0,
    blocks: [],
    windows: WINDOWS,
    segments,
  };
}

test("a machine that may not run unattended enters no gap", () => {
  const gaps = classGaps(aClass(false), [aMachine(WINDOWS)], 1000, 500);
  expect(gaps.patterns).toHaveLength(1);
  expect(gaps.patterns[0]).toMatchObject({ gapMin: 0, betweenMin: 0, spanMin: 100 });
});

test("gaps of 40 and 90 min alone and together, with the window between them", () => {
  const gaps = classGaps(aClass(true), [aMachine([{ startMin: 0, endMin: 430 }])], 1000, 500);
  expect(gaps.typesMin).toEqual([40, 90]);
  expect(gaps.gaps.map(({ nextStartMin }) => nextStartMin)).toEqual([140, 330]);
  const found = gaps.patterns.map(({ gapMin, betweenMin, entryMin }) => [gapMin, betweenMin, entryMin]);
  expect(found).toEqual([
    [0, 0, 0],
    [40, 0, 0],
    [130, 100, 140],
    [90, 0, 0],
  ]);
});

test("a run not longer than the way to the last gap does not make the pattern", () => {
  const machine = aMachine([{ startMin: 0, endMin: 430 }]);
  expect(classGaps(aClass(true), [machine], 1000, 140).patterns).toHaveLength(3);
  expect(classGaps(aClass(true), [machine], 1000, 141).patterns).toHaveLength(4);
});

test("a gap counts only where a segment spans it", () => {
  const segments = [{ startMin: 0, endMin: 240 }, WINDOWS[2]!];
  expect(classGaps(aClass(true), [aMachine(segments)], 1000, 500).typesMin).toEqual([40]);
});

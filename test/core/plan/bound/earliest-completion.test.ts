import { expect, test } from "vitest";
import { earliestUnloadEnd, unloadEnd } from "../../../../core/plan/bound/earliest-completion.ts";
import type { PlanMachine } from "../../../../core/plan/plan-problem.ts";

const WINDOWS = [
  { startMin: 0, endMin: 100 },
  { startMin: 160, endMin: 260 },
];
const BUILD = { fromMin: 0, setUpMin: 10, runMin: 60, unloadMin: 5 };

function aMachine(overrides: Partial<PlanMachine> = {}): PlanMachine {
  return {
    machineId: "M",
    classIndex: 0,
    freeFromMin: 0,
    startState: 0,
    blocks: [],
    windows: WINDOWS,
    segments: WINDOWS,
    ...overrides,
  };
}

test("set-up, run and unload follow each other where the window has room", () => {
  expect(earliestUnloadEnd(aMachine(), BUILD)).toBe(75);
});

test("a run that just fits the window is unloaded in the next one", () => {
  expect(earliestUnloadEnd(aMachine(), { ...BUILD, runMin: 85 })).toBe(100);
  expect(earliestUnloadEnd(aMachine(), { ...BUILD, runMin: 90 })).toBe(165);
});

test("a run a minute too long for the rest of the window waits for the next", () => {
  expect(earliestUnloadEnd(aMachine(), { ...BUILD, fromMin: 30 })).toBe(165);
  expect(earliestUnloadEnd(aMachine(), { ...BUILD, fromMin: 31 })).toBe(235);
});

test("a run that no segment can hold never completes, unless one spans the gap", () => {
  expect(earliestUnloadEnd(aMachine(), { ...BUILD, runMin: 120 })).toBe(Infinity);
  const spanning = aMachine({ segments: [{ startMin: 0, endMin: 260 }] });
  expect(earliestUnloadEnd(spanning, { ...BUILD, runMin: 120 })).toBe(165);
});

test("nothing starts before the machine is free", () => {
  expect(earliestUnloadEnd(aMachine({ freeFromMin: 20 }), BUILD)).toBe(95);
});

test("a finished build does not wait through a time out of service", () => {
  const windows = [{ startMin: 0, endMin: 72 }, { startMin: 80, endMin: 100 }, ...WINDOWS.slice(1)];
  const blocked = aMachine({ windows, segments: windows, blocks: [{ startMin: 72, endMin: 80 }] });
  expect(earliestUnloadEnd(blocked, BUILD)).toBe(235);
});

test("an unload lies inside one window", () => {
  expect(unloadEnd(WINDOWS, 95, 5)).toBe(100);
  expect(unloadEnd(WINDOWS, 96, 5)).toBe(165);
  expect(unloadEnd(WINDOWS, 256, 5)).toBe(Infinity);
});

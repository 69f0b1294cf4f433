import { describe, expect, test } from "vitest";
import type { PlanMachine } from "../../../core/plan/plan-problem.ts";
import { weekSlots } from "../../../core/purchase/week-slots.ts";

const START = 10_000;

function staffedOn(days: readonly number[]): PlanMachine {
  const windows = days.map((day) => ({
    startMin: START + day * 1440 + 480,
    endMin: START + day * 1440 + 960,
  }));
  return {
    machineId: "M",
    classIndex: 0,
    freeFromMin: START,
    startState: 0,
    blocks: [],
    windows,
    segments: windows,
  };
}

describe("slots of a week", () => {
  test("are the staffed days, the last one with the weekend", () => {
    const slots = weekSlots([staffedOn([0, 1, 2, 3, 4, 7])], START);
    expect(slots.lengthDays).toEqual([1, 1, 1, 1, 3]);
    expect(slots.ofDay).toEqual([0, 1, 2, 3, 4, 4, 4]);
    expect([...slots.endMin]).toEqual([1440, 2880, 4320, 5760, 10_080]);
  });

  test("days before the first staffed one join it", () => {
    const slots = weekSlots([staffedOn([2]), staffedOn([4])], START);
    expect(slots.ofDay).toEqual([0, 0, 0, 0, 1, 1, 1]);
    expect(slots.lengthDays).toEqual([4, 3]);
  });

  test("a week with nobody there is one slot", () => {
    expect(weekSlots([], START).lengthDays).toEqual([7]);
  });
});

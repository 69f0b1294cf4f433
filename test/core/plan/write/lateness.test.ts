import { describe, expect, test } from "vitest";
import { latenessOf } from "../../../../core/plan/write/lateness.ts";
import type { PlanLine } from "../../../../core/plan/plan-problem.ts";

const LINE: PlanLine = {
  index: 0,
  orderId: "O-1",
  partId: "clip",
  quantity: 4,
  releaseMin: 0,
  dueMin: 100,
  lateCostPerMin: 1,
  allowLate: true,
  perPiece: false,
  orderedCopies: 4,
  optionIndices: [],
  buyOut: null,
};

describe("a line that counts when all its copies are there", () => {
  test.each([
    [99, 0],
    [100, 0],
    [101, 1],
  ])("its last copy at %d, due at 100, is late by %d min", (endMin, lateMin) => {
    const lateness = latenessOf(LINE, [
      { copies: 3, endMin: 90 },
      { copies: 1, endMin },
    ]);
    expect(lateness).toEqual({ finishedMin: endMin, lateMin, chargedMin: lateMin });
  });

  test("with no copy planned it is not late", () => {
    expect(latenessOf(LINE, [])).toEqual({ finishedMin: null, lateMin: 0, chargedMin: 0 });
  });
});

describe("a line whose copies count by themselves", () => {
  test("is charged the mean over all ordered copies", () => {
    const lateness = latenessOf({ ...LINE, perPiece: true }, [
      { copies: 3, endMin: 90 },
      { copies: 1, endMin: 140 },
    ]);
    expect(lateness).toEqual({ finishedMin: 140, lateMin: 40, chargedMin: 10 });
  });

  test("copies made before count as in time: 1 of 4 planned", () => {
    const lateness = latenessOf({ ...LINE, quantity: 1, perPiece: true }, [{ copies: 1, endMin: 140 }]);
    expect(lateness.chargedMin).toBe(10);
  });
});

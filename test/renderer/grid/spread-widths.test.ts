import { describe, expect, test } from "vitest";
import { spreadWidths } from "../../../renderer/components/grid/spread-widths.ts";

const usual = (...widths: number[]) => widths.map((widthPx) => ({ widthPx, isSet: false }));

describe("widths of columns", () => {
  test("spare room is shared in proportion", () => {
    expect(spreadWidths(usual(100, 200), 450)).toEqual([150, 300]);
  });

  test("a width that somebody set stays, the others share the rest", () => {
    expect(spreadWidths([{ widthPx: 100, isSet: true }, ...usual(200)], 400)).toEqual([100, 300]);
  });

  test("where room is short, or just enough, all keep their widths", () => {
    expect(spreadWidths(usual(100, 200), 299)).toEqual([100, 200]);
    expect(spreadWidths(usual(100, 200), 300)).toEqual([100, 200]);
    expect(spreadWidths(usual(100, 200), 0)).toEqual([100, 200]);
  });

  test("none grows beyond one and three quarters", () => {
    expect(spreadWidths(usual(100), 10_000)).toEqual([175]);
  });

  test("in all they never take more than the room", () => {
    for (let room = 300; room < 520; room += 7) {
      const sum = spreadWidths(usual(101, 67, 132), room).reduce((a, b) => a + b, 0);
      expect(sum).toBeLessThanOrEqual(room);
    }
  });
});

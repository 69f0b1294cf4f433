import { describe, expect, test } from "vitest";
import { pathsPaid } from "../../../core/purchase/week-state.ts";

describe("tool paths paid for by shares", () => {
  test("stay a share below a half", () => {
    expect(pathsPaid(0, 0)).toBe(0);
    expect(pathsPaid(0.3, 0.1)).toBeCloseTo(0.4, 12);
  });

  test("are whole from a half on", () => {
    expect(pathsPaid(0.3, 0.2)).toBe(1);
    expect(pathsPaid(0, 0.9)).toBe(1);
    expect(pathsPaid(1, 0)).toBe(1);
  });
});

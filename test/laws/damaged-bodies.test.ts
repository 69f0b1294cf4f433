import { expect, test } from "vitest";
import { fuzzReaders } from "../fixtures/fuzz-readers.ts";

test("500 damaged files: never a throw, never slow, never a closed body of a wrong volume", () => {
  const tally = fuzzReaders(500, 20_261_125);
  expect(tally.faults).toEqual([]);
  expect(tally.slowestMs).toBeLessThan(1000);
  expect(tally.refused).toBeGreaterThan(100);
  expect(tally.open).toBeGreaterThan(20);
  expect(tally.closed).toBeGreaterThan(20);
});

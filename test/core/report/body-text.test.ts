import { expect, test } from "vitest";
import { bodyFacts } from "../../../core/report/body-facts.ts";
import { bodyLines } from "../../../core/report/body-text.ts";
import { box, tShape, together } from "../../fixtures/bodies.ts";

test("a box of 2 x 3 x 4 mm: its heights, and nothing hangs over", () => {
  const { standings, measures } = bodyFacts(box(2, 3, 4));
  expect(measures.volumeMm3).toBeCloseTo(24, 9);
  expect(Object.fromEntries(standings.map(({ up, heightMm }) => [up, heightMm]))).toEqual({
    z: 4,
    "-z": 4,
    x: 2,
    "-x": 2,
    y: 3,
    "-y": 3,
  });
  expect(standings.every(({ overhangAreaMm2 }) => overhangAreaMm2 === 0)).toBe(true);
});

test("a T stood on its post: 200 mm² hang over 2 cm³, on its slab nothing does", () => {
  const lines = bodyLines(bodyFacts(tShape()));
  expect(lines.find((line) => /^ {3}y /.test(line))).toMatch(/ 15\.00 +200\.0 +2\.00$/);
  expect(lines.find((line) => /^ {2}-y /.test(line))).toMatch(/ 15\.00 +0\.0 +0\.00$/);
});

test("two bodies are two shells", () => {
  const { cornersMm, triangles } = box(2, 3, 4);
  const beside = { cornersMm: cornersMm.map((mm, at) => (at % 3 === 0 ? mm + 10 : mm)), triangles };
  const text = bodyLines(bodyFacts(together(box(2, 3, 4), beside))).join("\n");
  expect(text).toContain("24 triangles in 2 shells");
  expect(text).toContain("size       12.00 x 3.00 x 4.00 mm");
});

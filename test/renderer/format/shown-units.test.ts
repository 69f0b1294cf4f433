import { expect, test } from "vitest";
import { makeFormat } from "../../../renderer/format/format.ts";
import { inShownUnits, sentenceInUnits } from "../../../renderer/format/shown-units.ts";
import { BRITISH_RULES } from "../format-rules.ts";

const METRIC = makeFormat(BRITISH_RULES);
const INCH = makeFormat({ ...BRITISH_RULES, length: "in", mass: "lb" });
const GERMAN = makeFormat({ ...BRITISH_RULES, language: "de-DE" });
const SENTENCE = "smallest detail 0.8 mm, narrowest bead of nozzle n4 4 mm; it needs 2.5 kg.";

test("a sentence of core tells its lengths and masses in the units that are shown", () => {
  expect(sentenceInUnits(SENTENCE, INCH)).toBe(
    "smallest detail 0.0315\u202fin, narrowest bead of nozzle n4 0.1575\u202fin; it needs 5.51\u202flb.",
  );
  expect(sentenceInUnits(SENTENCE, METRIC)).toBe(SENTENCE);
});

test("and its numbers as numbers are written", () => {
  expect(sentenceInUnits(SENTENCE, GERMAN)).toContain("detail 0,8 mm");
});

test("areas, flows, names and times in it stay as they are", () => {
  const other = "PLA 1.75 with 3 mm2 at 2 kg/h until Mon 30 Nov 06:40, order M-4 kg5";
  expect(sentenceInUnits(other, INCH)).toBe(other);
});

test("inputs of formulas are turned with their units, prices per kg the other way", () => {
  expect(inShownUnits({ value: 1, unit: "kg" }, INCH)).toEqual({ value: 1 / 0.45359237, unit: "lb" });
  expect(inShownUnits({ value: 10, unit: "EUR/kg" }, INCH)).toEqual({
    value: expect.closeTo(4.5359237, 9),
    unit: "EUR/lb",
  });
  expect(inShownUnits({ value: 50.8, unit: "mm" }, INCH)).toEqual({ value: 2, unit: "in" });
  expect(inShownUnits({ value: 3, unit: "min" }, INCH)).toEqual({ value: 3, unit: "min" });
  expect(inShownUnits({ value: 10, unit: "EUR/kg" }, METRIC)).toEqual({ value: 10, unit: "EUR/kg" });
});

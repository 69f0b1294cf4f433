import { describe, expect, test } from "vitest";
import { readCase } from "../../../core/shop/read-case.ts";
import { aCase } from "../../fixtures/a-case.ts";

function file(overrides: object = {}): string {
  return JSON.stringify({ schema: 1, ...aCase(), ...overrides });
}

function withCandidate(overrides: object): object {
  return { candidates: [{ ...aCase().candidates[0], ...overrides }] };
}

function financing(overrides: object): object {
  return { financing: { ...aCase().financing, ...overrides } };
}

describe("a case file", () => {
  test("gives the case, with or without a byte order mark", () => {
    expect(readCase(file())).toEqual({ purchaseCase: aCase(), findings: [] });
    expect(readCase(`\uFEFF${file()}`).purchaseCase).toEqual(aCase());
  });

  test.each([
    ["a negative price", withCandidate({ price: -1 }), "The case: candidates 1, price must not be negative."],
    [
      "a life of 0",
      withCandidate({ lifeYears: 0 }),
      "The case: candidates 1, lifeYears must be at least 1 year.",
    ],
    [
      "half a year of life",
      withCandidate({ lifeYears: 0.5 }),
      "The case: candidates 1, lifeYears must be a whole number of years.",
    ],
    ["nothing to change", withCandidate({ changes: [] }), "The case: candidates 1, changes changes nothing."],
    [
      "a rate of 100 %",
      financing({ discountPctPerYear: 100 }),
      "The case: financing, discountPctPerYear must be below 100 % per year: 8 means 8 %.",
    ],
    [
      "a rate of -100 %",
      financing({ discountPctPerYear: -100 }),
      "The case: financing, discountPctPerYear must be above -100 %: at -100 % money is worth nothing a year later.",
    ],
    ["a tax of 100 %", financing({ taxPct: 100 }), "The case: financing, taxPct must be below 100 %."],
    [
      "growth of -100 %",
      { growthPctPerYear: -100 },
      "The case: growthPctPerYear must be above -100 %: at -100 % nobody orders any more.",
    ],
    [
      "eleven months",
      { seasonByMonth: Array.from({ length: 11 }, () => 1) },
      "The case: seasonByMonth needs one factor for each of the 12 months.",
    ],
    ["no weeks", { weeks: 0 }, "The case: weeks must be at least 1."],
    ["no patience below 0", { patienceWeeks: -1 }, "The case: patienceWeeks must not be negative."],
    ["a field misspelt", { wekes: 3 }, 'The case has no field "wekes": correct its name or remove it.'],
    ["a text for a number", { seed: "x" }, "The case: seed must be a whole number."],
  ])("with %s is refused in a sentence", (_, overrides, sentence) => {
    const { purchaseCase, findings } = readCase(file(overrides));
    expect(purchaseCase).toBeNull();
    expect(findings.map((finding) => finding.sentence)).toEqual([sentence]);
  });

  test.each([
    ["nothing", "", "empty"],
    ["half of it", '{"schema": 1,', "not-json"],
    ["a list", "[]", "schema"],
    ["a later version", file({ schema: 2 }), "schema-newer"],
    ["no version", JSON.stringify(aCase()), "schema"],
  ])("of %s is refused, never thrown", (_, text, code) => {
    const { purchaseCase, findings } = readCase(text);
    expect(purchaseCase).toBeNull();
    expect(findings[0]?.code).toBe(code);
  });

  test("keeps rates just inside, and a price of 0", () => {
    expect(readCase(file(financing({ discountPctPerYear: 99.9 }))).findings).toEqual([]);
    expect(readCase(file(financing({ discountPctPerYear: -99.9 }))).findings).toEqual([]);
    expect(readCase(file(withCandidate({ price: 0, lifeYears: 1 }))).findings).toEqual([]);
  });
});

import { describe, expect, test } from "vitest";
import { editedNumber, numberText, readNumber } from "../../../renderer/format/number-words.ts";

describe("a typed number", () => {
  test.each([
    ["1.234,5", "de-DE", 1234.5],
    ["1.234,5", "en-GB", 1234.5],
    ["1,234.5", "de-DE", 1234.5],
    ["1,234.5", "en-GB", 1234.5],
    ["1,234", "en-GB", 1234],
    ["1,234", "de-DE", 1.234],
    ["1.234", "de-DE", 1234],
    ["1.234", "en-GB", 1.234],
    ["1,5", "en-GB", 1.5],
    ["1,5", "de-DE", 1.5],
    ["0,125", "de-DE", 0.125],
    ["1 234 567,25", "fr-FR", 1_234_567.25],
    ["1\u202f234,5", "fr-FR", 1234.5],
    ["1\u2019234.5", "de-CH", 1234.5],
    ["1'234'567", "en-GB", 1_234_567],
    ["12,34,567.8", "en-IN", 1_234_567.8],
    ["1,234,567", "de-DE", 1_234_567],
    ["\u22125", "en-GB", -5],
    ["+5", "en-GB", 5],
    [".5", "en-GB", 0.5],
    ["5.", "en-GB", 5],
    ["1e3", "en-GB", 1000],
  ])("%s in %s is %d", (text, language, value) => {
    expect(readNumber(text, language)).toBe(value);
  });

  test.each([
    "",
    " ",
    "-",
    "abc",
    "1,2,3",
    "1.2.3",
    "1,5,5.5",
    "12 mm",
    "1,5.5,5",
    "0x10",
    "Infinity",
    "NaN",
    "--5",
    "=",
  ])("is none where the text is %j", (text) => {
    expect(readNumber(text, "en-GB")).toBeNull();
  });

  test("comes back the same from its field in every language", () => {
    for (const language of ["en-GB", "de-DE", "fr-FR", "de-CH", "en-IN", "sv-SE"]) {
      for (const value of [0, 1, -1.5, 0.1, 1234.5, 1_234_567.891, 0.000123, 1.005, 12_345.675]) {
        expect(readNumber(editedNumber(value, language), language)).toBeCloseTo(value, 10);
      }
    }
  });
});

describe("a shown number", () => {
  test("is rounded half up, binary dust or not, and grouped as the language does", () => {
    expect(numberText(1.005, 2, 2, "en-GB")).toBe("1.01");
    expect(numberText(12_345.675, 2, 2, "en-GB")).toBe("12,345.68");
    expect(numberText(12_345.675, 2, 2, "de-DE")).toBe("12.345,68");
    expect(numberText(1_234_567, 0, 0, "en-IN")).toBe("12,34,567");
  });

  test("has a true minus, but none before nothing", () => {
    expect(numberText(-1.5, 0, 2, "en-GB")).toBe("\u22121.5");
    expect(numberText(-0.001, 2, 2, "en-GB")).toBe("0.00");
  });

  test("says what is no number in words", () => {
    expect(numberText(Number.NaN, 0, 2, "en-GB")).toBe("unknown");
    expect(numberText(Infinity, 0, 2, "en-GB")).toBe("unlimited");
  });
});

import { describe, expect, test } from "vitest";
import { displayWords } from "../../../core/shop/display-words.ts";
import { aFeedstock, aMachine, aShop } from "../../fixtures/a-route.ts";

const inches = aShop({
  display: { length: "in", mass: "lb" },
  feedstocks: [aFeedstock({ name: "PLA 2.85 mm" })],
  machines: [aMachine({ name: "Bench (25 kg)" })],
});

describe("sentences in the units of the works", () => {
  test.each([
    ["layer 0.2 mm, z up", "layer 0.0079 in, z up"],
    [
      "too large: 812 x 400 mm across and 120 mm high, 240 × 240 mm free.",
      "too large: 32 x 15.7 in across and 4.72 in high, 9.45 × 9.45 in free.",
    ],
    ["1290.32 mm² hang over.", "2 in² hang over."],
    ["0.132 kg of PETG", "0.291 lb of PETG"],
    ["12 mm.", "0.472 in."],
  ])("%s", (given, expected) => {
    expect(displayWords(inches)(given)).toBe(expected);
  });

  test("names of the shop stay, numbers beside them change", () => {
    const sentence = "Bench (25 kg) with PLA 2.85 mm: smallest detail 2.54 mm.";
    expect(displayWords(inches)(sentence)).toBe("Bench (25 kg) with PLA 2.85 mm: smallest detail 0.1 in.");
  });

  test("speeds, volumes and words that only begin so stay", () => {
    const sentence = "60 mm/s, 5 mm³, 3 kgf, O-12 mm2 and v1.2 mmx";
    expect(displayWords(inches)(sentence)).toBe(sentence);
  });

  test("each unit follows its own setting, and nothing changes in millimetres and kilograms", () => {
    const sentence = "2 kg, 25.4 mm";
    expect(displayWords(aShop({ display: { length: "mm", mass: "lb" } }))(sentence)).toBe("4.41 lb, 25.4 mm");
    expect(displayWords(aShop({ display: { length: "in", mass: "kg" } }))(sentence)).toBe("2 kg, 1 in");
    expect(displayWords(aShop())(sentence)).toBe(sentence);
  });
});

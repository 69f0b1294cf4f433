import { describe, expect, it } from "vitest";
import { countText, displayOf, fixedText, percentAtMost } from "../../../core/report/display.ts";

const EUR = { currency: "EUR", timeZone: "Europe/Berlin", display: { length: "mm", mass: "kg" } } as const;
const US = { currency: "USD", timeZone: "America/Chicago", display: { length: "in", mass: "lb" } } as const;
const metric = displayOf(EUR, "2026-11-30T06:00");
const imperial = displayOf(US, "2026-11-30T06:00");

/** Narrow spaces as plain ones, to read the tests. */
function plain(text: string): string {
  return text.replaceAll("\u202f", " ");
}

describe("numbers", () => {
  it.each([
    [999, 0, "999"],
    [1000, 0, "1 000"],
    [1234567.891, 2, "1 234 567.89"],
    [12345.675, 2, "12 345.68"],
    [1.005, 2, "1.01"],
    [-0.004, 2, "0.00"],
    [-1234.5, 1, "\u22121 234.5"],
    [0.5, 0, "1"],
  ])("%d with %i decimals is %s", (value, decimals, text) => {
    expect(plain(fixedText(value, decimals))).toBe(text);
  });

  it("say in words that there is no number", () => {
    expect(fixedText(Number.POSITIVE_INFINITY, 1)).toBe("unlimited");
    expect(fixedText(Number.NaN, 1)).toBe("unknown");
  });

  it("never show a gap smaller than it is", () => {
    expect(plain(percentAtMost(4.41, 1))).toBe("4.5 %");
    expect(plain(percentAtMost(4.4, 1))).toBe("4.4 %");
    expect(plain(percentAtMost(0, 1))).toBe("0.0 %");
  });

  it("drop zeros at the end only behind the point", () => {
    expect(metric.number(20, 2)).toBe("20");
    expect(metric.number(0.25, 4)).toBe("0.25");
  });

  it("count with the right noun", () => {
    expect([countText(0, "order"), countText(1, "order"), countText(2, "copy", "copies")]).toEqual([
      "0 orders",
      "1 order",
      "2 copies",
    ]);
  });
});

describe("money", () => {
  // Minor units by ISO 4217.
  it.each([
    ["EUR", "1 234.50 EUR"],
    ["JPY", "1 235 JPY"],
    ["KWD", "1 234.500 KWD"],
    ["HUF", "1 234.50 HUF"],
  ])("in %s is written as %s", (currency, text) => {
    expect(plain(displayOf({ ...EUR, currency }, "2026-11-30T06:00").money(1234.5))).toBe(text);
  });
});

describe("masses and lengths", () => {
  it.each([
    [0.0451, "0.045 kg", "0.099 lb"],
    [1, "1.00 kg", "2.20 lb"],
    [9.0718474, "9.07 kg", "20.00 lb"],
    [250.06, "250.1 kg", "551.3 lb"],
  ])("%d kg is %s or %s", (massKg, kg, lb) => {
    expect(plain(metric.mass(massKg))).toBe(kg);
    expect(plain(imperial.mass(massKg))).toBe(lb);
  });

  it.each([
    [0.25, "0.25 mm", "0.0098 in"],
    [25.4, "25.4 mm", "1.000 in"],
    [2400, "2 400 mm", "94.488 in"],
  ])("%d mm is %s or %s", (lengthMm, mm, inches) => {
    expect(plain(metric.length(lengthMm))).toBe(mm);
    expect(plain(imperial.length(lengthMm))).toBe(inches);
  });
});

describe("times", () => {
  it("are local to the works, with the weekday", () => {
    expect(metric.dateTime(metric.minute("2026-11-30T05:00Z"))).toBe("Mon 30 Nov 06:00");
    expect(imperial.dateTime(imperial.minute("2026-11-30T05:00Z"))).toBe("Sun 29 Nov 23:00");
  });

  it("carry the year where it is not the year of the plan", () => {
    expect(metric.dateTime(metric.minute("2027-01-04T08:00"))).toBe("Mon 4 Jan 2027 08:00");
  });

  it("tell the two equal hours of the night on which clocks go back apart", () => {
    expect(metric.clock(metric.minute("2026-10-25T01:30Z"))).toBe("02:30 (+01:00)");
  });
});

import { describe, expect, test } from "vitest";
import { makeFormat } from "../../../renderer/format/format.ts";
import { BRITISH_RULES as RULES } from "../format-rules.ts";

describe("units", () => {
  test("are those of the rules, for showing and for reading", () => {
    const metric = makeFormat(RULES);
    const inch = makeFormat({ ...RULES, length: "in", mass: "lb" });
    expect(metric.lengthText(25.4)).toBe("25.4\u202fmm");
    expect(inch.lengthText(25.4)).toBe("1.000\u202fin");
    expect(metric.massText(12.5)).toBe("12.50\u202fkg");
    expect(inch.massText(0.453_592_37)).toBe("1.00\u202flb");
    expect(metric.readLengthMm("25.4")).toBe(25.4);
    expect(inch.readLengthMm("1")).toBe(25.4);
    expect(inch.readMassKg("1")).toBe(0.453_592_37);
  });

  test("written behind a number count more than the unit shown", () => {
    const inch = makeFormat({ ...RULES, length: "in", mass: "lb" });
    expect(inch.readLengthMm("10 mm")).toBe(10);
    expect(inch.readLengthMm('2"')).toBe(50.8);
    expect(makeFormat(RULES).readMassKg("1 lb")).toBe(0.453_592_37);
    expect(makeFormat(RULES).readLengthMm("1,5 mm")).toBe(1.5);
    expect(makeFormat(RULES).readLengthMm("wide")).toBeNull();
  });

  test("give the same value back when a field is opened and left", () => {
    const inch = makeFormat({ ...RULES, length: "in", mass: "lb", language: "de-DE" });
    for (const value of [0.4, 25.4, 812, 0.8, 1234.567]) {
      expect(inch.readLengthMm(inch.editedLength(value))).toBeCloseTo(value, 8);
      expect(inch.readMassKg(inch.editedMass(value))).toBeCloseTo(value, 8);
    }
  });
});

describe("dates", () => {
  test("are in the works' zone, wherever the screen is", () => {
    const format = makeFormat(RULES);
    expect(format.dateTime("2026-11-30T05:40:00Z")).toBe("Mon 30 Nov 06:40");
    expect(format.dateTime("2027-01-04T05:40:00Z")).toBe("Mon 4 Jan 2027 06:40");
    expect(format.editedDateTime("2026-11-30T05:40:00Z")).toBe("2026-11-30 06:40");
  });

  test("that no calendar has are shown as they are", () => {
    expect(makeFormat(RULES).dateTime("2026-02-30T08:00:00Z")).toBe("2026-02-30T08:00:00Z");
  });
});

test("areas and volumes are in cm, or in inches", () => {
  expect(makeFormat(RULES).volumeText(8000)).toBe("8\u202fcm³");
  expect(makeFormat(RULES).areaText(2400)).toBe("24\u202fcm²");
  const inches = makeFormat({ ...RULES, length: "in" });
  expect(inches.volumeText(25.4 ** 3)).toBe("1\u202fin³");
  expect(inches.areaText(2400)).toBe("3.72\u202fin²");
});

test("money has the digits of its currency", () => {
  expect(makeFormat(RULES).money(1234.5)).toBe("1,234.50\u202fEUR");
  expect(makeFormat({ ...RULES, currency: "JPY" }).money(1234.5)).toBe("1,235\u202fJPY");
});

test("a share is never shown smaller than it is", () => {
  expect(makeFormat(RULES).percentAtMost(4.41, 1)).toBe("4.5\u202f%");
  expect(makeFormat(RULES).percentAtMost(4.4, 1)).toBe("4.4\u202f%");
});

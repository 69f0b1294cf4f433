import { describe, expect, test } from "vitest";
import { dayColumn, readClock } from "../../../renderer/components/entry/time-columns.ts";
import { valueColumns } from "../../../renderer/components/entry/value-columns.ts";
import { type Format, type FormatRules, makeFormat } from "../../../renderer/format/format.ts";
import { BRITISH_RULES } from "../format-rules.ts";

interface Row {
  readonly value: number | null;
  readonly word: string;
}

const ROW: Row = { value: 10, word: "a" };

function format(some: Partial<FormatRules> = {}): () => Format {
  const made = makeFormat({ ...BRITISH_RULES, ...some });
  return () => made;
}

const NUMBER = {
  id: "value",
  title: "Pace",
  get: (row: Row) => row.value,
  set: (row: Row, value: number) => ({ ...row, value }),
};

describe("areas, volumes and flows", () => {
  test("are kept metric, and shown and read in inches where those are chosen", () => {
    const metric = valueColumns<Row>(format());
    const inch = valueColumns<Row>(format({ length: "in" }));
    const row = { ...ROW, value: 645.16 };
    expect([metric.area(NUMBER).text(row), metric.area(NUMBER).unit?.()]).toEqual(["645.16", "mm²"]);
    expect([inch.area(NUMBER).text(row), inch.area(NUMBER).unit?.()]).toEqual(["1", "in²"]);
    expect(inch.volume(NUMBER).put(ROW, "2")).toHaveProperty("value", 2 * 25.4 ** 3);
    expect(inch.flow(NUMBER).put(ROW, "1")).toHaveProperty("value", 2.54 ** 3);
    expect(inch.volume({ ...NUMBER, above: 0 }).put(ROW, "0")).toHaveProperty("unfit");
  });
});

describe("a column of numbers", () => {
  test("takes the least and refuses what is below, with its own title in the sentence", () => {
    const column = valueColumns<Row>(format()).number({ ...NUMBER, least: 2 });
    expect(column.put(ROW, "2")).toEqual({ ...ROW, value: 2 });
    expect(column.put(ROW, "1.9")).toEqual({ unfit: "Pace: write a number from 2 on." });
  });

  test("refuses 0 where the number must be above it, a text, and parts of what must be whole", () => {
    const make = valueColumns<Row>(format());
    expect(make.number({ ...NUMBER, above: 0 }).put(ROW, "0")).toHaveProperty("unfit");
    expect(make.number(NUMBER).put(ROW, "fast")).toHaveProperty("unfit");
    expect(make.number({ ...NUMBER, isWhole: true }).put(ROW, "1.5")).toHaveProperty("unfit");
    expect(make.number({ ...NUMBER, most: 100 }).put(ROW, "100.1")).toHaveProperty("unfit");
  });

  test("takes an empty text only where nothing may stand there", () => {
    const make = valueColumns<Row>(format());
    expect(make.number(NUMBER).put(ROW, "")).toHaveProperty("unfit");
    expect(make.number({ ...NUMBER, clear: (row) => ({ ...row, value: null }) }).put(ROW, "")).toEqual({
      ...ROW,
      value: null,
    });
  });

  test("of lengths and prices per mass follows the units shown, both ways", () => {
    const make = valueColumns<Row>(format({ length: "in", mass: "lb" }));
    expect(make.length(NUMBER).put(ROW, "1")).toEqual({ ...ROW, value: 25.4 });
    const price = make.perMass(NUMBER);
    // 10 per kg are 4.5359237 per lb: one pound is 0.45359237 kg (international agreement, 1959).
    expect(price.editText?.(ROW)).toBe("4.5359237");
    expect((price.put(ROW, "4.5359237") as Row).value).toBeCloseTo(10, 12);
    expect(price.unit?.()).toBe("EUR per lb");
  });
});

test("a column of choices takes values and labels, in any case, and names what there is", () => {
  const column = valueColumns<Row>(format()).choice({
    id: "word",
    title: "Word",
    choices: () => [
      { value: "a", label: "First" },
      { value: "b", label: "Second" },
    ],
    get: (row) => row.word,
    set: (row, word) => ({ ...row, word }),
  });
  expect(column.text(ROW)).toBe("First");
  expect(column.put(ROW, "second")).toEqual({ ...ROW, word: "b" });
  expect(column.put(ROW, "third")).toEqual({ unfit: "Word: choose one that exists: a, b." });
});

test("a time of day is read as people write it, and not beyond the end of the day", () => {
  const read = ["6", "6:00", "0600", "6.30", "24:00", "24:01", "25", "noon", "6:7"].map(readClock);
  expect(read).toEqual(["06:00", "06:00", "06:00", "06:30", "24:00", null, null, null, null]);
});

test("a day is read in the order of days and months that was chosen", () => {
  const column = dayColumn<Row>(format(), {
    id: "word",
    title: "From",
    get: (row) => row.word,
    set: (row, word) => ({ ...row, word }),
  });
  expect(column.put(ROW, "24.12.2026")).toEqual({ ...ROW, word: "2026-12-24" });
  expect(column.put(ROW, "2026-02-30")).toHaveProperty("unfit");
});

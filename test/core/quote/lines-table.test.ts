import { describe, expect, test } from "vitest";
import { readLinesTable, readQuantity, readWantedDate } from "../../../core/quote/lines-table.ts";

describe("a table of lines", () => {
  test("is read by the names of its columns, whatever their order and case; others are passed over", () => {
    const { lines, findings } = readLinesTable([
      ["Quantity", " PART ", "colour", "by", "late", "machine", "feedstock"],
      ["40", "clip", "red", "2026-12-04", "no", "", ""],
      ["6", "chair.stl", "", "2026-12-04T09:30", "yes", "G1", "petg"],
      ["2", "clip"],
    ]);
    expect(findings).toEqual([]);
    expect(lines).toEqual([
      { part: "clip", quantity: 40, by: "2026-12-04T16:00", allowLate: false },
      {
        part: "chair.stl",
        quantity: 6,
        by: "2026-12-04T09:30",
        allowLate: true,
        machineId: "G1",
        feedstockId: "petg",
      },
      { part: "clip", quantity: 2, by: null, allowLate: true },
    ]);
  });

  test("tells each wrong row with its number in the file, empty rows counted, and reads the others", () => {
    const { lines, findings } = readLinesTable([
      ["part", "quantity", "by", "late"],
      ["clip", "0", "2026-12-04", ""],
      ["", "", "", ""],
      ["", "3", "soon", "maybe"],
      ["clip", "3", "", ""],
    ]);
    expect(lines).toHaveLength(1);
    expect(findings.map(({ where }) => where)).toEqual([
      "row 2/quantity",
      "row 4/part",
      "row 4/by",
      "row 4/late",
    ]);
    expect(findings[0]!.sentence).toBe(
      'Row 2 of the table: "0" is no quantity; write a whole number from 1 to 10000000.',
    );
  });

  test.each([
    [[], "part and quantity"],
    [[["part", "number"]], "quantity"],
  ])("without the columns it needs is told so: %j", (cells, missing) => {
    const { lines, findings } = readLinesTable(cells);
    expect(lines).toEqual([]);
    expect(findings.map(({ sentence }) => sentence)[0]).toContain(`names no column for ${missing}`);
  });

  test("with no row below the first is told so", () => {
    expect(readLinesTable([["part", "quantity"], [""]]).findings[0]!.sentence).toContain("no row below");
  });
});

test.each([
  ["1", 1],
  [" 1 200 ", 1200],
  ["10000000", 10_000_000],
  ["10000001", null],
  ["0", null],
  ["-4", null],
  ["2.5", null],
  ["1e3", null],
  ["1 20", null],
  ["", null],
])("the quantity %j is %s", (text, value) => {
  expect(readQuantity(text)).toBe(value);
});

test.each([
  ["2026-12-04", "2026-12-04T16:00"],
  ["2026-12-04 09:30", "2026-12-04T09:30"],
  ["2026-12-04T09:30Z", "2026-12-04T09:30Z"],
  ["2026-02-30", null],
  ["04.12.2026", null],
  ["", null],
])("the wanted date %j is %s", (text, value) => {
  expect(readWantedDate(text)).toBe(value);
});

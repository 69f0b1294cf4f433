import { describe, expect, test } from "vitest";
import { readDemandTable } from "../../../core/purchase/demand-table.ts";

const HEAD = ["Due date", "Part", "Quantity", "Price per piece", "Late cost per day", "Remark"];

describe("past orders from a table", () => {
  test("are read by the names of its columns, whatever their order; other columns are passed over", () => {
    const cells = [
      ["Remark", "quantity", "PART ID", "due"],
      ["any", "40", "clip", "2026-11-30"],
    ];
    expect(readDemandTable(cells)).toEqual({
      rows: [{ dueOn: "2026-11-30", partId: "clip", quantity: 40 }],
      findings: [],
    });
  });

  test("take an ISO week as its Friday, a time of day as its date, and a decimal comma", () => {
    const cells = [
      HEAD,
      ["2026-W49", "clip", "1", "2,5", "30", ""],
      ["2026-11-30T16:00:00+01:00", "clip", "2", "", "", ""],
    ];
    expect(readDemandTable(cells).rows).toEqual([
      { dueOn: "2026-12-04", partId: "clip", quantity: 1, pricePerPiece: 2.5, lateCostPerDay: 30 },
      { dueOn: "2026-11-30", partId: "clip", quantity: 2 },
    ]);
  });

  test.each([
    ["a date that does not exist", ["2026-02-30", "clip", "1"]],
    ["a week that the year does not have", ["2027-W53", "clip", "1"]],
    ["no part", ["2026-11-30", " ", "1"]],
    ["a quantity of 0", ["2026-11-30", "clip", "0"]],
    ["half a copy", ["2026-11-30", "clip", "1.5"]],
    ["a negative price", ["2026-11-30", "clip", "1", "-2"]],
    ["a late cost that is no number", ["2026-11-30", "clip", "1", "2", "much"]],
    ["nothing at all", []],
  ])("leave out a row with %s and name it", (_, row) => {
    const { rows, findings } = readDemandTable([HEAD, ["2026-11-30", "clip", "1"], row]);
    expect(rows).toHaveLength(1);
    expect(findings).toHaveLength(1);
    expect(findings[0]?.sentence).toMatch(/^Row 3 of the table is left out: /);
  });

  test("say which columns are missing, and that there is nothing below the first row", () => {
    expect(readDemandTable([["part", "price"]]).findings[0]?.sentence).toContain("due and quantity");
    expect(readDemandTable([HEAD]).findings[0]?.code).toBe("no-history");
    expect(readDemandTable([]).findings[0]?.code).toBe("columns");
  });

  test("tell five bad rows and count the others", () => {
    const { findings } = readDemandTable([HEAD, ...Array.from({ length: 9 }, () => ["x", "clip", "1"])]);
    expect(findings).toHaveLength(6);
    expect(findings[5]?.sentence).toContain("4 more rows");
  });
});

import papa from "papaparse";
import { describe, expect, it } from "vitest";
import { csvFiles, csvText } from "../../../core/report/csv.ts";
import { aPlan } from "../../fixtures/a-plan.ts";
import { aWorks } from "../../fixtures/a-works.ts";
import { hostileWorks } from "../../fixtures/hostile-names.ts";

/** Rows as an independent reader sees them. */
function rowsOf(text: string): string[][] {
  const { data, errors } = papa.parse<string[]>(text, {
    delimiter: ",",
    newline: "\r\n",
    skipEmptyLines: true,
  });
  expect(errors).toEqual([]);
  return data;
}

function table(name: string): string[][] {
  const shop = aWorks();
  return rowsOf(csvFiles(shop, aPlan(shop)).find((file) => file.name === name)?.text ?? "");
}

describe("CSV text", () => {
  // RFC 4180 (Shafranovich 2005), section 2.
  it("quotes fields that hold commas, quotes and line breaks, doubles quotes, and ends lines by CRLF", () => {
    expect(csvText([["a,b", 'say "x"', "two\nlines", 1.5, null]])).toBe(
      '"a,b","say ""x""","two\nlines",1.5,\r\n',
    );
  });

  it.each(["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "  =1", "\uff1d1", "\u200b=1"])(
    "puts an apostrophe before text that a spreadsheet would run: %j",
    (text) => {
      expect(rowsOf(csvText([[text]]))).toEqual([[`'${text}`]]);
    },
  );

  it("leaves negative numbers numbers and harmless text alone", () => {
    expect(csvText([[-1.5, "O-17", "a=b"]])).toBe("-1.5,O-17,a=b\r\n");
  });

  it("writes out what turns the reading direction round", () => {
    expect(csvText([["x\u202egnp.exe", "\u2066=1"]])).toBe("x<U+202E>gnp.exe,<U+2066>=1\r\n");
  });

  it("writes numbers without the dust of binary fractions and leaves what is no number empty", () => {
    expect(csvText([[0.1 + 0.2, Number.NaN, Number.POSITIVE_INFINITY]])).toBe("0.3,,\r\n");
  });
});

describe("the tables of a plan", () => {
  it.each(["builds.csv", "orders.csv", "costs.csv", "tasks.csv", "feedstock.csv"])(
    "%s has as many fields in every row as in its head",
    (name) => {
      const rows = table(name);
      expect(rows.length).toBeGreaterThan(1);
      for (const row of rows) expect(row.length).toBe(rows[0]?.length);
    },
  );

  it("hold every build item, order, task and need", () => {
    const plan = aPlan();
    expect(table("builds.csv").length - 1).toBe(plan.builds.flatMap((build) => build.items).length);
    expect(table("orders.csv").length - 1).toBe(plan.orders.length);
    expect(table("tasks.csv").length - 1).toBe(plan.tasks.length);
    expect(table("feedstock.csv").length - 1).toBe(plan.feedstockNeeds.length);
  });

  it("costs.csv holds every line, and its amounts add up to the total to the cent", () => {
    const plan = aPlan();
    const amounts = table("costs.csv")
      .slice(1)
      .map((row) => Math.round(Number(row[1]) * 100));
    expect(amounts.length).toBe(
      plan.costLines.length + plan.builds.flatMap((build) => build.costLines).length,
    );
    expect(amounts.reduce((sum, cents) => sum + cents, 0)).toBe(Math.round(plan.cost.total * 100));
  });

  it("orders.csv gives the reason beside copies that have no place", () => {
    const row = table("orders.csv").find((cells) => cells[0] === "O-119");
    expect(row?.at(-2)).toBe("2");
    expect(
      table("orders.csv")
        .find((cells) => cells[0] === "O-120")
        ?.at(-3),
    ).toBe("320");
    expect(row?.at(-1)).toMatch(/^Must not be late: .*Would help: allowing it to be late/);
  });

  it("orders.csv says no reason twice", () => {
    const shop = aWorks();
    const plan = aPlan(shop);
    const [entry] = plan.unplanned;
    const sentence = entry?.reasons[0]?.sentence ?? "";
    const orders = plan.orders.map((order) =>
      order.orderId === entry?.orderId ? { ...order, why: [sentence, "More."] } : order,
    );
    const text = csvFiles(shop, { ...plan, orders }).find((file) => file.name === "orders.csv")?.text ?? "";
    const row = rowsOf(text).find((cells) => cells[0] === entry?.orderId);
    expect(row?.at(-1)).toBe(`${sentence} More.`);
  });

  it("come through names that are meant to do harm", () => {
    const shop = hostileWorks();
    for (const file of csvFiles(shop, aPlan(shop))) {
      for (const row of rowsOf(file.text)) {
        for (const cell of row) expect(cell).not.toMatch(/^[\s\p{Cf}]*[=+@]/u);
      }
    }
  });
});

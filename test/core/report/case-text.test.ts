import { beforeAll, describe, expect, test } from "vitest";
import { cashCsv } from "../../../core/report/case-cash.ts";
import { figureRows, rateText } from "../../../core/report/case-figures.ts";
import { caseText } from "../../../core/report/case-text.ts";
import { type CaseReport, caseView, wholeMoney } from "../../../core/report/case-view.ts";
import { aCaseReport, alike, caseOf, DEAR, GOOD, USELESS, withNames } from "../../fixtures/a-case-report.ts";
import { HOSTILE_NAMES } from "../../fixtures/hostile-names.ts";

let report: CaseReport;
let text: string;

beforeAll(async () => {
  report = await aCaseReport();
  text = plain(caseText(report));
});

function plain(words: string): string {
  return words.replaceAll("\u202f", " ").replaceAll("\u2212", "-");
}

function lineOf(label: string, within = text): string {
  const found = within.split("\n").find((line) => line.startsWith(label));
  if (found === undefined) throw new Error(`no line ${label}`);
  return found;
}

describe("a case as text", () => {
  test("says first what to do and on what condition", () => {
    const [name, works, , ...rest] = text.split("\n");
    expect([name, works]).toEqual(["A second machine", "Invented works"]);
    expect(rest.join(" ")).toMatch(/^Take Machine good \(invented\): over 5 years at 8 % it is worth/);
    expect(rest.slice(0, 4).join(" ")).toMatch(/demand/);
  });

  test("has every figure of every candidate in a table", () => {
    for (const { label } of figureRows(caseView(report), caseView(report).candidates)) {
      expect(lineOf(label.slice(0, 26)).trim().split(/ {2,}/).length).toBe(4);
    }
    expect(lineOf("Paid at the start")).toMatch(/21 500 +901 500 +21 500$/);
    expect(lineOf("Life, years")).toMatch(/5 +8 +5$/);
  });

  test("tells of a candidate that can make nothing, worth minus what is paid and kept", () => {
    expect(text.replaceAll(/\s+/g, " ")).toContain(
      "Leave Machine useless (invented): it can make nothing that is ordered",
    );
    const useless = report.study.candidates.find(({ candidate }) => candidate.id === "useless");
    expect(useless?.answer.answer.netPresentValue).toBeLessThan(-20_000);
    expect(text.replaceAll(/\s+/g, " ")).toContain("can make none of the parts that are ordered");
  });

  test("cash by year adds up to its sum", () => {
    const block = text.slice(text.indexOf("Cash by year"), text.indexOf("How the works runs"));
    const years = ["Start", "Year 1 ", "Year 2", "Year 3", "Year 4", "Year 5"].map((year) =>
      firstAmount(lineOf(year, block)),
    );
    const sum = firstAmount(lineOf("Sum", block));
    expect(Math.abs(years.reduce((all, cash) => all + cash, 0) - sum)).toBeLessThanOrEqual(3);
  });

  test("says what is replaced, how the machines are used, the best bundle, and what was not looked at", () => {
    expect(text).toMatch(/bought out [\d ]+ EUR less \(of\s[\d ]+ EUR\)/);
    expect(lineOf("Filament 1 and 1 more")).toMatch(/\d+ % +\d+ %/);
    expect(lineOf("New good")).toMatch(/- +\d+ % +- +-$/);
    expect(text).toContain("Best within the budget: A, worth");
    expect(text).toContain("No week was planned in full");
    for (const heading of ["What it rests on", "Not considered", "Cautions"])
      expect(text).toContain(`${heading}\n─`);
  });

  test("fits 100 columns and never says that something is safe", () => {
    for (const line of text.split("\n")) expect([...line].length).toBeLessThanOrEqual(100);
    expect(text).not.toMatch(/\bsafe(ly)?\b/i);
  });

  test("more candidates than fit beside each other stand in several tables", async () => {
    const many = await aCaseReport(caseOf(["a", "b", "c", "d", "e", "f", "g"].map((id) => alike(id))));
    const words = plain(caseText(many));
    expect(words.match(/^What it is worth$/gm)).toHaveLength(2);
    for (const line of words.split("\n")) expect([...line].length).toBeLessThanOrEqual(100);
  });

  test("an answer that is not whole says so, and one of nothing says that", () => {
    const rough = { ...report, study: { ...report.study, status: "rough" as const } };
    expect(caseText(rough)).toContain("This is a first answer from few scenarios and weeks");
    const none = {
      ...report.study,
      status: "stopped" as const,
      candidates: [],
      bundle: null,
      together: null,
      sentence: null,
    };
    const words = caseText({ ...report, study: none });
    expect(words).toContain("Nothing is answered");
    expect(words).not.toContain("What it is worth");
  });
});

function firstAmount(line: string): number {
  const [amount = ""] = line.slice(28).trim().split(/ {2,}/);
  return Number(amount.replaceAll(" ", ""));
}

describe("names that try to break out", () => {
  test("move no cursor, turn no reading direction round, and run in no spreadsheet", async () => {
    let next = 0;
    const hostile = withNames(() => HOSTILE_NAMES[next++ % HOSTILE_NAMES.length] ?? "");
    const bad = await aCaseReport(hostile.purchaseCase, hostile.shop);
    const words = caseText(bad);
    expect(words).not.toMatch(/(?!\n)\p{Cc}|[\u202e\u2066-\u2069]|\p{Cs}/u);
    for (const line of words.split("\n")) expect([...line].length).toBeLessThanOrEqual(100);
    expect(cashCsv(bad)).not.toMatch(/(^|,)"?=/m);
  });
});

describe("figures", () => {
  test("an internal rate that is not the only one is not shown as one", () => {
    expect(rateText({ kind: "not-unique", rates: [0.25, 4] })).toBe("not unique");
    expect(rateText({ kind: "none" })).toBe("none");
    expect(rateText({ kind: "unique", rate: 0.144888 })).toBe("14.5 %");
  });

  test("money stands in whole units", () => {
    expect(plain(wholeMoney("EUR")(-61_234.5))).toBe("-61 235 EUR");
  });
});

describe("cash as a table", () => {
  test("the rows of each candidate and year add up to its total, and totals to the last sum", () => {
    const [head = "", ...rows] = cashCsv(report).trim().split("\r\n");
    expect(head).toBe("candidate,candidate_name,row,year,cash_EUR");
    for (const { id, lifeYears } of [GOOD, DEAR, USELESS]) {
      const own = rows.map((row) => row.split(",")).filter(([candidate]) => candidate === id);
      const cash = (name: string, year: number): number =>
        Number(own.find(([, , row, at]) => row === name && Number(at) === year)?.[4]);
      let sum = 0;
      for (let year = 0; year <= lifeYears; year++) {
        const parts = own.filter(
          ([, , row = "", at]) => Number(at) === year && row !== "total" && row !== "sum_so_far",
        );
        const all = parts.reduce((added, [, , , , amount]) => added + Number(amount), 0);
        expect(all).toBeCloseTo(cash("total", year), 4);
        sum += cash("total", year);
      }
      expect(sum).toBeCloseTo(cash("sum_so_far", lifeYears), 4);
    }
  });
});

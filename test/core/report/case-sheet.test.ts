import { createHash } from "node:crypto";
import { beforeAll, describe, expect, test } from "vitest";
import { caseSheet } from "../../../core/report/case-sheet.ts";
import { figureRows } from "../../../core/report/case-figures.ts";
import { type CaseReport, caseView } from "../../../core/report/case-view.ts";
import { assumptionsOf, NOT_CONSIDERED } from "../../../core/purchase/purchase-words.ts";
import { aCaseReport, alike, caseOf, withNames } from "../../fixtures/a-case-report.ts";
import { HOSTILE_NAMES } from "../../fixtures/hostile-names.ts";

let report: CaseReport;
let sheet: string;

beforeAll(async () => {
  report = await aCaseReport();
  sheet = caseSheet(report);
});

/** Text as a reader sees it. */
function read(markup: string): string {
  return markup
    .replaceAll(/<style>[^]*?<\/style>/g, "")
    .replaceAll(/<[^>]*>/g, " ")
    .replaceAll("&#39;", "'")
    .replaceAll("&quot;", '"')
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&amp;", "&")
    .replaceAll(/\s+/g, " ");
}

function tags(markup: string): string[] {
  return [...new Set(markup.match(/<[a-z0-9]+/gi) ?? [])].toSorted();
}

describe("the sheet of a case", () => {
  test("needs nothing from outside, runs nothing, and admits only its own style", () => {
    expect(sheet).not.toMatch(/<script|<link|<img|@import|https?:|url\((?!#)| style=| on[a-z]+=/);
    const style = /<style>([^]*?)<\/style>/.exec(sheet)?.[1] ?? "";
    const hash = createHash("sha256").update(style).digest("base64");
    expect(sheet).toContain(`default-src &#39;none&#39;; style-src &#39;sha256-${hash}&#39;;`);
  });

  test("uses every id once, names only ids that exist, and gives each table a caption and each head its scope", () => {
    const ids = [...sheet.matchAll(/\bid="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, one, other] of sheet.matchAll(/aria-labelledby="(\S+) (\S+)"/g)) {
      expect(ids).toContain(one);
      expect(ids).toContain(other);
    }
    expect(sheet.match(/<table/g)?.length).toBe(sheet.match(/<caption/g)?.length);
    expect(sheet.match(/<h1/g)?.length).toBe(1);
    expect(sheet.match(/<th(?=[ >])(?![^>]*scope=)/g)).toBeNull();
  });

  test("says first what to do and on what condition", () => {
    const verdict = /<p class="verdict">([^]*?)<\/p>/.exec(sheet)?.[1] ?? "";
    expect(read(verdict).trim()).toBe(report.study.sentence?.replaceAll(/\s+/g, " "));
    expect(verdict).toMatch(/Take Machine good .* demand/);
  });

  test("has the table, three charts and the tornado, each with words for who does not see it", () => {
    const view = caseView(report);
    for (const { label, cells } of figureRows(view, view.candidates)) {
      expect(sheet).toContain(`<th scope="row">${label}</th>`);
      for (const cell of cells) expect(sheet).toContain(`>${cell}</td>`);
    }
    const drawings = sheet.match(/<svg class="chart"[^]*?<\/svg>/g) ?? [];
    expect(drawings.map((drawing) => /<title [^>]*>([^<]*)/.exec(drawing)?.[1])).toEqual([
      "Cash by year, added up",
      "Value over scenarios of demand",
      "Cost of a part against its mass",
      "What the value of A depends on",
    ]);
    for (const drawing of drawings) {
      const [, titleId, descId] = /aria-labelledby="(\S+) (\S+)"/.exec(drawing) ?? [];
      expect(drawing).toContain(`<title id="${titleId}">`);
      expect(read(/<desc id="[^"]*">([^<]*)/.exec(drawing)?.[1] ?? "").length).toBeGreaterThan(30);
      expect(drawing).toContain(`<desc id="${descId}">`);
      expect(drawing).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  test("draws cash to scale: a line that starts lower ends where its cash ends", () => {
    const path = /<path class="line line-0" d="([^"]*)"/.exec(sheet)?.[1] ?? "";
    const heights = path
      .split(/[ML]/)
      .slice(1)
      .map((point) => Number(point.split(" ")[1]));
    const sums =
      report.study.candidates[0]?.answer.flow.total.map((_, year, all) =>
        all.slice(0, year + 1).reduce((sum, cash) => sum + cash, 0),
      ) ?? [];
    expect(heights).toHaveLength(sums.length);
    const perPx = ((sums[1] ?? 0) - (sums[0] ?? 0)) / ((heights[0] ?? 0) - (heights[1] ?? 0));
    for (const [year, sum] of sums.entries())
      expect(
        Math.abs((heights[0] ?? 0) - (heights[year] ?? 0) - (sum - (sums[0] ?? 0)) / perPx),
      ).toBeLessThan(3);
  });

  test("says what it rests on, what nobody looked at, and cautions, and never that something is safe", () => {
    const words = read(sheet);
    for (const sentence of [...assumptionsOf(report.purchaseCase), ...NOT_CONSIDERED])
      expect(words).toContain(sentence);
    expect(words).toContain("qualified people");
    expect(words).not.toMatch(/\bsafe(ly)?\b/i);
  });

  test("shows six candidates at most and says that the others are elsewhere", async () => {
    const ids = ["a", "b", "c", "d", "e", "f", "g", "h"];
    const prices = caseOf(ids.map((id, place) => alike(id, { price: 20_000 + 1000 * place })));
    const many = caseSheet(await aCaseReport(prices));
    expect(many.match(/<path class="line line-\d"/g)).toHaveLength(6);
    expect(read(many)).toContain("2 candidates worth less: in case.txt.");
    expect(read(many)).not.toContain("G Machine g");
  });

  test("of a case that was stopped before anything was answered is still a sheet", () => {
    const study = {
      ...report.study,
      status: "stopped" as const,
      candidates: [],
      bundle: null,
      together: null,
      sentence: null,
    };
    const words = read(caseSheet({ ...report, study }));
    expect(words).toContain("Nothing is answered");
    expect(words).toContain("The work was stopped");
  });
});

describe("names that try to break out", () => {
  test("stay text in the sheet: no tag and no attribute more than with plain names", async () => {
    let next = 0;
    const hostile = withNames(() => HOSTILE_NAMES[next++ % HOSTILE_NAMES.length] ?? "");
    const plain = withNames((what) => what);
    const bad = caseSheet(await aCaseReport(hostile.purchaseCase, hostile.shop));
    const good = caseSheet(await aCaseReport(plain.purchaseCase, plain.shop));
    expect(tags(bad)).toEqual(tags(good));
    for (const trap of ["<script", "<img", "\u202e", "\u001b"]) expect(bad).not.toContain(trap);
  });
});

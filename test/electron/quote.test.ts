import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { QuoteAnswer } from "../../core/quote/quote-answer.ts";
import { minuteOf } from "../../core/shop/instants.ts";
import { type Quote, quoteSchema } from "../../core/shop/quote.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { readQuoteCall } from "../../electron/quote-call.ts";
import { aQuoteDesk } from "../fixtures/a-quote-desk.ts";
import { aQuote } from "../fixtures/a-quote.ts";
import { aPart, aShop } from "../fixtures/a-route.ts";
import { runHere } from "../fixtures/run-here.ts";

const FOLDER = mkdtempSync(join(tmpdir(), "hopper-quote-"));
const BODY = fileURLToPath(new URL("../../assets/bodies/sensor-bracket.stl", import.meta.url));
const SHOP = join(FOLDER, "a.shop.json");
const PLAN = join(FOLDER, "week.plan.json");
const FROM = minuteOf("2026-11-30T06:00", "Europe/Berlin");

const shop: Shop = aShop({
  parts: [aPart(), aPart({ id: "odd", name: "Odd", smallestFeatureMm: 0.01 })],
  quotes: [aQuote({ id: "Q-2026-0041" })],
});

function write(name: string, content: unknown): string {
  const path = join(FOLDER, name);
  writeFileSync(path, typeof content === "string" ? content : JSON.stringify(content));
  return path;
}

beforeAll(async () => {
  write("a.shop.json", shop);
  const { standingPlan } = await aQuoteDesk({ shop, request: { fromMin: FROM, days: 7 } });
  write("week.plan.json", standingPlan);
});
afterAll(() => rmSync(FOLDER, { recursive: true, force: true }));

const quote = (...words: string[]) =>
  runHere(["quote", SHOP, "--plan", PLAN, "--from", "2026-11-30T06:00", ...words]);

describe("a quote on the command line", () => {
  test("0: a part of the shop gets its price and a promised date against the plan", async () => {
    const { status, out, err } = await quote(
      "--part",
      "clip",
      "--quantity",
      "6",
      "--by",
      "2026-12-04",
      "--customer",
      "Invented",
    );
    expect([status, err]).toEqual([0, ""]);
    expect(out).toContain("Quote Q-2026-0042 for Invented");
    expect(out).toContain("6 copies of Clip");
    expect(out).toMatch(/Date to promise +Fri 4 Dec 16:00, kept with/);
  });

  test("a mesh file is a part with what was assumed of it; its quote, answer and both sheets are written", async () => {
    const dir = join(FOLDER, "out");
    const words = ["--part", BODY, "--quantity", "3", "--out", dir, "--internal"];
    const { status, out } = await quote(...words);
    expect(status).toBe(0);
    expect(out).toContain("Assumed: 3 copies");
    expect(readdirSync(dir).toSorted()).toEqual(["quote-internal.html", "quote.html", "quote.json"]);
    const sheet = readFileSync(join(dir, "quote.html"), "utf8");
    expect(sheet).toContain("sensor-bracket.stl");
    expect(sheet).not.toContain("drawn as its box");
    expect(readFileSync(join(dir, "quote-internal.html"), "utf8")).toContain("What stands behind it");
    const written = JSON.parse(readFileSync(join(dir, "quote.json"), "utf8")) as { quote: unknown };
    expect(quoteSchema.parse(written.quote)).toEqual(written.quote);
  });

  test("--json says the quote and all that stands behind it, and nothing else", async () => {
    const { status, out, err } = await quote("--part", "clip", "--quantity", "6", "--json");
    expect([status, err]).toEqual([0, ""]);
    const { quote: made, answer } = JSON.parse(out) as { quote: Quote; answer: QuoteAnswer };
    expect(made.lines[0]).toMatchObject({ id: "Q-2026-0042-1", partId: "clip", quantity: 6, wantedAt: null });
    expect([answer.stage, answer.isRough, answer.runs]).toEqual(["whole", false, 2000]);
  });

  test("a table gives several lines at once; its separators are guessed", async () => {
    const csv = write("lines.csv", "\uFEFFpart;quantity;by;late\r\nclip;6;2026-12-04;no\r\nclip;2;;\r\n");
    const { status, out } = await quote("--csv", csv, "--json");
    expect(status).toBe(0);
    const { quote: made } = JSON.parse(out) as { quote: Quote };
    expect(made.lines.map(({ quantity, allowLate }) => [quantity, allowLate])).toEqual([
      [6, false],
      [2, true],
    ]);
  });

  test("1: a wanted date that is not held, with what would hold it or that nothing would", async () => {
    const { status, out } = await quote("--part", "clip", "--quantity", "60", "--by", "2026-11-30T10:00");
    expect(status).toBe(1);
    expect(out).toMatch(/What would hold|Nothing that was tried would hold/);
  });
});

/** What is said of a plan that cannot be used. */
async function says(path: string): Promise<string> {
  const words = ["quote", SHOP, "--part", "clip", "--quantity", "1", "--plan", path];
  const { status, err } = await runHere(words);
  expect(status).toBe(2);
  return err;
}

describe("bad input is one clear sentence", () => {
  test.each([
    ["no part", [], "quote needs --part with --quantity, or --csv"],
    ["no quantity", ["--part", "clip"], "--part needs --quantity: how many copies"],
    [
      "quantity 0",
      ["--part", "clip", "--quantity", "0"],
      '--quantity takes a whole number from 1 to 10000000, not "0"',
    ],
    [
      "half a copy",
      ["--part", "clip", "--quantity", "1.5"],
      '--quantity takes a whole number from 1 to 10000000, not "1.5"',
    ],
    [
      "a date that is none",
      ["--part", "clip", "--quantity", "1", "--by", "friday"],
      '--by takes a date like 2026-12-04 or a time like 2026-12-04T12:00, not "friday"',
    ],
    [
      "internal alone",
      ["--part", "clip", "--quantity", "1", "--internal"],
      "--internal needs --out: it is written beside the customer's sheet",
    ],
  ])("2: %s", async (_what, words, sentence) => {
    const { status, out, err } = await quote(...words);
    expect([status, out]).toEqual([2, ""]);
    expect(err.split("\n")[0]).toBe(sentence);
  });

  test.each([
    [
      "a part that is neither in the shop nor a file",
      ["--part", "clop", "--quantity", "1"],
      'error: The shop has no part "clop", and there is no mesh file of that name. Name an id of the shop, or an STL or 3MF file.',
    ],
    [
      "a mesh file that is missing",
      ["--part", "gone.stl", "--quantity", "1"],
      "error: gone.stl: there is no such file. Check the name and the folder.",
    ],
    [
      "a table that is missing",
      ["--csv", "gone.csv"],
      "error: gone.csv: there is no such file. Check the name and the folder.",
    ],
  ])("2: %s", async (_what, words, sentence) => {
    const { status, out, err } = await quote(...words);
    expect([status, out, err]).toEqual([2, "", sentence]);
  });

  test("2: wrong rows of a table are told by their number, and nothing is quoted", async () => {
    const csv = write("wrong.csv", "part,quantity,by\nclip,6,\nclip,none,\n,2,soon\n");
    const { status, out, err } = await quote("--csv", csv);
    expect([status, out]).toEqual([2, ""]);
    expect(err.split("\n").map((line) => /Row \d/.exec(line)?.[0])).toEqual(["Row 3", "Row 4", "Row 4"]);
  });

  test("2: a plan that is none, or that of another shop", async () => {
    const other = { ...(JSON.parse(readFileSync(PLAN, "utf8")) as object), currency: "USD" };
    expect(await says(write("none.json", "{"))).toContain("this is no plan document");
    expect(await says(write("other.json", other))).toContain(
      "this is a plan of another shop. Plan this shop first.",
    );
    expect(await says("gone.json")).toContain("there is no such file");
  });

  test("1: a date in the past is answered with the earliest, and said", async () => {
    const { status, out } = await quote("--part", "clip", "--quantity", "1", "--by", "2026-11-01");
    expect(status).toBe(1);
    expect(out).toContain("The wanted date has passed");
  });

  test("1: a million copies have a price and no date, and the reason", async () => {
    const { status, out } = await quote("--part", "clip", "--quantity", "1000000");
    expect(status).toBe(1);
    expect(out).toMatch(/1000000 copies ordered/);
  });

  test("1: a part that fits nowhere has every reason once", async () => {
    const { status, out } = await quote("--part", "odd", "--quantity", "2");
    expect(status).toBe(1);
    expect(out).toContain("No price for all of it");
    expect(out.match(/^ +- smallest detail 0\.01 mm/gm)).toHaveLength(1);
  });
});

test("words are read as they are meant", () => {
  const call = readQuoteCall([
    "a.json",
    "--part",
    "clip",
    "--quantity",
    "1 200",
    "--by",
    "2026-12-04",
    "--firm",
    "--machine",
    "F1",
  ]);
  expect(call.line).toEqual({
    part: "clip",
    quantity: 1200,
    by: "2026-12-04T16:00",
    allowLate: false,
    machineId: "F1",
  });
  expect(call).toMatchObject({ seconds: 2, plan: null, csv: null, internal: false, outDir: null });
});

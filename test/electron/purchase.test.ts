import { execFileSync, spawn } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { CASE_SCHEMA, type PurchaseCase } from "../../core/shop/purchase-case.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { UsageError } from "../../electron/exit-status.ts";
import { type PurchaseCall, readPurchaseCall } from "../../electron/purchase-call.ts";
import { readCaseFile } from "../../electron/read-case-file.ts";
import { alike } from "../fixtures/a-case-report.ts";
import { aCase } from "../fixtures/a-case.ts";
import { aMachine, anOrder, aShop } from "../fixtures/a-route.ts";
import { runHere } from "../fixtures/run-here.ts";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const PROGRAM = join(ROOT, "dist", "command-line.js");
const FOLDER = mkdtempSync(join(tmpdir(), "hopper-purchase-"));
const DATA = join(FOLDER, "data");

beforeAll(() => {
  if (!existsSync(PROGRAM)) execFileSync("npm", ["run", "-s", "build"], { cwd: ROOT });
}, 60_000);

afterAll(() => rmSync(FOLDER, { recursive: true, force: true }));

function saved(name: string, content: string | object): string {
  const path = join(FOLDER, name);
  writeFileSync(path, typeof content === "string" ? content : JSON.stringify(content));
  return path;
}

function caseFile(name: string, changes: Partial<PurchaseCase> | object = {}): string {
  return saved(`${name}.case.json`, { schema: CASE_SCHEMA, ...aCase(), ...changes });
}

const shopFile = saved("plain.shop.json", aShop());

function one(changes: object): object {
  return { candidates: [{ ...alike("new"), ...changes }] };
}

function rate(discountPctPerYear: number): object {
  return { financing: { discountPctPerYear, taxPct: 0, depreciation: "none" } };
}

function call(words: readonly string[]): PurchaseCall {
  return readPurchaseCall([shopFile, "--case", caseFile("call"), ...words]);
}

async function extent(words: readonly string[]): Promise<(number | undefined)[]> {
  const { purchaseCase } = await readCaseFile(call(words), aShop());
  return [purchaseCase?.weeks, purchaseCase?.scenarios];
}

describe("the words of a call", () => {
  test.each([
    [[], "purchase needs one shop file"],
    [["a.json"], "purchase needs --case"],
    [["a.json", "b.json", "--case", "c"], "purchase needs one shop file"],
    [["a.json", "--case", "c", "--weeks", "0"], "--weeks takes a number from 1 to 520"],
    [["a.json", "--case", "c", "--weeks", "1.5"], "--weeks takes a whole number"],
    [["a.json", "--case", "c", "--scenarios", "1001"], "--scenarios takes a number from 1 to 1000"],
    [["a.json", "--case", "c", "--cheap"], "--cheap"],
  ])("%j does not fit: a sentence says why", (words, sentence) => {
    expect(() => readPurchaseCall(words)).toThrow(UsageError);
    expect(() => readPurchaseCall(words)).toThrow(sentence);
  });
});

describe("bad input: status 2, one clear sentence, nothing printed and nothing written", () => {
  test.each<[name: string, shop: Shop, changes: object, sentence: RegExp]>([
    [
      "no history",
      aShop({ orders: [] }),
      { demand: { kind: "orders" } },
      /the shop has no order that counts, so there is no history to draw weeks from; enter orders, take a file, or type the demand/,
    ],
    ["a negative price", aShop(), one({ price: -1 }), /candidates 1, price must not be negative/],
    ["a life of 0", aShop(), one({ lifeYears: 0 }), /candidates 1, lifeYears must be at least 1 year/],
    [
      "a rate of 100 %",
      aShop(),
      rate(100),
      /financing, discountPctPerYear must be below 100 % per year: 8 means 8 %/,
    ],
    ["a rate of -100 %", aShop(), rate(-100), /financing, discountPctPerYear must be above -100 %/],
    ["a rate below -100 %", aShop(), rate(-150), /financing, discountPctPerYear must be above -100 %/],
    ["no candidate", aShop(), { candidates: [] }, /nothing to buy or do is named; add a candidate/],
    [
      "a later schema",
      aShop(),
      { schema: 99 },
      /The file has schema 99, this version reads up to 1: update the program/,
    ],
    ["an earlier schema", aShop(), { schema: 0 }, /schema/],
    [
      "a machine that is not there",
      aShop(),
      one({ changes: [{ kind: "sell-machine", machineId: "X9", proceeds: 1 }] }),
      /there is no machine X9; name one that exists/,
    ],
  ])("%s", async (name, shop, changes, sentence) => {
    const folder = join(FOLDER, `out ${name}`);
    const shopPath = saved(`${name}.shop.json`, shop);
    const { status, out, err } = await runHere([
      "purchase",
      shopPath,
      "--case",
      caseFile(name, changes),
      "--out",
      folder,
      "--quiet",
    ]);
    expect([status, out, existsSync(folder)]).toEqual([2, "", false]);
    expect(err).toMatch(sentence);
    expect(err.split("\n").filter((line) => line.startsWith("error: "))).toHaveLength(1);
  });

  test.each([
    ["none.case.json", "there is no such file. Check the name and the folder."],
    ["empty.case.json", "The file is empty: choose a case file."],
    ["broken.case.json", "The file is not JSON: line 2, column 3, expected"],
  ])("%s", async (name, sentence) => {
    saved("empty.case.json", " ");
    saved("broken.case.json", '{ "schema": 1,\n  name');
    const { status, out, err } = await runHere(["purchase", shopFile, "--case", join(FOLDER, name)]);
    expect([status, out]).toEqual([2, ""]);
    expect(err).toContain(sentence);
  });

  test("a table without the columns that are needed", async () => {
    const table = saved("no-columns.csv", "when,what\n2026-11-30,clip\n");
    const words = ["purchase", shopFile, "--case", caseFile("columns"), "--demand", table, "--quiet"];
    const { status, err } = await runHere(words);
    expect(status).toBe(2);
    expect(err).toContain(
      "there is no order in the file of the past; choose another file or type the demand",
    );
    const loud = await runHere(words.slice(0, -1));
    expect(loud.err).toContain(
      `${table}: The first row of the table names no column for due, part and quantity; add it.`,
    );
  });
});

describe("the case of a call", () => {
  test("may stand in the shop file, by its id", async () => {
    const shop = aShop({ cases: [aCase({ id: "C-7", name: "Within" })] });
    const { purchaseCase } = await readCaseFile(readPurchaseCall([shopFile, "--case", "C-7"]), shop);
    expect(purchaseCase?.name).toBe("Within");
  });

  test("takes past orders from a CSV file, with semicolons and a byte order mark as well", async () => {
    for (const separator of [",", ";"]) {
      const rows = [
        ["due", "part", "quantity"],
        ["2026-11-30", "clip", "12"],
        ["2026-W50", "clip", "8"],
      ];
      const table = saved(
        `past${separator}.csv`,
        `\uFEFF${rows.map((row) => row.join(separator)).join("\r\n")}\r\n\r\n`,
      );
      const { purchaseCase } = await readCaseFile(call(["--demand", table]), aShop());
      expect(purchaseCase?.demand).toEqual({
        kind: "rows",
        rows: [
          { dueOn: "2026-11-30", partId: "clip", quantity: 12 },
          { dueOn: "2026-12-11", partId: "clip", quantity: 8 },
        ],
      });
    }
  });

  test("has as many weeks and scenarios as the words say, few where it is to be quick", async () => {
    expect(await extent([])).toEqual([4, 2]);
    expect(await extent(["--weeks", "9", "--scenarios", "3"])).toEqual([9, 3]);
    expect(await extent(["--quick"])).toEqual([26, 4]);
    expect(await extent(["--quick", "--weeks", "9"])).toEqual([9, 4]);
  });
});

describe("a case that is worked out", () => {
  const tiny = aMachine({ id: "tiny", name: "Tiny", envelopeMm: { x: 20, y: 20, z: 20 } });
  const candidates = [
    alike("more"),
    alike("useless", { name: "Useless machine", changes: [{ kind: "add-machine", machine: tiny }] }),
  ];
  const shop = saved("worked.shop.json", aShop({ orders: [anOrder()] }));
  const worked = caseFile("worked", { candidates, weeks: 4, scenarios: 2 });

  test("is told as text, and a candidate that can make nothing is worth minus what is paid for it", async () => {
    const { status, out, err } = await run(["purchase", shop, "--case", worked, "--quick", "--weeks", "3"]);
    expect(status).toBe(0);
    expect(err).toContain("planning the weeks");
    expect(err).toContain(
      "can make none of the parts that are ordered, so it is worth minus what is paid for it",
    );
    const words = out.replaceAll(/\s+/g, " ");
    expect(words).toContain(
      "Leave Useless machine: it can make nothing that is ordered, so over 5 years at 8 % it loses",
    );
    expect(words).toContain("This is a first answer from few scenarios and weeks");
  });

  test("asked again it is the same answer, as plain data and in four files", async () => {
    const folder = join(FOLDER, "week", "out");
    const first = await run(["purchase", shop, "--case", worked, "--json"]);
    const again = await run(["purchase", shop, "--case", worked, "--json", "--out", folder]);
    expect([first.status, again.status]).toEqual([0, 0]);
    expect(again.out).toBe(first.out);
    const { study, gap, case: asked } = JSON.parse(first.out);
    expect(asked.id).toBe("second-machine");
    expect(study.candidates.map((own: { candidate: { id: string } }) => own.candidate.id)).toEqual([
      "more",
      "useless",
    ]);
    expect(study.candidates[0].demand).not.toBeNull();
    expect(study.bundle.worked).toHaveLength(3);
    expect(gap.sentence).toContain("planned in full");
    expect(readdirSync(folder).toSorted()).toEqual(["case.html", "case.json", "case.txt", "cash.csv"]);
    expect(readFileSync(join(folder, "case.json"), "utf8").trim()).toBe(first.out.trim());
    expect(readdirSync(join(DATA, "purchase-results")).length).toBeGreaterThan(4);
  }, 30_000);

  test("3: stopped by Ctrl+C, with what is answered until then", async () => {
    const long = caseFile("long", { candidates, weeks: 520, scenarios: 1000 });
    const words = ["purchase", shop, "--case", long];
    const { status, out } = await run(words, "First rough answer");
    expect(status).toBe(3);
    expect(out.replaceAll(/\s+/g, " ")).toContain("The work was stopped");
  }, 30_000);
});

interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line; with `stopAt`, sends what Ctrl+C sends as soon as standard error shows that text. */
function run(words: readonly string[], stopAt?: string): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const env = { ...process.env, HOPPER_AND_SPOOL_DATA: DATA };
    const child = spawn(process.execPath, [PROGRAM, ...words], { cwd: ROOT, env });
    let out = "";
    let err = "";
    let isStopped = false;
    child.stdout.on("data", (data) => (out += data));
    child.stderr.on("data", (data) => {
      err += data;
      if (stopAt === undefined || isStopped || !err.includes(stopAt)) return;
      isStopped = true;
      child.kill("SIGINT");
    });
    child.on("error", reject);
    child.on("close", (status) => resolve({ status, out, err }));
  });
}

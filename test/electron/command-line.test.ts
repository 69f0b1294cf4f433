import { execFileSync, spawn } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { open } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from "vitest";
import { type PlanDocument, planSchema } from "../../core/plan/plan-document.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { UsageError } from "../../electron/exit-status.ts";
import { readPlanCall } from "../../electron/plan-call.ts";
import { aCalendar, aMachine, anOrder, aPart, aShop } from "../fixtures/a-route.ts";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const PROGRAM = join(ROOT, "dist", "command-line.js");
const FOLDER = mkdtempSync(join(tmpdir(), "hopper-"));
const FROM = ["--from", "2026-11-30"];

beforeAll(() => {
  if (!existsSync(PROGRAM)) execFileSync("npm", ["run", "-s", "build"], { cwd: ROOT });
}, 60_000);

afterAll(() => rmSync(FOLDER, { recursive: true, force: true }));

describe.concurrent("exit status", () => {
  test("0: everything planned and in time; the summary says so on standard output", async () => {
    const { status, out, err } = await plan(aShop());
    expect([status, err.match(/error|warning/)]).toEqual([0, null]);
    expect(out).toContain("Every order is planned and in time.");
    expect(out).toContain("O-1 × 10");
  });

  test("1: planned, but late", async () => {
    const { status, out } = await plan(aShop({ orders: [anOrder({ dueAt: "2026-11-30T06:30:00+01:00" })] }));
    expect(status).toBe(1);
    expect(out).toMatch(/1 order is late\.[^]*! O-1 .* late by 2 h 24 min/);
  });

  test("2: no command, an unknown one, and no file", async () => {
    for (const words of [[], ["plam"], ["plan"], ["plan", "a.json", "b.json"]]) {
      const { status, out, err } = await run(words);
      expect([status, out]).toEqual([2, ""]);
      expect(err).toContain("Usage:");
    }
  });

  test("3: stopped by Ctrl+C during the search, with the best plan kept and the progress shown", async () => {
    const words = ["plan", "assets/demo.shop.json", ...FROM, "--seconds", "25"];
    const { status, err, out: text } = await run(words, { stopAt: "searching" });
    expect(status).toBe(3);
    expect(err).toMatch(/\d\.\d s {2}searching {2}cost \d+\.\d\d EUR( {2}at most \d+\.\d % left to gain)?\n/);
    expect(text).toContain("The search was stopped before its time; this is the best plan it had.");
    expect(text).toMatch(/B1 {2}Bench 1 +\w{3} \d+ \w{3}/);
  });
});

describe("Ctrl+C before there is anything to keep", () => {
  test("3: one sentence on standard error, nothing on standard output", async () => {
    const path = join(FOLDER, "pipe.shop.json");
    execFileSync("mkfifo", [path]);
    const child = spawn(process.execPath, [PROGRAM, "plan", path], { cwd: ROOT });
    let text = "";
    let err = "";
    child.stdout.on("data", (data) => (text += data));
    const heard = new Promise<void>((resolve) =>
      child.stderr.on("data", (data) => {
        err += data;
        resolve();
      }),
    );
    const ended = new Promise<number | null>((resolve) => child.on("close", resolve));
    // A pipe opens for writing as soon as the program reads from it.
    const pipe = await open(path, "w");
    child.kill("SIGINT");
    await heard;
    // Node ends a process only when no read of a file is under way any more.
    await pipe.close();
    expect([await ended, text, err]).toEqual([
      3,
      "",
      "Stopped at once: nothing more is planned or written.\n",
    ]);
  });

  test("a second one ends the program while a pipe that nobody fills holds up its end", async () => {
    const path = join(FOLDER, "silent.shop.json");
    execFileSync("mkfifo", [path]);
    const child = spawn(process.execPath, [PROGRAM, "plan", path], { cwd: ROOT });
    onTestFinished(() => void child.kill("SIGKILL"));
    const heard = new Promise<void>((resolve) => child.stderr.once("data", () => resolve()));
    const ended = new Promise<unknown>((resolve) =>
      child.on("close", (status, signal) => resolve(status ?? signal)),
    );
    const pipe = await open(path, "w");
    // Time for the read to begin; where it has not, the first Ctrl+C ends the program already.
    await setTimeout(500);
    child.kill("SIGINT");
    await heard;
    await setTimeout(100);
    child.kill("SIGINT");
    expect([3, "SIGINT"]).toContain(await ended);
    await pipe.close();
  });
});

describe.concurrent("flags", () => {
  test("--gap ends the search as soon as so little is left to gain, and the text says so", async () => {
    const flags = ["--seconds", "40", "--gap", "80", "--out", folderOf("gap")];
    const { out: text, err } = await plan(aShop({ orders: [anOrder({ quantity: 60 })] }), flags);
    expect(err).toContain("good enough as asked");
    const sentence = "The search ended as soon as at most 80 % was left to gain, as asked for.";
    expect(text).toContain(sentence);
    expect(readFileSync(join(folderOf("gap"), "week.html"), "utf8")).toContain(sentence);
    const document = planSchema.parse(
      JSON.parse(readFileSync(join(folderOf("gap"), "week.plan.json"), "utf8")),
    );
    expect(document.enoughPct).toBe(80);
    expect(document.elapsed.totalS).toBeLessThan(40);
  });

  test("without --gap a plan says nothing of it", () => {
    expect(readPlanCall(["any.json"]).gapPct).toBeNull();
    expect(readPlanCall(["any.json", "--gap", "2.5"]).gapPct).toBe(2.5);
  });

  test("--json prints a plan document and nothing else, findings and progress go to standard error", async () => {
    const {
      status,
      out: text,
      err,
    } = await plan(aShop({ parts: [aPart({ id: "clip" }), aPart({ id: "x" })] }), ["--json"]);
    expect(status).toBe(0);
    expect(planSchema.safeParse(JSON.parse(text)).error).toBeUndefined();
    expect(err).not.toContain("searching");
  });

  test("--quiet prints nothing", async () => {
    const { status, out: text, err } = await plan(aShop(), ["--quiet"]);
    expect([status, text, err]).toEqual([0, "", ""]);
  });

  test("--quiet still tells errors, but no warnings", async () => {
    const orders = [
      anOrder(),
      anOrder({ id: "O-2", partId: "nope" }),
      anOrder({ id: "O-3", pricePerPiece: 0 }),
    ];
    const { status, out: text, err } = await plan(aShop({ orders }), ["--quiet"]);
    expect([status, text]).toEqual([1, ""]);
    expect(err.trim()).toMatch(/^error: Order O-2: there is no part nope[^\n]*$/);
  });

  test("--out with no builds: no calendar, which needs an event, and not one of an earlier plan", async () => {
    const folder = folderOf("empty");
    await plan(aShop(), ["--out", folder]);
    const { status, out: text } = await plan(aShop({ orders: [] }), ["--out", folder]);
    expect([status, readdirSync(folder).includes("week.ics")]).toEqual([0, false]);
    expect(text).toContain("week.html, builds.csv");
    expect(text.trimEnd()).toMatch(/\(no week\.ics: the plan has no builds\)$/);
  });

  test("--out writes every report, in a folder that it makes", async () => {
    const folder = folderOf("a/b");
    const { status, out: text } = await plan(aShop(), ["--out", folder]);
    expect(status).toBe(0);
    const files = [
      "builds.csv",
      "costs.csv",
      "feedstock.csv",
      "orders.csv",
      "tasks.csv",
      "week.html",
      "week.ics",
      "week.plan.json",
      "week.txt",
    ];
    expect(readdirSync(folder).toSorted()).toEqual(files);
    for (const name of files) expect(text).toContain(name);
    expect(
      planSchema.safeParse(JSON.parse(readFileSync(join(folder, "week.plan.json"), "utf8"))).success,
    ).toBe(true);
    expect(readFileSync(join(folder, "week.txt"), "utf8")).toContain("Operators' tasks");
  });

  test("--out to a place where no folder can be made: one sentence, before any planning", async () => {
    const file = saved("in-the-way", "{}");
    const under = await plan(aShop(), ["--out", join(file, "week")]);
    expect([under.status, under.out]).toEqual([2, ""]);
    expect(firstLine(under.err)).toBe(
      `the reports cannot be written to ${join(file, "week")}: a part of that path is a file`,
    );
    const same = await plan(aShop(), ["--out", file]);
    expect([same.status, firstLine(same.err)]).toEqual([
      2,
      `the reports cannot be written to ${file}: there is a file of that name`,
    ]);
  });

  test.each([
    [["--days", "0"], '--days takes a number from 1 to 183, not "0"'],
    [["--days", "184"], '--days takes a number from 1 to 183, not "184"'],
    [["--days", "1.5"], '--days takes a whole number, not "1.5"'],
    [["--seconds", "soon"], '--seconds takes a number from 0 to 3600, not "soon"'],
    [["--seconds", "1e999"], '--seconds takes a number from 0 to 3600, not "1e999"'],
    [["--seed", "-1x"], "--seed"],
    [["--from", "30.11.2026"], "--from takes a date like 2026-11-30"],
    [["--from", "2026-02-30"], "--from takes a date like 2026-11-30"],
    [["--from", "2026-11-30T06:00 or so"], "--from takes a date like 2026-11-30"],
    [["--fast"], "--fast"],
    [["--out"], "--out"],
    [["--gap", "100"], "--gap takes a number from 0 to 99"],
    [["--gap", "-1"], "--gap"],
  ])("%j does not fit: a sentence says why", (flags, sentence) => {
    const read = () => readPlanCall(["any.json", ...flags]);
    expect(read).toThrow(UsageError);
    expect(read).toThrow(sentence);
  });

  test("what does not fit is the first line on standard error, before the usage; status 2", async () => {
    const { status, out: text, err } = await run(["plan", "any.json", "--from", "2026-02-30"]);
    expect([status, text]).toEqual([2, ""]);
    expect(firstLine(err)).toContain(
      '--from takes a date like 2026-11-30 or a time like 2026-11-30T06:00, not "',
    );
    expect(err).toContain("\nUsage:");
    expect(err).not.toContain("    at ");
  });
});

describe.concurrent("other commands", () => {
  const orders = [anOrder({ partId: "nope" }), anOrder({ id: "O-2", pricePerPiece: 0 })];

  test("check counts errors and warnings, one of each in the singular", async () => {
    const { status, out: text } = await run(["check", saved("odd", JSON.stringify(aShop({ orders })))]);
    expect([status, text]).toEqual([2, expect.stringMatching(/^1 error, 1 warning in /)]);
  });

  test("routes tells errors, and writes in the units and currency of the shop", async () => {
    const shop = aShop({ orders, currency: "JPY", display: { length: "in", mass: "lb" } });
    const { status, out: text, err } = await run(["routes", saved("inch", JSON.stringify(shop))]);
    expect(status).toBe(0);
    expect(err.trim()).toMatch(/^error: Order O-1: there is no part nope[^\n]*$/);
    expect(text).toMatch(/\(clip\) {2}\d\.\d+\u202fin x /);
    expect(text).toMatch(/layer 0\.\d+\u202fin, .+\u202flb a copy/);
    expect(text).toMatch(/ h, \d+\u202fJPY a copy/);
  });
});

describe.concurrent("a file from which nothing can be planned: status 2, a sentence for each finding, no output", () => {
  test.each<[name: string, text: string, sentence: string]>([
    ["empty", " \n", "error: The file is empty: choose a shop file, or start from the demo shop."],
    ["no JSON", '{ "schema": 1,\n  name', "error: The file is not JSON: line 2, column 3, expected"],
    ["JSON, but no record", "[1, 2]", "error: The file is JSON but no shop"],
    ["of the future", JSON.stringify({ ...aShop(), schema: 99 }), "error: "],
    ["wrong schema", JSON.stringify({ ...aShop(), costing: 5 }), "error: costing "],
    [
      "no machines",
      JSON.stringify(aShop({ machines: [] })),
      "error: There are no machines: add at least one",
    ],
    [
      "no such time zone",
      JSON.stringify(aShop({ timeZone: "Nowhere/Else" })),
      "error: Time zone Nowhere/Else",
    ],
  ])("%s", async (name, text, sentence) => {
    const { status, out: printed, err } = await run(["plan", saved(name, text), ...FROM]);
    expect([status, printed]).toEqual([2, ""]);
    expect(err.trim().split("\n")).toEqual([expect.stringContaining(sentence)]);
  });

  test("no such file, and a folder", async () => {
    for (const [path, what] of [
      [join(FOLDER, "none.json"), "there is no such file"],
      [FOLDER, "this is a folder"],
    ] as const) {
      const { status, err } = await run(["plan", path]);
      expect([status, err]).toEqual([2, expect.stringContaining(`error: ${path}: ${what}`)]);
    }
  });
});

describe.concurrent("an entry that cannot be used: one sentence, the rest is planned, nothing is lost", () => {
  const good = anOrder();
  const bad = (change: Parameters<typeof anOrder>[0]): Shop =>
    aShop({ orders: [good, anOrder({ id: "O-2", ...change })] });

  test.each<[name: string, shop: Shop, sentence: string]>([
    ["unknown part", bad({ partId: "nope" }), "error: Order O-2: there is no part nope"],
    ["unknown machine of a pin", bad({ pinned: { machineId: "F9" } }), "error: Order O-2: "],
    ["id used twice", bad({ id: "O-1", quantity: 3 }), "error: Order O-1: 2 entries have this id"],
    ["due before release", bad({ dueAt: "2026-11-01T06:00" }), "error: Order O-2: it is due at"],
    ["no such day", bad({ dueAt: "2026-02-30T06:00" }), "error: Order O-2: "],
  ])("%s", async (_, shop, sentence) => {
    const { status, document, err } = await planned(shop);
    expect(status).toBe(1);
    expect(err.trim().split("\n")).toEqual([expect.stringContaining(sentence)]);
    expect(copiesIn(document, "O-1").planned).toBe(10);
    expectNothingLost(shop, document);
    expect(document.unplanned.every(({ reasons }) => reasons.length > 0)).toBe(true);
  });

  test("quantities that are no number of copies: zero, negative, broken, too large to hold, a word, nothing", async () => {
    const quantities = ["0", "-4", "1.5", "1e999", '"many"', "null"];
    const orders = quantities.map((_, index) => anOrder({ id: `Q-${index}`, quantity: 7000 + index }));
    const text = JSON.stringify(aShop({ orders: [good, ...orders] })).replaceAll(
      /"quantity":700(\d)/g,
      (_, index) => `"quantity":${quantities[Number(index)]}`,
    );
    const { status, document, err } = await planned(text);
    expect(status).toBe(1);
    expect(err.trim().split("\n")).toEqual(
      orders.map(({ id }) => expect.stringContaining(`error: Order ${id}: quantity must be`)),
    );
    expect(copiesIn(document, "O-1").planned).toBe(10);
    for (const { id } of orders) {
      const entry = document.unplanned.find(({ orderId }) => orderId === id);
      expect([entry?.copies, entry?.reasons.map(({ code }) => code)], id).toEqual([
        0,
        ["set-aside", "quantity-unreadable"],
      ]);
    }
  });

  test.each<[name: string, machine: Partial<Shop["machines"][number]>, field: string]>([
    ["zero", { accelerationMmPerS2: 0 }, "accelerationMmPerS2"],
    ["negative", { maxSpeedMmPerS: -5 }, "maxSpeedMmPerS"],
  ])("a machine with a number that is %s is left out; the other one makes all", async (_, change, field) => {
    const shop = aShop({ machines: [aMachine(), aMachine({ id: "F2", name: "Filament 2", ...change })] });
    const { status, document, err } = await planned(shop);
    expect(status).toBe(0);
    expect(err.trim()).toMatch(new RegExp(`^error: Machine F2: ${field} [^\n]*$`));
    expect(new Set(document.builds.map(({ machineId }) => machineId))).toEqual(new Set(["F1"]));
    expectNothingLost(shop, document);
  });
});

describe.concurrent("a works that cannot do everything: the rest is planned, nothing is lost", () => {
  test("no orders", async () => {
    const { status, document, err } = await planned(aShop({ orders: [] }));
    expect([status, document.builds, document.cost.total]).toEqual([0, [], 0]);
    expect(err.trim()).toBe("warning: There are no orders: nothing is left to plan; add order lines.");
  });

  test("a part that fits nowhere is unplanned, with the reason of each machine", async () => {
    const boxMm = { x: 3000, y: 400, z: 400 };
    const measures = { volumeMm3: 1e8, areaMm2: 1e7, boxMm };
    const mast = aPart({ id: "mast", geometry: { kind: "measures", measures } });
    const shop = aShop({
      parts: [aPart(), mast],
      orders: [anOrder(), anOrder({ id: "O-2", partId: "mast" })],
    });
    const { status, document } = await planned(shop);
    expect(status).toBe(1);
    expect([copiesIn(document, "O-1").planned, copiesIn(document, "O-2").unplanned]).toEqual([10, 10]);
    expect(document.unplanned[0]?.reasons[0]?.sentence).toContain("too large");
    expectNothingLost(shop, document);
  });

  test.each<[name: string, calendar: ReturnType<typeof aCalendar>]>([
    ["no shift at all", aCalendar({ shifts: [] })],
    [
      "no operator in any shift",
      aCalendar({ shifts: [{ days: [1], start: "06:00", end: "14:00", operators: 0 }] }),
    ],
  ])("%s", async (_, calendar) => {
    const shop = aShop({ calendars: [calendar] });
    const { status, document, err } = await planned(shop);
    expect(status).toBe(1);
    expect(err.trim()).toMatch(/^error: Calendar day: no staffed time at all[^\n]*$/);
    expect(copiesIn(document, "O-1").unplanned).toBe(10);
    expectNothingLost(shop, document);
  });

  test("closed for the whole plan and the year after: unplanned with a reason", async () => {
    const closures = [{ from: "2026-11-30", to: "2028-12-31", reason: "moving" }];
    const shop = aShop({ calendars: [aCalendar({ closures })] });
    const { status, document } = await planned(shop);
    expect(status).toBe(1);
    expect(document.unplanned[0]?.reasons[0]?.sentence).toContain("no staffed time at all");
    expectNothingLost(shop, document);
  });

  test("100 000 copies: what fits is planned, the rest is named, the other order is in time, within seconds", async () => {
    const shop = aShop({ orders: [anOrder(), anOrder({ id: "O-2", quantity: 100_000 })] });
    const startedMs = performance.now();
    const { status, document, err } = await planned(shop, "1");
    expect(performance.now() - startedMs).toBeLessThan(15_000);
    expect(status).toBe(1);
    expect(err.trim()).toMatch(/^warning: Order O-2: 100000 copies are ordered[^\n]*$/);
    expect(copiesIn(document, "O-1").planned).toBe(10);
    expect(copiesIn(document, "O-2").unplanned).toBeGreaterThan(90_000);
    expectNothingLost(shop, document);
  });

  test("an order due in the hour that the clocks skip is due an hour later on the clock, and in time", async () => {
    const dueAt = "2026-03-29T02:30";
    const shop = aShop({ orders: [anOrder({ releaseAt: "2026-03-23T06:00", dueAt })] });
    const { status, document, err } = await planned(shop, "0.2", "2026-03-23");
    expect(status).toBe(0);
    expect(err.trim()).toMatch(/^warning: Order O-1: dueAt 2026-03-29T02:30 is skipped[^\n]*$/);
    expect(document.orders[0]?.dueAt).toBe("2026-03-29T03:30:00+02:00");
    expectNothingLost(shop, document);
  });
});

interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line; with `stopAt`, sends what Ctrl+C sends as soon as standard error shows that text. */
function run(words: readonly string[], { stopAt }: { stopAt?: string } = {}): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [PROGRAM, ...words], { cwd: ROOT });
    let text = "";
    let err = "";
    let isStopped = false;
    child.stdout.on("data", (data) => (text += data));
    child.stderr.on("data", (data) => {
      err += data;
      if (isStopped || stopAt === undefined || !err.includes(stopAt)) return;
      isStopped = true;
      child.kill("SIGINT");
    });
    child.on("error", reject);
    child.on("close", (status) => resolve({ status, out: text, err }));
  });
}

let files = 0;

function saved(name: string, text: string): string {
  const path = join(FOLDER, `${(files += 1)}-${name.replaceAll(/\W/g, "-")}.shop.json`);
  writeFileSync(path, text);
  return path;
}

function folderOf(name: string): string {
  return join(FOLDER, "out", name);
}

function plan(shop: Shop, flags: readonly string[] = []): Promise<Ended> {
  return run(["plan", saved("works", JSON.stringify(shop)), ...FROM, "--seconds", "0.2", ...flags]);
}

async function planned(
  shop: Shop | string,
  seconds = "0.2",
  from = "2026-11-30",
): Promise<Ended & { readonly document: PlanDocument }> {
  const path = saved("works", typeof shop === "string" ? shop : JSON.stringify(shop));
  const ended = await run(["plan", path, "--from", from, "--seconds", seconds, "--json"]);
  if (ended.out === "") throw new Error(`no plan was printed: ${ended.err}`);
  return { ...ended, document: planSchema.parse(JSON.parse(ended.out)) };
}

function firstLine(text: string): string {
  return text.split("\n")[0] ?? "";
}

function copiesIn(document: PlanDocument, orderId: string) {
  const sum = (items: readonly { readonly orderId: string; readonly copies: number }[]): number =>
    items.reduce((copies, item) => copies + (item.orderId === orderId ? item.copies : 0), 0);
  return {
    planned: sum(document.builds.flatMap(({ items }) => items)),
    boughtOut: sum(document.boughtOut),
    unplanned: sum(document.unplanned),
  };
}

/** Copies ordered, over all entries of one id, are those in builds, bought out and without a place. */
function expectNothingLost(shop: Shop, document: PlanDocument): void {
  const ordered = new Map<string, number>();
  for (const { id, quantity } of shop.orders) ordered.set(id, (ordered.get(id) ?? 0) + quantity);
  for (const [id, quantity] of ordered) {
    const { planned: made, boughtOut, unplanned } = copiesIn(document, id);
    expect(made + boughtOut + unplanned, id).toBe(quantity);
  }
}

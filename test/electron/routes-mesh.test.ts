import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { aMachine, aShop } from "../fixtures/a-route.ts";
import { runHere } from "../fixtures/run-here.ts";
import { binaryStl, boxSoup } from "../fixtures/stl-bytes.ts";

const FOLDER = mkdtempSync(join(tmpdir(), "hopper-routes-"));

afterAll(() => rmSync(FOLDER, { recursive: true, force: true }));

function saved(name: string, content: string | Uint8Array): string {
  const path = join(FOLDER, name);
  writeFileSync(path, content);
  return path;
}

const shop = saved("my.shop.json", JSON.stringify(aShop()));
const box = saved("box.stl", binaryStl(boxSoup([20, 30, 40])));
const mast = saved("mast.stl", binaryStl(boxSoup([40, 40, 4000])));

describe("routes of a mesh file", () => {
  test("tell what is assumed, a route for each feedstock, the ways to stand by cost, and the cheapest", async () => {
    const { status, out, err } = await runHere(["routes", shop, "--part", box]);
    expect([status, err]).toEqual([0, ""]);
    expect(out.replaceAll("\n", " ")).toContain("Assumed: 1 copy, 2 walls, 20 % infill, 4 solid layers");
    expect(out).toMatch(/^ {4}\+ nozzle .*, . (up|down).* a copy$/m);
    expect(out).toMatch(/ways to stand: . (up|down) [\d.]+\u202fEUR, then /);
    expect(out).toMatch(/\nCheapest: Filament 1, nozzle /);
  });

  test("rank the ways to stand, the cheapest first", async () => {
    const { out } = await runHere(["routes", shop, "--part", box]);
    const line = /ways to stand: (.*)/.exec(out)?.[1] ?? "";
    const costs = [...line.matchAll(/([\d.]+)\u202fEUR/g)].map(([, cost]) => Number(cost));
    expect(costs.length).toBe(6);
    expect(costs).toEqual(costs.toSorted((a, b) => a - b));
  });

  test("for more copies cost less a copy", async () => {
    expect(await costFor("6")).toBeLessThan(await costFor("1"));
  });

  test("--unit says what the file does not: in inches it is too large, with the reason", async () => {
    const { status, out } = await runHere(["routes", shop, "--part", box, "--unit", "in"]);
    expect(status).toBe(0);
    expect(out).toContain("too large: ");
    expect(out).toContain("It cannot be made there.");
  });

  test("a file that cannot be used: one sentence and status 2", async () => {
    const broken = saved("broken.stl", "nothing");
    const open = saved("open.stl", binaryStl(boxSoup([20, 30, 40]).slice(1)));
    for (const path of [join(FOLDER, "none.stl"), broken, open]) {
      const { status, out, err } = await runHere(["routes", shop, "--part", path]);
      expect([status, out]).toEqual([2, ""]);
      expect(err).toMatch(/^error: [^\n]+$/);
    }
  });

  test.each([
    [["--part", "nope"], 'the shop has no part "nope", and there is no mesh file of that name'],
    [["--machine", "F9"], 'the shop has no machine "F9"'],
    [["--quantity", "0"], '--quantity takes a whole number from 1 to 100000, not "0"'],
    [["--quantity", "many"], '--quantity takes a whole number from 1 to 100000, not "many"'],
    [["--profile"], "--profile needs --part"],
    [["--unit", "ell"], "--unit takes"],
    [["--svg", " ", "--part", "clip"], "--svg needs the name"],
  ])("%j do not fit: a sentence says why", async (flags, sentence) => {
    const { status, out, err } = await runHere(["routes", shop, ...flags]);
    expect([status, out]).toEqual([2, ""]);
    expect(err.split("\n")[0]).toContain(sentence);
  });
});

async function costFor(quantity: string): Promise<number> {
  const { out } = await runHere(["routes", shop, "--part", box, "--quantity", quantity]);
  return Number(/Cheapest: .*?([\d.]+)\u202fEUR a copy/.exec(out)?.[1]);
}

describe("routes --profile", () => {
  test("prints the layers of the cheapest way, in 80 columns", async () => {
    const { status, out } = await runHere(["routes", shop, "--part", box, "--profile"]);
    expect(status).toBe(0);
    const plot = out.slice(out.indexOf("Layer time over the height")).split("\n");
    expect(plot.filter((line) => line.includes(" mm|")).length).toBeGreaterThan(10);
    for (const line of plot) expect([...line].length, line).toBeLessThanOrEqual(80);
    expect(out).toMatch(/A layer takes [\d.]+ s to [\d.]+ s\./);
  });

  test("--svg draws it too, for a part of the shop as for a file", async () => {
    for (const part of [box, "clip"]) {
      const svg = join(FOLDER, "profile.svg");
      const { status, out } = await runHere(["routes", shop, "--part", part, "--svg", svg]);
      expect([status, out.trim().split("\n").at(-1)]).toEqual([0, `Drawn in ${svg}`]);
      expect(readFileSync(svg, "utf8")).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
      rmSync(svg);
    }
  });

  test("--machine takes that machine and no other", async () => {
    const two = aShop({
      machines: [aMachine(), aMachine({ id: "F2", name: "Filament 2", maxSpeedMmPerS: 20 })],
    });
    const path = saved("two.shop.json", JSON.stringify(two));
    const { out } = await runHere(["routes", path, "--part", "clip", "--machine", "F2", "--profile"]);
    expect(out).toMatch(/: .* on Filament 2$/m);
    expect(out).not.toContain("Filament 1");
  });

  test("a place where the drawing cannot be written: one sentence, status 2", async () => {
    const svg = join(FOLDER, "no", "where.svg");
    const { status, err } = await runHere(["routes", shop, "--part", box, "--svg", svg]);
    expect([status, err.split("\n")[0]]).toEqual([2, expect.stringContaining(`${svg} could not be written`)]);
  });

  test("without a route there is nothing to draw: status 1", async () => {
    const { status, out } = await runHere(["routes", shop, "--part", mast, "--profile"]);
    expect([status, out]).toEqual([1, expect.stringContaining("It cannot be made there.")]);
  });
});

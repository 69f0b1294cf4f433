import { execFileSync } from "node:child_process";
import {
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { runHere } from "../fixtures/run-here.ts";
import { asciiStl, binaryStl, boxSoup } from "../fixtures/stl-bytes.ts";

const FOLDER = mkdtempSync(join(tmpdir(), "hopper-measure-"));
const NARROW = /\u202f/g;

afterAll(() => rmSync(FOLDER, { recursive: true, force: true }));

function saved(name: string, content: string | Uint8Array): string {
  const path = join(FOLDER, name);
  writeFileSync(path, content);
  return path;
}

const box = saved("box.stl", binaryStl(boxSoup([20, 30, 40])));

async function measure(...words: string[]) {
  const { status, out, err } = await runHere(["measure", ...words]);
  return { status, out: out.replace(NARROW, " "), err };
}

describe("measure", () => {
  test("tells size, volume, surface, whether it is closed, and each direction up", async () => {
    const { status, out, err } = await measure(box);
    expect([status, err]).toEqual([0, ""]);
    expect(out).toContain("box.stl (0.7 kB, unit millimeter assumed)");
    expect(out).toContain("size       20.00 x 30.00 x 40.00 mm");
    expect(out).toContain("volume     24.000 cm³");
    expect(out).toContain("surface    52.00 cm²");
    expect(out).toContain("centroid   10.00, 15.00, 20.00 mm");
    expect(out).toContain("closed     yes");
    expect(out).toContain("12 triangles in 1 shell");
    expect(out).toMatch(/^ {3}z +40\.00 +0\.0 +0\.00$/m);
    expect(out).toMatch(/^ {2}-x +20\.00 +0\.0 +0\.00$/m);
  });

  test("fits 80 columns", async () => {
    const large = saved("large.stl", binaryStl(boxSoup([2400, 1100, 600])));
    const { out } = await measure(large);
    for (const line of out.split("\n").filter((each) => !each.includes(FOLDER))) {
      expect([...line].length, line).toBeLessThanOrEqual(80);
    }
  });

  test.each([
    ["cm", "200.00 x 300.00 x 400.00 mm", "unit centimeter"],
    ["in", "508.00 x 762.00 x 1 016.00 mm", "unit inch"],
    ["micron", "0.02 x 0.03 x 0.04 mm", "unit micron"],
  ])("--unit %s is taken for a file without one", async (unit, size, said) => {
    const { out } = await measure("--unit", unit, box);
    expect(out).toContain(size);
    expect(out).toContain(`${said})`);
  });

  test("--json gives the same as data, an unusable file with its findings", async () => {
    const { status, out } = await measure("--json", box, join(FOLDER, "none.stl"));
    const [good, bad] = JSON.parse(out);
    expect(status).toBe(2);
    expect(good).toMatchObject({ unit: "millimeter", unitIsGuess: true, findings: [] });
    expect(good.measures).toMatchObject({ volumeMm3: 24_000, areaMm2: 5200, closed: true, openEdges: 0 });
    expect(good.standings).toHaveLength(6);
    expect(good.standings[0]).toEqual({ up: "z", heightMm: 40, overhangAreaMm2: 0, supportVolumeMm3: 0 });
    expect(bad).toMatchObject({ measures: null, standings: [], findings: [{ severity: "error" }] });
  });

  test("an open body is measured, with an error that tells at how many edges and that the volume cannot be trusted", async () => {
    const open = saved("open.stl", binaryStl(boxSoup([20, 30, 40]).slice(1)));
    const { status, out, err } = await measure(open);
    expect(status).toBe(2);
    expect(out).toContain("closed     no, at 3 edges: the volume cannot be trusted");
    expect(err).toMatch(/^error: .*3 edges .*cannot be trusted/);
  });
});

describe("measure names what cannot be used in one sentence, status 2, and measures the others", () => {
  test.each<[name: string, path: () => string, sentence: RegExp]>([
    ["no such file", () => join(FOLDER, "none.stl"), /there is no such file/],
    ["a folder", () => FOLDER, /this is a folder/],
    ["a pipe that nobody fills", () => pipe("pipe.stl"), /a pipe or a device/],
    ["an empty file", () => saved("empty.stl", ""), /empty/],
    ["a text", () => saved("text.stl", "to do: everything"), /not a body in STL or 3MF/],
    [
      "a picture renamed",
      () => saved("p.stl", Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)),
      /PNG/,
    ],
    ["100 bytes that claim 2 GB", () => saved("claim.stl", claimOf(40_000_000)), /./],
    ["a torn 3MF", () => saved("torn.3mf", Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0, 0, 0)), /./],
    ["a solid without triangles", () => saved("none-in.stl", asciiStl({ nothing: [] })), /no triangle/],
    ["coordinates of 1e30", () => saved("far.stl", binaryStl(boxSoup([1e30, 1, 1]))), /./],
  ])("%s", async (_, path, sentence) => {
    const { status, out, err } = await measure(path(), box);
    expect(status).toBe(2);
    expect(err.split("\n").filter((line) => line.startsWith("error: "))).toEqual([
      expect.stringMatching(sentence),
    ]);
    expect(out).toContain("volume     24.000 cm³");
    expect(err).not.toContain("    at ");
  });

  test("a file beyond the limit is not even read", async () => {
    const path = saved("huge.stl", "");
    truncateSync(path, 3 * 2 ** 30);
    const { status, err } = await measure(path);
    expect([status, err]).toEqual([2, expect.stringContaining("the file is larger than 500 MB")]);
    rmSync(path);
  });

  test.each([
    [[], "measure needs a mesh file"],
    [["--unit", "furlong", "a.stl"], '--unit takes um, mm, cm, in, ft, m or the whole word, not "furlong"'],
    [["--fast", "a.stl"], "--fast"],
    [["--shop", "a.json", "b.stl"], "measure --shop takes one shop file and nothing else"],
  ])("%j do not fit: a sentence, then the usage", async (words, sentence) => {
    const { status, out, err } = await measure(...words);
    expect([status, out]).toEqual([2, ""]);
    expect(err.split("\n")[0]).toContain(sentence);
    expect(err).toContain("\nUsage:");
  });
});

function pipe(name: string): string {
  const path = join(FOLDER, name);
  execFileSync("mkfifo", [path]);
  return path;
}

function claimOf(triangles: number): Uint8Array {
  const bytes = new Uint8Array(100);
  new DataView(bytes.buffer).setUint32(80, triangles, true);
  return bytes;
}

test("files are only read: nothing is written beside them", () => {
  expect(readdirSync(FOLDER).filter((name) => !/\.(stl|3mf)$/.test(name))).toEqual([]);
  expect([...readFileSync(box)]).toEqual([...binaryStl(boxSoup([20, 30, 40]))]);
  expect(statSync(box).size).toBe(684);
});

import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { measuresOfBody } from "../../core/estimate/part-measures.ts";
import { readBody } from "../../core/geometry/read-body.ts";
import type { Part } from "../../core/shop/part.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { sha256 } from "../../electron/store/sha256.ts";
import { anOrder, aPart, aShop } from "../fixtures/a-route.ts";
import { runHere } from "../fixtures/run-here.ts";
import { binaryStl, boxSoup } from "../fixtures/stl-bytes.ts";

const FOLDER = mkdtempSync(join(tmpdir(), "hopper-shop-"));

afterAll(() => rmSync(FOLDER, { recursive: true, force: true }));

const small = binaryStl(boxSoup([20, 30, 40]));
const tall = binaryStl(boxSoup([20, 30, 44]));

function meshPart(bytes: Uint8Array, file = "box.stl"): Part {
  const { mesh } = readBody(bytes, { fileName: file, unit: "millimeter" });
  if (!mesh) throw new Error("no mesh");
  const measures = measuresOfBody(mesh);
  return aPart({ geometry: { kind: "mesh", file, sha256: sha256(bytes), unit: "millimeter", measures } });
}

let works = 0;

/** A works in a folder of its own whose one part was measured from the small box; the file beside it may be another by now. */
function saved(fileNow: Uint8Array | null, part: Part = meshPart(small)): { path: string; shop: Shop } {
  const folder = join(FOLDER, `works-${(works += 1)}`);
  mkdirSync(folder);
  if (fileNow) writeFileSync(join(folder, "box.stl"), fileNow);
  const shop = aShop({ parts: [part], orders: [anOrder()] });
  const path = join(folder, "my.shop.json");
  writeFileSync(path, JSON.stringify(shop));
  return { path, shop };
}

describe("check", () => {
  test("says nothing of a mesh file that is as it was measured", async () => {
    const { status, err } = await runHere(["check", saved(small).path]);
    expect([status, err]).toEqual([0, ""]);
  });

  test.each<[name: string, now: Uint8Array | null, sentence: string]>([
    ["changed", tall, "has changed since it was measured"],
    ["gone", null, "is not there"],
  ])("warns of one that is %s, and the stored measures are used", async (_, now, sentence) => {
    const { status, out, err } = await runHere(["check", saved(now).path]);
    expect([status, out]).toEqual([0, expect.stringMatching(/^0 errors, 1 warning/)]);
    expect(err).toMatch(/^warning: Part \S+: its mesh file box\.stl/);
    expect(err).toContain(sentence);
    expect(err).toContain("the stored measures are used");
  });

  test.each(["../secret.stl", "/etc/hostname"])(
    "does not read %s, which is outside the shop's folder",
    async (file) => {
      writeFileSync(join(FOLDER, "secret.stl"), small);
      const { status, err } = await runHere(["check", saved(null, meshPart(small, file)).path]);
      expect([status, err]).toEqual([
        0,
        expect.stringContaining("outside the shop's folder and is not read"),
      ]);
    },
  );

  test("a folder where the mesh should be cannot be read", async () => {
    const { path } = saved(null);
    mkdirSync(join(path, "..", "box.stl"));
    const { err } = await runHere(["check", path]);
    expect(err).toContain("its mesh file box.stl cannot be read");
  });
});

describe("measure --shop", () => {
  test("writes new measures of a changed file, tells what changed, and keeps the shop as it was beside it", async () => {
    const { path, shop } = saved(tall);
    const before = readFileSync(path, "utf8");
    const { status, out } = await runHere(["measure", "--shop", path]);
    expect(status).toBe(0);
    expect(out).toContain(
      "20.00 x 30.00 x 40.00 mm is now 20.00 x 30.00 x 44.00 mm, 24.000 cm³ is now 26.400 cm³",
    );
    expect(out).toContain("1 part has a mesh file, 1 changed.");
    const names = readdirSync(join(path, "..")).toSorted();
    expect(names).toEqual(["box.stl", "my.shop.json", "my.shop.json.bak"]);
    expect(readFileSync(`${path}.bak`, "utf8")).toBe(before);
    const after = JSON.parse(readFileSync(path, "utf8")) as Shop;
    expect(after).toEqual({ ...shop, parts: [meshPart(tall)] });
    expect((await runHere(["check", path])).err).toBe("");
  });

  test("writes nothing where nothing has changed", async () => {
    const { path } = saved(small);
    const before = readFileSync(path, "utf8");
    const { status, out } = await runHere(["measure", "--shop", path]);
    expect([status, out]).toEqual([0, "1 part has a mesh file, 0 changed."]);
    expect(readFileSync(path, "utf8")).toBe(before);
    expect(readdirSync(join(path, ".."))).toHaveLength(2);
  });

  test("a part measured for the directions that it names alone counts as unchanged too", async () => {
    const orientations = ["+z"];
    const { mesh } = readBody(small, { fileName: "box.stl", unit: "millimeter" });
    const measures = measuresOfBody(mesh!, { orientations });
    const part = meshPart(small);
    const { path } = saved(small, { ...part, orientations, geometry: { ...part.geometry, measures } });
    expect((await runHere(["measure", "--shop", path])).out).toContain("0 changed");
  });

  test("keeps what the program does not read in the document", async () => {
    const { path } = saved(tall);
    const document = JSON.parse(readFileSync(path, "utf8"));
    document.orders.push({ id: "O-9", quantity: "many" });
    writeFileSync(path, JSON.stringify(document));
    await runHere(["measure", "--shop", path]);
    expect(JSON.parse(readFileSync(path, "utf8")).orders).toContainEqual({ id: "O-9", quantity: "many" });
  });

  test("a file with a byte order mark and an entry that is nothing at all is written all the same", async () => {
    const { path, shop } = saved(tall);
    writeFileSync(path, `\uFEFF${JSON.stringify({ ...shop, parts: [null, ...shop.parts] })}`);
    const { out } = await runHere(["measure", "--shop", path]);
    expect(out).toContain("1 part has a mesh file, 1 changed.");
    expect(JSON.parse(readFileSync(path, "utf8")).parts).toEqual([null, meshPart(tall)]);
  });

  test("a second time, keeps the first backup too", async () => {
    const { path } = saved(tall);
    await runHere(["measure", "--shop", path]);
    writeFileSync(join(path, "..", "box.stl"), small);
    await runHere(["measure", "--shop", path]);
    expect(readdirSync(join(path, "..")).filter((name) => name.endsWith(".bak"))).toHaveLength(2);
  });

  test.each<[name: string, now: Uint8Array | null]>([
    ["gone", null],
    ["open", binaryStl(boxSoup([20, 30, 44]).slice(1))],
    ["no mesh", new TextEncoder().encode("not yet drawn")],
  ])("a file that is %s: one error, status 2, the measures stay", async (_, now) => {
    const { path } = saved(now);
    const before = readFileSync(path, "utf8");
    const { status, out, err } = await runHere(["measure", "--shop", path]);
    expect([status, out]).toEqual([2, "1 part has a mesh file, 0 changed."]);
    expect(err.split("\n").filter((line) => line.startsWith("error: "))).toHaveLength(1);
    expect(readFileSync(path, "utf8")).toBe(before);
  });

  test("a shop file that is not there: one sentence, status 2", async () => {
    const { status, err } = await runHere(["measure", "--shop", join(FOLDER, "none.json")]);
    expect([status, err]).toEqual([2, expect.stringContaining("there is no such file")]);
  });
});

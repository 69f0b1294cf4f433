import { createHash } from "node:crypto";
import { readdirSync, readFileSync, statSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { BODIES } from "../../assets/demo/bodies/all-bodies.ts";
import { PARTS } from "../../assets/demo/parts.ts";
import { withBody } from "../../assets/demo/with-body.ts";
import { bodyFindings } from "../../core/geometry/body-findings.ts";
import { measureBody } from "../../core/geometry/measure.ts";
import { readBody } from "../../core/geometry/read-body.ts";
import { shopSchema } from "../../core/shop/shop.ts";

const FOLDER = new URL("../../assets/bodies/", import.meta.url);
const files = readdirSync(FOLDER);
const shop = shopSchema.parse(
  JSON.parse(readFileSync(new URL("../../assets/demo.shop.json", import.meta.url), "utf8")),
);

function contentOf(file: string): Uint8Array {
  return new Uint8Array(readFileSync(new URL(file, FOLDER)));
}

function measured(bytes: Uint8Array, file: string) {
  const reading = readBody(bytes, { fileName: file, unit: file.endsWith(".stl") ? "millimeter" : null });
  if (!reading.mesh) throw new Error(reading.findings[0]?.sentence ?? file);
  return { reading, body: measureBody(reading.mesh) };
}

describe("the mesh files of the demo shop", () => {
  test("are small: each below 70 kB, all together below 1.5 MB", () => {
    const sizes = files.map((file) => statSync(new URL(file, FOLDER)).size);
    expect(Math.max(...sizes)).toBeLessThan(70_000);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(1_500_000);
  });

  test("are one for each part, named by it, and the file that was measured", () => {
    expect(files.map((file) => file.replace(/\.\w+$/, "")).toSorted()).toEqual(
      shop.parts.map(({ id }) => id).toSorted(),
    );
    for (const { id, geometry } of shop.parts) {
      if (geometry.kind !== "mesh") throw new Error(`${id} has no mesh`);
      const digest = createHash("sha256")
        .update(contentOf(geometry.file.replace("bodies/", "")))
        .digest("hex");
      expect(digest, id).toBe(geometry.sha256);
    }
  });

  test("are what their script makes, within rounding", () => {
    expect(BODIES.map(({ file }) => file).toSorted()).toEqual(files.toSorted());
    for (const { file, bytes } of BODIES) {
      const made = measured(bytes(), file).body;
      const kept = measured(contentOf(file), file).body;
      expect(made.triangles, file).toBe(kept.triangles);
      expect(Math.abs(made.volumeMm3 / kept.volumeMm3 - 1), file).toBeLessThan(1e-6);
      expect(Math.abs(made.areaMm2 / kept.areaMm2 - 1), file).toBeLessThan(1e-6);
    }
  });

  test.each(files)("%s is closed, in its own unit, and nothing is odd about it", (file) => {
    const { reading, body } = measured(contentOf(file), file);
    const odd = [...reading.findings, ...bodyFindings(body, file)];
    expect(odd.map(({ code }) => code)).toEqual(file === "pipe-saddle.3mf" ? ["several-pieces"] : []);
    expect([body.closed, body.inverted, body.degenerateTriangles]).toEqual([true, false, 0]);
  });

  test("three are 3MF: one in inches, one built twice of one mesh", () => {
    const threeMf = files.filter((file) => file.endsWith(".3mf"));
    expect(threeMf).toHaveLength(3);
    expect(measured(contentOf("fixture-plate.3mf"), "fixture-plate.3mf").reading.unit).toBe("inch");
    const { reading, body } = measured(contentOf("pipe-saddle.3mf"), "pipe-saddle.3mf");
    expect(new Set(reading.bodies.map(({ triangles }) => triangles)).size).toBe(1);
    expect(reading.bodies).toHaveLength(2);
    expect(body.boxMm.max.y - body.boxMm.min.y).toBeCloseTo(80, 6);
  });

  test.each(["clip", "handle", "pipe-saddle", "boat-mould-half"])(
    "%s has the measures that are in the shop",
    (id) => {
      const plan = PARTS.find((part) => part.id === id);
      if (!plan) throw new Error(id);
      const part = shop.parts.find((each) => each.id === id);
      expect(JSON.parse(JSON.stringify(withBody(plan).geometry))).toEqual(part?.geometry);
    },
  );
});

import { describe, expect, test } from "vitest";
import { measureBody } from "../../../core/geometry/measure.ts";
import { readGood, refusal, warningsOf } from "../../fixtures/a-reading.ts";
import { binaryStl, boxSoup } from "../../fixtures/stl-bytes.ts";

const BOX = boxSoup([2, 3, 4]);

const withCoordinate = (value: number): Uint8Array =>
  binaryStl([...BOX, [value, 0, 0, 1, 0, 0, 0, 1, 0], ...BOX]);

describe("a binary STL", () => {
  test("of a box gives 8 welded corners, 12 triangles, and its volume", () => {
    const { bodies, mesh, unit, findings } = readGood(binaryStl(BOX));
    expect(mesh.cornersMm.length / 3).toBe(8);
    expect(bodies).toHaveLength(1);
    expect(bodies[0]).toMatchObject({ name: "part", triangles: 12 });
    expect(measureBody(mesh)).toMatchObject({ volumeMm3: 24, areaMm2: 52, closed: true });
    expect({ unit, findings }).toEqual({ unit: "millimeter", findings: [] });
  });

  test("is known by its size even when it begins with solid", () => {
    expect(measureBody(readGood(binaryStl(BOX, { header: "solid 002" })).mesh).volumeMm3).toBe(24);
  });

  test("is known by its size even when it begins as a picture does", () => {
    expect(readGood(binaryStl(BOX, { header: "BM" })).mesh.triangles).toHaveLength(36);
  });

  test("with bytes after its last triangle is read, with a warning", () => {
    expect(warningsOf(binaryStl(BOX, { trailing: 77 }))).toEqual(["bytes-after-end"]);
  });

  test("with one byte too few is refused, and told how many it announces", () => {
    expect(refusal(binaryStl(BOX).slice(0, -1))).toMatch(/^cut-short \| .* 12 triangles.*684 bytes.*683/);
  });

  test("that claims 2 GB in 100 bytes is refused before memory is taken", () => {
    const bytes = binaryStl([], { count: 42_949_672, trailing: 16 });
    expect(bytes).toHaveLength(100);
    expect(refusal(bytes)).toMatch(/^cut-short /);
  });

  test("that begins with solid and was cut is still told to be a cut binary one", () => {
    expect(refusal(binaryStl(BOX, { header: "solid" }).slice(0, 400))).toMatch(/^cut-short .* 12 triangles/);
  });

  test("without triangles is refused", () => {
    expect(refusal(binaryStl([]))).toMatch(/^no-triangles /);
  });

  test("that starts at an odd place of a larger buffer reads the same", () => {
    const bytes = binaryStl(BOX);
    const larger = new Uint8Array(bytes.length + 7);
    larger.set(bytes, 3);
    expect(readGood(larger.subarray(3, 3 + bytes.length)).mesh).toEqual(readGood(bytes).mesh);
  });
});

describe("coordinates", () => {
  test.each([NaN, Infinity, -Infinity, 1e30, 1e9])(
    "of %s are refused with the triangle's number",
    (value) => {
      expect(refusal(withCoordinate(value))).toMatch(/^absurd-coordinates .* triangle 13:/);
    },
  );

  test("just below the absurd are read", () => {
    expect(readGood(withCoordinate(9.9e8)).mesh.triangles).toHaveLength(25 * 3);
  });

  test("that are absurd in many triangles name the first six", () => {
    const bad = Array.from({ length: 9 }, () => [NaN, 0, 0, 1, 0, 0, 0, 1, 0]);
    expect(refusal(binaryStl(bad))).toContain("triangle 1, 2, 3, 4, 5, 6 and 3 more:");
  });

  test("of 0 and -0 are one corner", () => {
    const minus = BOX.map((triangle) => triangle.map((number) => (number === 0 ? -0 : number)));
    const mixed = BOX.map((triangle, place) => (place % 2 === 0 ? triangle : (minus[place] ?? [])));
    expect(readGood(binaryStl(mixed)).mesh.cornersMm.length / 3).toBe(8);
  });
});

describe("triangles without area", () => {
  const needle = [0, 0, 0, 2, 0, 0, 0, 0, 0];

  test("are left out and counted in a warning, and the body stays closed", () => {
    const bytes = binaryStl([...BOX, needle, needle]);
    const { mesh, findings } = readGood(bytes);
    expect(findings[0]?.sentence).toMatch(/2 triangles have two corners at the same point/);
    expect(measureBody(mesh)).toMatchObject({ volumeMm3: 24, closed: true, triangles: 12 });
  });

  test("far away do not enlarge the box", () => {
    const { mesh } = readGood(binaryStl([...BOX, [90, 90, 90, 90, 90, 90, 90, 90, 90]]));
    expect(Math.max(...mesh.cornersMm)).toBe(4);
  });
});

test("stored normals are not used", () => {
  const bytes = binaryStl(BOX);
  const turned = bytes.slice();
  new DataView(turned.buffer).setFloat32(84, NaN, true);
  expect(readGood(turned).mesh).toEqual(readGood(bytes).mesh);
});

test("a body turned inside out is read as it is, for the measures to see", () => {
  const inverted = BOX.map((t) => [...t.slice(0, 3), ...t.slice(6), ...t.slice(3, 6)]);
  expect(measureBody(readGood(binaryStl(inverted)).mesh)).toMatchObject({ inverted: true, volumeMm3: 24 });
});

describe("limits", () => {
  const bytes = binaryStl(BOX);

  test.each([
    [11, "too-many-triangles"],
    [12, ""],
    [13, ""],
  ])("at most %i triangles", (maxTriangles, code) => {
    const limits = { maxTriangles };
    if (code === "") expect(readGood(bytes, { limits }).mesh.triangles).toHaveLength(36);
    else expect(refusal(bytes, { limits })).toContain(code);
  });

  test.each([
    [11, ["many-triangles"]],
    [12, []],
  ])("a warning above %i triangles", (warnTriangles, codes) => {
    expect(warningsOf(bytes, { limits: { warnTriangles } })).toEqual(codes);
  });

  test.each([
    [683, "file-too-large"],
    [684, ""],
  ])("at most %i bytes", (maxFileBytes, code) => {
    const limits = { maxFileBytes };
    if (code === "") expect(readGood(bytes, { limits }).bodies).toHaveLength(1);
    else expect(refusal(bytes, { limits })).toContain(code);
  });
});

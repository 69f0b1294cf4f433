import { describe, expect, test } from "vitest";
import { measureBody } from "../../../core/geometry/measure.ts";
import { readGood, refusal, warningsOf } from "../../fixtures/a-reading.ts";
import { asciiStl, binaryStl, boxSoup, bytesOf } from "../../fixtures/stl-bytes.ts";

const BOX = boxSoup([2, 3, 4]);
const TEXT = asciiStl({ "a box": BOX });

const readText = (text: string) => readGood(bytesOf(text));
const refuseText = (text: string) => refusal(bytesOf(text));

/** Warnings of two boxes, the second shifted along x. */
const codesAt = (x: number) =>
  warningsOf(bytesOf(asciiStl({ one: BOX, two: boxSoup([2, 3, 4], [x, 0, 0]) })));

describe("an ASCII STL", () => {
  test("gives the same mesh as its binary twin, and its solid's name", () => {
    const { mesh, bodies } = readText(TEXT);
    expect(mesh).toEqual(readGood(binaryStl(BOX)).mesh);
    expect(bodies).toEqual([{ name: "a box", mesh, triangles: 12 }]);
  });

  const expected = readText(TEXT).mesh;
  test.each([
    ["line ends of two characters", TEXT.replaceAll("\n", "\r\n")],
    ["tabs for spaces", TEXT.replaceAll(/ +/g, "\t")],
    ["all on one line", TEXT.replaceAll(/\s+/g, " ")],
    [
      "each word on a line",
      TEXT.replace("solid a box", "solid")
        .replaceAll(/\s+/g, "\n")
        .replace(/\na\nbox\n$/, ""),
    ],
    ["upper case", TEXT.toUpperCase()],
    ["space before it", `\n\t  ${TEXT}`],
    ["a byte order mark", `\ufeff${TEXT}`],
    ["exponents", TEXT.replaceAll(/vertex (\d) (\d) (\d)/g, "vertex $1.0e+00 +0.$2E1 $300e-2")],
    ["no name after endsolid", TEXT.replace("endsolid a box", "endsolid")],
    ["normals that are no numbers", TEXT.replaceAll("normal 0 0 0", "normal nan -nan(ind) x")],
    ["a name that has facet in it", TEXT.replaceAll("a box", "my facet box")],
  ])("may have %s", (_, text) => {
    expect(readText(text).mesh).toEqual(expected);
    expect(readText(text).findings).toEqual([]);
  });

  test("keeps several solids as bodies, and all together", () => {
    const { bodies, mesh } = readText(asciiStl({ one: BOX, two: boxSoup([1, 1, 1], [9, 0, 0]) }));
    expect(bodies.map(({ name, triangles }) => [name, triangles])).toEqual([
      ["one", 12],
      ["two", 12],
    ]);
    expect(bodies.map((body) => measureBody(body.mesh).volumeMm3)).toEqual([24, 1]);
    expect(measureBody(mesh)).toMatchObject({ volumeMm3: 25, shells: 2, closed: true });
  });

  test("whose solids are the faces of one body is closed as a whole", () => {
    const halves = asciiStl({ lower: BOX.slice(0, 6), upper: BOX.slice(6) });
    expect(measureBody(readText(halves).mesh)).toMatchObject({ closed: true, volumeMm3: 24 });
  });

  test("with more than a thousand solids is one body of them all", () => {
    const faces = Object.fromEntries(
      Array.from({ length: 1001 }, (_, place) => [`f${place}`, [BOX[place % 12] ?? []]]),
    );
    const { bodies, findings } = readText(asciiStl(faces));
    expect(bodies).toHaveLength(1);
    expect(findings.map(({ code }) => code)).toEqual(["many-solids"]);
  });

  test("leaves out an empty solid, with a warning", () => {
    const bytes = bytesOf(asciiStl({ nothing: [], box: BOX }));
    expect(readGood(bytes).bodies.map(({ name }) => name)).toEqual(["box"]);
    expect(warningsOf(bytes)).toEqual(["empty-solid"]);
  });

  test("warns where boxes of solids overlap, not where they touch", () => {
    expect(codesAt(1.9)).toEqual(["bodies-overlap"]);
    expect(codesAt(2)).toEqual([]);
    expect(codesAt(2.1)).toEqual([]);
  });

  test("whose endsolid is missing is read, with a warning", () => {
    expect(warningsOf(bytesOf(TEXT.replace(/endsolid.*\n/, "")))).toEqual(["no-endsolid"]);
  });
});

describe("an ASCII STL is refused", () => {
  test.each([
    ["only empty solids", asciiStl({ nothing: [] }), "no-triangles"],
    ["a cut within a triangle", TEXT.slice(0, TEXT.lastIndexOf("vertex") + 12), "cut-short"],
    ["a decimal comma", TEXT.replace("vertex 2 ", "vertex 2,5 "), "decimal-comma"],
    ["a word for a number", TEXT.replace("vertex 2 ", "vertex two "), "not-stl"],
    ["a hexadecimal number", TEXT.replace("vertex 2 ", "vertex 0x2 "), "not-stl"],
    ["a coordinate that is no number", TEXT.replace("vertex 2 ", "vertex nan "), "absurd-coordinates"],
    ["an endless coordinate", TEXT.replace("vertex 2 ", "vertex -inf "), "absurd-coordinates"],
    ["an absurd coordinate", TEXT.replace("vertex 2 ", "vertex 1e30 "), "absurd-coordinates"],
    ["a coordinate beyond any float", TEXT.replace("vertex 2 ", "vertex 1e999 "), "absurd-coordinates"],
    [
      "a number of a million digits",
      TEXT.replace("vertex 2 ", `vertex ${"2".repeat(1_000_000)} `),
      "not-stl",
    ],
    ["four corners", TEXT.replace("    endloop", "      vertex 1 2 3\n    endloop"), "not-stl"],
    ["text of another kind after solid", "solid ground for a letter\nDear all, ...", "not-stl"],
  ])("for %s", (_, text, code) => {
    expect(text).not.toBe(TEXT);
    expect(refuseText(text)).toMatch(new RegExp(`^${code} `));
  });

  test("with the line and the word", () => {
    expect(refuseText(TEXT.replace("vertex 2 ", "vertex 2,5 "))).toContain(
      'line 6: "2,5" has a decimal comma',
    );
  });

  test("with the triangle where it was cut", () => {
    expect(refuseText(TEXT.slice(0, TEXT.lastIndexOf("vertex") + 12))).toContain("within triangle 12,");
  });

  test("with the triangle of an absurd coordinate", () => {
    const last = TEXT.lastIndexOf("vertex");
    expect(
      refuseText(`${TEXT.slice(0, last)}vertex nan 0 0\n${TEXT.slice(TEXT.indexOf("\n", last))}`),
    ).toContain("triangle 12:");
  });

  test("above the limit of triangles while it is read", () => {
    expect(refusal(bytesOf(TEXT), { limits: { maxTriangles: 11 } })).toMatch(/^too-many-triangles /);
    expect(readGood(bytesOf(TEXT), { limits: { maxTriangles: 12 } }).bodies).toHaveLength(1);
  });
});

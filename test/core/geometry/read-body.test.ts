import { describe, expect, test } from "vitest";
import { readGood, refusal } from "../../fixtures/a-reading.ts";
import { asciiStl, binaryStl, boxSoup, bytesOf } from "../../fixtures/stl-bytes.ts";
import { modelXml, threeMf } from "../../fixtures/three-mf-bytes.ts";
import { measureBody } from "../../../core/geometry/measure.ts";

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** Bytes that begin in one way and go on with noise. */
function beginning(first: readonly number[] | string, length: number): Uint8Array {
  const bytes = Uint8Array.from({ length }, (_, place) => (place * 167 + 13) % 251);
  bytes.set(typeof first === "string" ? bytesOf(first) : first);
  return bytes;
}

describe("the kind is told by the content, whatever the name", () => {
  test.each([
    ["a binary STL", binaryStl(boxSoup([10, 20, 30]))],
    ["an ASCII STL", bytesOf(asciiStl({ a: boxSoup([10, 20, 30]) }))],
    ["a 3MF", threeMf(modelXml())],
  ])("%s", (_, bytes) => {
    for (const fileName of ["part.stl", "part.3mf", "part", "part.png"]) {
      expect(measureBody(readGood(bytes, { fileName }).mesh).volumeMm3).toBe(6000);
    }
  });

  test.each([
    ["nothing", new Uint8Array(0), "empty-file", "is empty"],
    ["a picture", beginning(PNG, 5000), "not-a-body", "a PNG picture"],
    ["a small picture", beginning(PNG, 60), "not-a-body", "a PNG picture"],
    ["a bitmap", beginning([0x42, 0x4d, 1, 2, 3, 4, 0, 0, 0, 0], 5000), "not-a-body", "a BMP picture"],
    ["a photograph", beginning([0xff, 0xd8, 0xff, 0xe0], 5000), "not-a-body", "a JPEG picture"],
    ["a document", beginning("%PDF-1.7", 5000), "not-a-body", "a PDF document"],
    [
      "machine code in text",
      bytesOf("G28\nG1 X10 Y10 E1\n".repeat(50)),
      "not-a-body",
      "text of another kind",
    ],
    ["a STEP file", bytesOf("ISO-10303-21;\nHEADER;\n".repeat(9)), "not-a-body", "a STEP model"],
    ["a page", bytesOf(`<?xml version="1.0"?><html>${" ".repeat(99)}</html>`), "not-a-body", "XML"],
    ["one byte", Uint8Array.of(7), "not-a-body", "only 1 bytes"],
    ["83 bytes of noise", beginning([1], 83), "not-a-body", "only 83 bytes"],
    ["noise", beginning([1], 5000), "cut-short", "no STL"],
    ["zeros", new Uint8Array(5000), "no-triangles", "no triangle"],
  ])("%s is refused in a sentence with the file's name", (_, bytes, code, words) => {
    const sentence = refusal(bytes, { fileName: "wheel.stl" });
    expect(sentence).toMatch(new RegExp(`^${code} \\| wheel.stl: .*\\.$`));
    expect(sentence).toContain(words);
  });
});

const box = (side: number) => binaryStl(boxSoup([side, 1, 1]));

const doubts = (side: number, unit: "inch" | "millimeter" | null = null) =>
  readGood(box(side), { unit }).findings.map(({ code }) => code);

describe("the unit of a file that names none", () => {
  test("is millimetres, as a guess", () => {
    const { unit, unitIsGuess, findings } = readGood(box(50), { unit: null });
    expect({ unit, unitIsGuess, findings }).toEqual({ unit: "millimeter", unitIsGuess: true, findings: [] });
  });

  test("is the one given, without guessing", () => {
    const { unit, unitIsGuess, mesh } = readGood(box(50), { unit: "inch" });
    expect({ unit, unitIsGuess, longest: Math.max(...mesh.cornersMm) }).toEqual({
      unit: "inch",
      unitIsGuess: false,
      longest: 1270,
    });
  });

  test.each([
    [2.99, ["size-in-doubt"]],
    [3, []],
    [10_000, []],
    [10_001, ["size-in-doubt"]],
  ])("is in doubt by size: %d mm", (side, codes) => {
    expect(doubts(side)).toEqual(codes);
  });

  test("is in doubt when given too", () => {
    expect(doubts(300, "inch")).toEqual([]);
    expect(doubts(400, "inch")).toEqual(["size-in-doubt"]);
  });

  test("in doubt says what other units would give", () => {
    const [finding] = readGood(box(1.25), { unit: null }).findings;
    expect(finding?.sentence).toBe(
      "part.stl: its longest side is 1.25 mm, read in millimeter, a guess since the file names no unit; " +
        "it would be in centimeter 12.5 mm, in inch 31.8 mm, in meter 1250 mm: check its unit.",
    );
  });
});

const nameOf = (fileName: string) => readGood(binaryStl(boxSoup([9, 9, 9])), { fileName }).bodies[0]?.name;

test("a body without a name of its own has that of its file", () => {
  expect(["wheel.stl", "a/b.c/wheel.v2.stl", "C:\\x\\wheel.STL", "wheel", ".stl"].map(nameOf)).toEqual([
    "wheel",
    "wheel.v2",
    "wheel",
    "wheel",
    ".stl",
  ]);
});

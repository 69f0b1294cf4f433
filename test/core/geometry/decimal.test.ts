import * as fc from "fast-check";
import { expect, test } from "vitest";
import { asciiOf, decimalOf, decimalOfText } from "../../../core/geometry/decimal.ts";
import { bytesOf } from "../../fixtures/stl-bytes.ts";

const read = (text: string) => decimalOf(bytesOf(text), 0, text.length);

test.each([
  ["0", 0],
  ["-0", -0],
  ["+1.5", 1.5],
  ["-1.5e1", -15],
  [".5", 0.5],
  ["5.", 5],
  ["1E-3", 0.001],
  ["1e+22", 1e22],
  ["1e23", 1e23],
  ["123456789012345678901234567890", 1.2345678901234568e29],
  ["0.000000000000000000000000000001", 1e-30],
  ["1e400", Infinity],
  ["9007199254740993", 9007199254740992],
])("%s is read as %d", (text, value) => {
  expect(read(text)).toBe(value);
});

test.each(["", "-", ".", "e5", "1e", "1e+", "1e5.", "1,5", "0x10", "1 ", "--1", "1..2", "NaN", "Infinity"])(
  "%j is no number",
  (text) => {
    expect(read(text)).toBeNull();
  },
);

test("every number is read as the language reads it, to the last bit", () => {
  fc.assert(
    fc.property(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.integer({ min: 0, max: 20 }),
      (value, digits) => {
        for (const text of [`${value}`, value.toExponential(digits), value.toPrecision(digits + 1)]) {
          expect(read(text)).toBe(Number(text));
        }
      },
    ),
    { seed: 3, numRuns: 2000 },
  );
});

test("bytes give one character each", () => {
  expect(asciiOf(bytesOf("xhiy"), 1, 3)).toBe("hi");
});

test.each([
  [" -1.5e1\n", -15],
  [".5", 0.5],
  ["", null],
  ["0x10", null],
  ["1,5", null],
  ["Infinity", null],
])("the text %j gives %s", (text, value) => {
  expect(decimalOfText(text)).toBe(value);
});

test.each([
  [400, 0],
  [401, null],
])("%i digits", (count, value) => {
  const text = "0".repeat(count);
  expect(decimalOfText(text)).toBe(value);
  expect(read(text)).toBe(value);
});

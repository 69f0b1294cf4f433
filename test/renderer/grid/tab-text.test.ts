import { expect, test } from "vitest";
import { readTabText, writeTabText } from "../../../renderer/components/grid/tab-text.ts";

test.each([
  [
    "a\tb\nc\td",
    [
      ["a", "b"],
      ["c", "d"],
    ],
  ],
  [
    "a\tb\r\nc\td\r\n",
    [
      ["a", "b"],
      ["c", "d"],
    ],
  ],
  ["a", [["a"]]],
  ["", [[""]]],
  ["a\t\n", [["a", ""]]],
  ["a\n\nb", [["a"], [""], ["b"]]],
  ['"two\nlines"\tb', [["two\nlines", "b"]]],
  ['"say ""hi"""\tb', [['say "hi"', "b"]]],
  ['"tab\there"', [["tab\there"]]],
  ['5" nozzle\tb', [['5" nozzle', "b"]]],
  ['"unclosed\tb', [['"unclosed', "b"]]],
  ['"a"b\tc', [['"a"b', "c"]]],
  ["a\rb", [["a"], ["b"]]],
])("%j is read as %j", (text, rows) => {
  expect(readTabText(text)).toEqual(rows);
});

test("what is written is read as the same again", () => {
  const rows = [
    ["plain", "", "with\ttab"],
    ["with\nline", '"quoted"', 'in "the" middle'],
    ["=1+1", "1,5", " "],
  ];
  expect(readTabText(writeTabText(rows))).toEqual(rows);
});

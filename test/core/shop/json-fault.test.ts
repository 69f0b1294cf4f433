import { describe, expect, test } from "vitest";
import { findJsonFault } from "../../../core/shop/json-fault.ts";
import { seededRandom } from "../../../core/units/random.ts";

describe("the first fault of a text that is no JSON", () => {
  const cases: readonly (readonly [text: string, line: number, column: number, expected: string])[] = [
    ['{"a": 1,}', 1, 9, "a name in double quotes"],
    ["{a: 1}", 1, 2, "a name in double quotes"],
    ["{'a': 1}", 1, 2, "a name in double quotes"],
    ['{"a" 1}', 1, 6, "a colon"],
    ['{"a": 1 "b": 2}', 1, 9, "a comma or a closing }"],
    ['{"a": 1', 1, 8, "a comma or a closing }"],
    ["[1, 2,, 3]", 1, 7, "a value"],
    ["[1, 2", 1, 6, "a comma or a closing ]"],
    ['{"a": NaN}', 1, 7, "a value"],
    ['{"a": .5}', 1, 7, "a value"],
    ['{"a": 01}', 1, 8, "a comma or a closing }"],
    ['{"a": "x\ny"}', 1, 9, "a closing double quote"],
    ['{"a": "\\q"}', 1, 8, '\\"'],
    ['{"a": 1}\n{"b": 2}', 2, 1, "the end of the text"],
    ['{\n  "a": 1,\r\n  "b": tru\n}', 3, 8, "a value"],
    ["", 1, 1, "a value"],
    [`${"[".repeat(5000)}`, 1, 202, "no more than 200 levels"],
  ];

  test.each(cases)("%j is at line %d, column %d", (text, line, column, expected) => {
    const fault = findJsonFault(text);
    expect(fault).toMatchObject({ line, column });
    expect(fault?.expected).toContain(expected);
  });
});

test("a text that is JSON has none", () => {
  const text = ' {"a": [1, -0.5e+3, true, false, null, "\\u00e4 \\" \\\\ \u{1f9f5}", {}], "b": []}\r\n\t';
  expect(findJsonFault(text)).toBe(null);
});

test("there is a fault exactly where the language's own parser sees one, on 3000 random slips", () => {
  const random = seededRandom(7);
  const good = JSON.stringify({ a: [1, -2.5e-3, true, null, { b: 'x"\\\n\u007f' }], c: "", d: {} }, null, 1);
  const signs = '{}[],:"\\0-.eEtn \n\u0001';
  for (let round = 0; round < 3000; round += 1) {
    const at = Math.floor(random() * good.length);
    const sign = signs[Math.floor(random() * signs.length)] ?? "";
    const text = good.slice(0, at) + sign + good.slice(at + (random() < 0.5 ? 1 : 0));
    expect(findJsonFault(text) === null, JSON.stringify(text)).toBe(isJson(text));
  }
});

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

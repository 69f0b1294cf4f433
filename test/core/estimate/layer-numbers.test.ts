import { expect, test } from "vitest";
import { layerRanges, layersIn, layerWords } from "../../../core/estimate/layer-numbers.ts";

const RUNS = [4, 1, 2, 3, 1].map((count, place) => ({ count, place }));

test("neighbouring runs are one range, numbered from 1 at the platform", () => {
  expect(layerRanges(RUNS, ({ place }) => place < 2)).toEqual([{ from: 1, to: 5 }]);
  expect(layerRanges(RUNS, ({ place }) => place === 1 || place > 2)).toEqual([
    { from: 5, to: 5 },
    { from: 8, to: 11 },
  ]);
  expect(layerRanges(RUNS, () => false)).toEqual([]);
});

test("layers in ranges are counted with both ends", () => {
  expect(
    layersIn([
      { from: 1, to: 4 },
      { from: 9, to: 9 },
    ]),
  ).toBe(5);
});

function range(from: number, to: number) {
  return { from, to };
}

test("in words one layer stands alone, and more than four ranges are not all named", () => {
  expect(layerWords([range(7, 7)])).toBe("layer 7");
  expect(layerWords([range(212, 240)])).toBe("layers 212 to 240");
  expect(layerWords([range(1, 4), range(7, 7), range(9, 10)])).toBe("layers 1 to 4, 7 and 9 to 10");
  const many = [1, 3, 5, 7, 9, 11].map((layer) => range(layer, layer));
  expect(layerWords(many)).toBe("layers 1, 3, 5, 7 and 2 more ranges");
});

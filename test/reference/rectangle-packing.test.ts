import { describe, expect, test } from "vitest";
import type { Size } from "../../core/plan/packing/packing-task.ts";
import { packPlatform } from "../../core/plan/packing/platform-packing.ts";
import { packBins, packingInstances } from "../bench/rectangle-packing.ts";

/**
 * Two-dimensional bin packing with turning: Berkey and Wang 1987, Martello and Vigo 1998; best known numbers of bins from
 * the collection's table. Ten instances, one of each class; the bench runs all 250.
 */
const instances = packingInstances();
const CLASSES = ["01", "02", "03", "04", "05", "06", "07", "08", "09", "10"];

describe.skipIf(!instances)(
  "one instance of each class (skipped where ../shared/checks/rectangle-packing is absent)",
  () => {
    const chosen = CLASSES.map((name) => instances?.find(({ id }) => id.startsWith(`Class_${name}.2bp_40_`)));
    const packed = chosen.map((instance) => (instance ? packBins(instance) : []));

    test.each(CLASSES.map((name, index) => [name, index] as const))(
      "class %s: no fewer bins than best known, at most one more, every piece once and no two overlap",
      (_name, index) => {
        const instance = chosen[index];
        const bins = packed[index] ?? [];
        if (!instance) throw new Error("an instance of a class is missing");
        expect(bins.length).toBeGreaterThanOrEqual(instance.bestKnown);
        expect(bins.length).toBeLessThanOrEqual(instance.bestKnown + 1);
        expect(sizes(bins.flat())).toEqual(sizes(instance.items));
        for (const held of bins) expectInside(held, instance.bin);
      },
    );

    test("all ten together: at most 2 % above best known", () => {
      const used = packed.reduce((sum, bins) => sum + bins.length, 0);
      const best = chosen.reduce((sum, instance) => sum + (instance?.bestKnown ?? 0), 0);
      expect(used / best - 1).toBeLessThanOrEqual(0.02);
    });
  },
);

function sizes(list: readonly Size[]): string[] {
  return list.map(({ x, y }) => `${x} x ${y}`).toSorted();
}

/** Counts every unit square that a piece covers: sides are whole numbers, so none may be covered twice. */
function expectInside(held: readonly Size[], bin: Size): void {
  const places = packPlatform(held, bin, 0) ?? [];
  expect(places).toHaveLength(held.length);
  const squares = new Set<string>();
  let covered = 0;
  for (const [index, { x, y, turned }] of places.entries()) {
    const size = held[index] ?? { x: 0, y: 0 };
    const right = x + (turned ? size.y : size.x);
    const top = y + (turned ? size.x : size.y);
    expect([x >= 0, y >= 0, right <= bin.x, top <= bin.y]).toEqual([true, true, true, true]);
    for (let column = x; column < right; column++) {
      for (let row = y; row < top; row++) squares.add(`${column} ${row}`);
    }
    covered += size.x * size.y;
  }
  expect(squares.size).toBe(covered);
}

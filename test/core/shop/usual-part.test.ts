import { expect, test } from "vitest";
import { type Measures, partSchema } from "../../../core/shop/part.ts";
import { usualPart } from "../../../core/shop/usual-part.ts";

const BOX: Measures = { volumeMm3: 48_000, areaMm2: 8800, boxMm: { x: 60, y: 40, z: 20 } };

function detailMm(measures: Measures): number {
  return usualPart({ id: "P", name: "P" }, { kind: "measures", measures }).smallestFeatureMm;
}

/** Cuts of so many mm of height each, as thick as named. */
function withCuts(cuts: readonly (readonly [zMm: number, thinnestMm: number])[]): Measures {
  const fine = cuts.map(([zMm, thinnestMm]) => {
    return { zMm, thinnestMm, areaMm2: 100, perimeterMm: 40, islands: 1, holes: 0, corners: 4 };
  });
  const hullMm: [number, number][] = [
    [0, 0],
    [60, 0],
    [60, 40],
  ];
  const standing = { up: "z", heightMm: 20, hullMm, overhangAreaMm2: 0, supportVolumeMm3: 0, cuts: fine };
  return { ...BOX, standings: [standing] };
}

test("is a part that the shop document takes, with two walls and a fifth filled", () => {
  const part = usualPart({ id: "P", name: "P" }, { kind: "measures", measures: BOX });
  expect(partSchema.safeParse(part).success).toBe(true);
  expect(part).toMatchObject({ shells: 2, solidLayers: 4, infillPct: 20, families: [], needs: {} });
});

test("the smallest detail is what nine tenths of the height are at least as thick as", () => {
  expect(
    detailMm(
      withCuts([
        [2, 0.4],
        [20, 3],
      ]),
    ),
  ).toBe(3);
  expect(
    detailMm(
      withCuts([
        [2.1, 0.4],
        [20, 3],
      ]),
    ),
  ).toBe(0.4);
});

test("without cuts the usual detail is taken, but none larger than the body", () => {
  expect(detailMm(BOX)).toBe(1.2);
  expect(detailMm({ ...BOX, boxMm: { x: 60, y: 40, z: 0.9 } })).toBe(0.9);
});

import { describe, expect, it } from "vitest";
import { packPlatform } from "../../../../core/plan/packing/platform-packing.ts";
import { mayFitShelves } from "../../../../core/plan/packing/platform-shelf.ts";
import { seededRandom } from "../../../../core/units/random.ts";

describe("quick platform test", () => {
  const pieces = [
    { x: 60, y: 40 },
    { x: 60, y: 40 },
  ];

  it("lets two pieces side by side pass when gaps and all just fit, and not a millimetre less", () => {
    expect(mayFitShelves(pieces, { x: 125, y: 40 }, 5)).toBe(true);
    expect(mayFitShelves(pieces, { x: 124, y: 40 }, 5)).toBe(false);
  });

  it("refuses more area than there is", () => {
    expect(
      mayFitShelves(
        Array.from({ length: 5 }, () => ({ x: 50, y: 50 })),
        { x: 100, y: 100 },
        0,
      ),
    ).toBe(false);
  });

  it("refuses few of the arrangements that the exact packing finds", () => {
    const random = seededRandom(4);
    let fit = 0;
    let missed = 0;
    for (let round = 0; round < 300; round++) {
      const count = 2 + Math.floor(random() * 8);
      const list = Array.from({ length: count }, () => ({ x: 20 + 80 * random(), y: 20 + 80 * random() }));
      if (!packPlatform(list, { x: 200, y: 200 }, 5)) continue;
      fit++;
      if (!mayFitShelves(list, { x: 200, y: 200 }, 5)) missed++;
    }
    expect(fit).toBeGreaterThan(100);
    expect(missed / fit).toBeLessThan(0.02);
  });
});

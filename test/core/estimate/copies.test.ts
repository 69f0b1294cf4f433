import { describe, expect, test } from "vitest";
import { fewestCopies, mostBondingCopies } from "../../../core/estimate/copies.ts";
import type { CopyLimits } from "../../../core/estimate/copies.ts";
import { layerRefusal } from "../../../core/estimate/layer-reasons.ts";

const LIMITS: CopyLimits = {
  layerGroups: [
    { count: 10, workS: 4 },
    { count: 90, workS: 5 },
  ],
  layerChangeS: 1,
  shortestLayerS: 20,
  longestLayerS: Number.POSITIVE_INFINITY,
  longestWaitS: 6,
  platformCopies: 12,
};

describe("fewest copies", () => {
  test("the quickest layer may pause no longer than the machine bears", () => {
    expect(fewestCopies(LIMITS)).toBe(4);
    expect(fewestCopies({ ...LIMITS, longestWaitS: 7 })).toBe(3);
    expect(fewestCopies({ ...LIMITS, longestWaitS: 6.999 })).toBe(4);
  });

  test("one is enough where any pause is borne or none is needed", () => {
    expect(fewestCopies({ ...LIMITS, longestWaitS: Number.POSITIVE_INFINITY })).toBe(1);
    expect(fewestCopies({ ...LIMITS, shortestLayerS: 5, longestWaitS: 0 })).toBe(1);
  });

  test("empty layers ask for no copies", () => {
    expect(fewestCopies({ ...LIMITS, layerGroups: [...LIMITS.layerGroups, { count: 1, workS: 0 }] })).toBe(4);
  });
});

describe("most copies that bond", () => {
  test("the slowest layer must be over in time", () => {
    expect(mostBondingCopies({ ...LIMITS, longestLayerS: 31 })).toBe(6);
    expect(mostBondingCopies({ ...LIMITS, longestLayerS: 30.9 })).toBe(5);
    expect(mostBondingCopies({ ...LIMITS, longestLayerS: 5.9 })).toBe(0);
    expect(mostBondingCopies({ ...LIMITS, longestLayerS: 1 })).toBe(0);
  });

  test("is without limit where any layer time bonds", () => {
    expect(mostBondingCopies(LIMITS)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("refusals", () => {
  test("none where some number of copies works", () => {
    expect(layerRefusal(LIMITS)).toBeNull();
    expect(layerRefusal({ ...LIMITS, platformCopies: 4 })).toBeNull();
  });

  test("too fast names the copies that would cure it and what keeps them away", () => {
    const platform = layerRefusal({ ...LIMITS, platformCopies: 3 })?.reason;
    expect(platform?.code).toBe("layer-too-fast");
    expect(platform?.sentence).toBe(
      "a layer is over in 5 s, must last 20 s, and the machine pauses at most 6 s: 4 copies at once would cure it, but the platform takes only 3.",
    );
    const bond = layerRefusal({ ...LIMITS, longestLayerS: 20 })?.reason;
    expect(bond?.sentence).toContain("with more than 3 a layer takes longer than the 20 s in which it bonds");
    expect(bond?.values).toMatchObject({ copiesNeeded: 4, copiesPossible: 3 });
  });

  test("too slow names the rate that would cure it", () => {
    const slow = layerRefusal({ ...LIMITS, shortestLayerS: 2, longestLayerS: 3 })?.reason;
    expect(slow?.code).toBe("layer-too-slow");
    expect(slow?.sentence).toBe(
      "a layer takes 6 s, the next one bonds only within 3 s: 2.5 times the deposition rate, warmer air around the part or a part split in pieces would cure it.",
    );
  });

  test("a change of layer longer than the longest layer has no such cure", () => {
    const slow = layerRefusal({ ...LIMITS, shortestLayerS: 0.1, longestLayerS: 0.5 })?.reason;
    expect(slow?.sentence).toContain("the change of layer alone takes 1 s");
  });

  test("limits that contradict each other are said to", () => {
    const none = layerRefusal({ ...LIMITS, longestLayerS: 19 })?.reason;
    expect(none?.code).toBe("layer-too-slow");
    expect(none?.sentence).toContain("no layer time suits");
  });
});

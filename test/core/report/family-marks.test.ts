import { describe, expect, it } from "vitest";
import { familyMarks, markByFeedstock } from "../../../core/report/family-marks.ts";
import { aPlan } from "../../fixtures/a-plan.ts";
import { aWorks } from "../../fixtures/a-works.ts";

describe("marks of polymer families", () => {
  it("give each family a letter of its own, in alphabetical order", () => {
    const marks = familyMarks(aWorks(), aPlan());
    expect(marks.map((mark) => `${mark.letter} ${mark.family}`)).toEqual([
      "A ABS",
      "B ASA",
      "C PA6",
      "D PETG",
      "E PLA",
      "F TPU",
    ]);
  });

  it("never repeat a colour with the same hatch before the fiftieth family", () => {
    const shop = aWorks();
    const [grade] = shop.feedstocks;
    const [build] = aPlan().builds;
    if (!grade || !build) throw new Error("the works has no feedstock");
    const feedstocks = Array.from({ length: 49 }, (_, index) => ({
      ...grade,
      id: `g${index}`,
      family: `F${index + 10}`,
    }));
    const builds = feedstocks.map(({ id }) => ({ ...build, feedstockId: id }));
    const marks = familyMarks({ ...shop, feedstocks }, { ...aPlan(), builds, feedstockNeeds: [] });
    expect(new Set(marks.map((mark) => `${mark.colour} ${mark.hatch}`)).size).toBe(49);
    expect(new Set(marks.map((mark) => mark.letter)).size).toBe(49);
    expect(marks[26]?.letter).toBe("AA");
  });

  it("mark feedstock that the shop no longer has as unknown", () => {
    const shop = aWorks();
    const mark = markByFeedstock(shop, familyMarks(shop, aPlan()))("gone");
    expect(mark.family).toBe("unknown");
    expect(mark.letter).toBe("G");
  });
});

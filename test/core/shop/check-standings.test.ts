import { describe, expect, test } from "vitest";
import { standingFindings } from "../../../core/shop/check-standings.ts";
import { about } from "../../../core/shop/finding.ts";
import type { Part } from "../../../core/shop/part.ts";
import { partSchema } from "../../../core/shop/part.ts";
import type { MeasuredStanding } from "../../../core/shop/standing.ts";
import { aCut, aMeasuredPart, aStanding, boxStandings, rectangle } from "../../fixtures/a-measured-part.ts";
import { aPart } from "../../fixtures/a-route.ts";

function findings(part: Part) {
  return standingFindings(about("parts", part.id), part);
}

function said(standing: Partial<MeasuredStanding>, overrides: Partial<Part> = {}): string[] {
  return findings(aMeasuredPart(overrides, [aStanding(standing)])).map(({ sentence }) => sentence);
}

function codesOf(buildDirections: NonNullable<Part["buildDirections"]>): string[] {
  return findings(aMeasuredPart({ buildDirections })).map(({ code, severity }) => `${severity} ${code}`);
}

function isRead(standing: Partial<MeasuredStanding>): boolean {
  return partSchema.safeParse(aMeasuredPart({}, [aStanding(standing)])).success;
}

function corners(count: number): [number, number][] {
  return Array.from({ length: count }, () => [0, 0]);
}

function manyCuts(count: number) {
  return Array.from({ length: count }, (_, at) => aCut({ zMm: at + 1 }));
}

describe("nothing is said", () => {
  test("of a part by measures alone, nor of one whose mesh was measured whole", () => {
    expect(findings(aPart())).toEqual([]);
    expect(findings(aMeasuredPart())).toEqual([]);
    expect(findings(aMeasuredPart({ orientations: ["z", "-x", "+y"] }))).toEqual([]);
  });

  test("of a direction of its own that was measured so, whatever the length of its vector", () => {
    const standing = aStanding({ up: "tilted", vector: { x: 0.6, y: 0, z: 0.8 } });
    const buildDirections = [{ label: "tilted", x: 3, y: 0, z: 4 }];
    const part = aMeasuredPart({ buildDirections, orientations: ["tilted"] }, [standing]);
    expect(findings(part)).toEqual([]);
    expect(partSchema.safeParse(part).success).toBe(true);
  });
});

describe("an error says what cannot be", () => {
  test("a direction measured twice", () => {
    const [finding] = findings(aMeasuredPart({}, [...boxStandings(40, 30, 20), aStanding()]));
    expect(finding).toMatchObject({ severity: "error", code: "standing-twice" });
    expect(finding?.sentence).toContain("the direction z was measured twice");
  });

  test.each<[string, Partial<MeasuredStanding>, string]>([
    ["own label without vector", { up: "tilted" }, "no vector says which way that is"],
    ["a vector of no length", { up: "tilted", vector: { x: 0, y: 0, z: 0 } }, "its vector has no length"],
    [
      "cuts out of order",
      { cuts: [aCut({ zMm: 10 }), aCut({ zMm: 10 })] },
      "cut 2 does not end above the one before",
    ],
    ["cuts above its height", { cuts: [aCut({ zMm: 20.3, areaMm2: 1200 })] }, "its cuts go above its height"],
    [
      "cuts of another volume",
      { cuts: [aCut({ zMm: 20, areaMm2: 1100 })] },
      "its cuts add up to 22000 mm3, its volume is 24000 mm3",
    ],
    [
      "a cut beyond its outline",
      { hullMm: rectangle(30, 30) },
      "a cut is larger than its footprint's outline",
    ],
    [
      "an outline that runs the wrong way",
      { hullMm: rectangle(40, -30) },
      "a cut is larger than its footprint's outline",
    ],
    ["more overhang than surface", { overhangAreaMm2: 6000 }, "more hangs over than it has surface"],
    [
      "more support than can be under what hangs over",
      { overhangAreaMm2: 100, supportVolumeMm3: 2100 },
      "its supports take more than what hangs over times its height",
    ],
  ])("%s", (_, standing, words) => {
    const sentences = said(standing);
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).toMatch(/^Part clip: measured with .* up, .*; measure the part again\.$/);
    expect(sentences[0]).toContain(words);
  });

  test("a height beyond the diagonal of its box", () => {
    const cuts = [aCut({ zMm: 60, areaMm2: 400 })];
    expect(said({ heightMm: 60, cuts })[0]).toContain("it is higher than its box is long");
  });

  test("two directions of one label, and one of no length", () => {
    const one = { label: "a", x: 1, y: 0, z: 0 };
    expect(codesOf([one, { ...one, x: 2 }])).toEqual(["error direction-twice", "error direction-twice"]);
    expect(codesOf([{ ...one, x: 0 }])).toEqual(["error direction-without-length"]);
  });
});

describe("a warning says what is not tried", () => {
  const buildDirections = [{ label: "tilted", x: 1, y: 0, z: 1 }];

  test("a direction of its own that was not measured, or measured otherwise", () => {
    expect(findings(aMeasuredPart({ buildDirections })).map(({ code }) => code)).toEqual([
      "direction-not-measured",
    ]);
    const other = aStanding({ up: "tilted", vector: { x: 1, y: 0, z: 0.9 } });
    expect(findings(aMeasuredPart({ buildDirections }, [other])).map(({ code }) => code)).toEqual([
      "direction-not-measured",
    ]);
  });

  test("a name that stands for no direction", () => {
    const [finding] = findings(aMeasuredPart({ orientations: ["z", "titled"] }));
    expect(finding).toMatchObject({
      severity: "warning",
      code: "unknown-direction",
      where: "parts/clip/orientations",
    });
  });
});

describe("the schema refuses", () => {
  test.each(["x", "X", "-tilted", "+x", " a", "", "a".repeat(65)])("the own label %j", (label) => {
    const part = { ...aPart(), buildDirections: [{ label, x: 1, y: 0, z: 0 }] };
    expect(partSchema.safeParse(part).success).toBe(false);
  });

  test.each(["--x", "+tilted", " z", ""])("the direction %j", (name) => {
    expect(partSchema.safeParse({ ...aPart(), orientations: [name] }).success).toBe(false);
  });

  test("a hull of more than 24 corners and more than 200 cuts", () => {
    expect([isRead({ hullMm: corners(24) }), isRead({ hullMm: corners(25) })]).toEqual([true, false]);
    expect([isRead({ cuts: manyCuts(200) }), isRead({ cuts: manyCuts(201) })]).toEqual([true, false]);
  });
});

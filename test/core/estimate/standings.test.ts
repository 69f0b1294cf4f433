import { describe, expect, test } from "vitest";
import { findStandings } from "../../../core/estimate/standings.ts";
import type { Part } from "../../../core/shop/part.ts";
import { aMachine, aPart } from "../../fixtures/a-route.ts";

const MACHINE = aMachine();

function boxPart(x: number, y: number, z: number, overrides: Partial<Part> = {}, overhangAreaMm2 = 0): Part {
  const measures = {
    volumeMm3: (x * y * z) / 2,
    areaMm2: 2 * (x * y + y * z + x * z),
    boxMm: { x, y, z },
    overhangAreaMm2,
  };
  return aPart({ geometry: { kind: "measures", measures }, ...overrides });
}

function codes(part: Part, machine = MACHINE): string[] {
  return findStandings(part, machine).reasons.map(({ code }) => code);
}

test("a small part stands on every axis with the copies that fill the platform", () => {
  const { standings, reasons } = findStandings(boxPart(115, 75, 50), MACHINE);
  expect(reasons).toEqual([]);
  expect(standings.map(({ up, copies, heightMm }) => [up, copies, heightMm])).toEqual([
    ["z", 6, 50],
    ["y", 8, 75],
    ["x", 12, 115],
  ]);
});

test("only ways that fit are given", () => {
  const { standings } = findStandings(boxPart(245, 100, 50), MACHINE);
  expect(standings.map(({ up }) => up)).toEqual(["x"]);
});

test("a part that fits no way is too large, said with numbers of the closest way", () => {
  const [reason] = findStandings(boxPart(812, 400, 120, { orientations: ["z"] }), MACHINE).reasons;
  expect(reason?.code).toBe("too-large");
  expect(reason?.sentence).toBe(
    "too large: 812 x 400 mm across and 120 mm high with z vertical, 240 x 240 mm between the margins and 250 mm high.",
  );
  expect(reason?.values).toMatchObject({ axis: "z", acrossXMm: 812, usableXMm: 240 });
});

test("the allowance counts: a part that just fits is too large with it", () => {
  const finishing = { labourMin: 0, machiningMin: 0, machiningPerH: 0, allowanceMm: 1 };
  expect(codes(boxPart(240, 240, 250))).toEqual([]);
  expect(codes(boxPart(240, 240, 250, { finishing }))).toEqual(["too-large"]);
});

test("a load along the only axis that may be vertical leaves none", () => {
  expect(codes(boxPart(10, 10, 10, { orientations: ["z"], loadAxis: "z" }))).toEqual(["orientation"]);
});

describe("overhang where supports must not touch the part", () => {
  const hanging = boxPart(50, 50, 50, { supportAllowed: false }, 12);

  test("is a reason on a filament machine", () => {
    expect(findStandings(hanging, MACHINE).reasons[0]?.sentence).toBe(
      "12 mm² hang over and supports must not touch the part.",
    );
  });

  test("is none on a pellet machine, which builds without support", () => {
    expect(codes(hanging, aMachine({ process: "pellet" }))).toEqual([]);
  });

  test("is none where supports may touch it or nothing hangs over", () => {
    expect(codes(boxPart(50, 50, 50, { supportAllowed: true }, 12))).toEqual([]);
    expect(codes(boxPart(50, 50, 50, { supportAllowed: false }, 0))).toEqual([]);
  });

  test("comes beside a size that is too large", () => {
    expect(codes(boxPart(500, 500, 500, { supportAllowed: false }, 12))).toEqual(["too-large", "support"]);
  });
});

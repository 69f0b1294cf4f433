import { describe, expect, test } from "vitest";
import { machineReasons, partReasons } from "../../../core/estimate/feedstock-fit.ts";
import type { FlameClass } from "../../../core/shop/feedstock.ts";
import type { PartNeeds } from "../../../core/shop/part.ts";
import { aFeedstock, aMachine, aPart } from "../../fixtures/a-route.ts";

const PLA = aFeedstock();

function codes(reasons: readonly { code: string }[]): string[] {
  return reasons.map(({ code }) => code);
}

function needing(needs: PartNeeds) {
  return codes(partReasons(aPart({ needs }), PLA));
}

describe("what the part needs: just enough suits, a hair more does not", () => {
  test.each([
    ["heat-deflection", { heatDeflectionC: 55 }, { heatDeflectionC: 55.1 }],
    ["stiffness", { tensileModulusMPa: 3300 }, { tensileModulusMPa: 3301 }],
    ["strength", { tensileStrengthMPa: 50 }, { tensileStrengthMPa: 50.1 }],
    ["strength-across-layers", { acrossLayersMPa: 30 }, { acrossLayersMPa: 30.1 }],
  ])("%s", (code, enough, more) => {
    expect(needing(enough)).toEqual([]);
    expect(needing(more)).toEqual([code]);
  });

  test("a sentence names feedstock, what it has and what is needed", () => {
    const [reason] = partReasons(aPart({ needs: { heatDeflectionC: 80 } }), PLA);
    expect(reason?.sentence).toBe("PLA white bears heat up to 55 °C, the part needs 80 °C.");
    expect(reason?.values).toEqual({ has: 55, need: 80 });
  });
});

function withClass(flameClass: FlameClass) {
  return aFeedstock({ properties: { ...PLA.properties, flameClass } });
}

describe("flame class by UL 94", () => {
  const part = aPart({ needs: { flameClass: "V-1" } });

  test("a better or equal class suits", () => {
    expect(partReasons(part, withClass("V-1"))).toEqual([]);
    expect(partReasons(part, withClass("5VA"))).toEqual([]);
  });

  test("a lower or unknown class does not", () => {
    expect(partReasons(part, withClass("HB"))[0]?.sentence).toBe(
      "PLA white has flame class HB, the part needs V-1.",
    );
    expect(partReasons(part, PLA)[0]?.sentence).toBe(
      "PLA white has no known flame class, the part needs V-1.",
    );
  });
});

describe("polymer family", () => {
  test("any family suits a part that names none", () => {
    expect(partReasons(aPart({ families: [] }), PLA)).toEqual([]);
  });

  test("only named families suit a part that names some", () => {
    expect(partReasons(aPart({ families: ["PETG", "PLA"] }), PLA)).toEqual([]);
    expect(partReasons(aPart({ families: ["PETG", "ABS"] }), PLA)[0]?.sentence).toBe(
      "PLA white is PLA, the part may be PETG or ABS.",
    );
  });
});

describe("what the machine can run", () => {
  test.each([
    ["nozzle-temperature", { maxNozzleC: 190 }, { maxNozzleC: 189 }, {}],
    ["platform-temperature", { maxPlatformC: 60 }, { maxPlatformC: 59 }, {}],
    ["chamber-temperature", { chamberC: 70 }, { chamberC: 69 }, { needsChamberC: 70 }],
    ["abrasive", { hardened: true }, { hardened: false }, { abrasive: true }],
  ])("%s", (code, able, unable, feedstock) => {
    expect(machineReasons(aMachine(able), aFeedstock(feedstock))).toEqual([]);
    expect(codes(machineReasons(aMachine(unable), aFeedstock(feedstock)))).toEqual([code]);
  });

  test("pellets do not go into a filament machine", () => {
    expect(codes(machineReasons(aMachine(), aFeedstock({ form: "pellet" })))).toEqual(["form"]);
  });

  test("a price of 0 is a price, an unknown price is a reason", () => {
    expect(machineReasons(aMachine(), aFeedstock({ pricePerKg: 0 }))).toEqual([]);
    expect(codes(machineReasons(aMachine(), aFeedstock({ pricePerKg: null })))).toEqual(["no-price"]);
  });

  test("every reason is given, not the first only", () => {
    const cold = aMachine({ maxNozzleC: 100, maxPlatformC: 20 });
    expect(codes(machineReasons(cold, aFeedstock({ abrasive: true })))).toEqual([
      "nozzle-temperature",
      "platform-temperature",
      "abrasive",
    ]);
  });
});

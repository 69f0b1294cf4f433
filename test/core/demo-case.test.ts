import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { demoCase } from "../../assets/demo/purchase-case.ts";
import { idleCandidates } from "../../core/purchase/idle-candidate.ts";
import { checkCase } from "../../core/shop/check-case.ts";
import type { PurchaseCase } from "../../core/shop/purchase-case.ts";
import { readCase } from "../../core/shop/read-case.ts";
import { readShop } from "../../core/shop/read-shop.ts";
import type { Shop } from "../../core/shop/shop.ts";

function asset(name: string): string {
  return readFileSync(new URL(`../../assets/${name}`, import.meta.url), "utf8");
}

function theShop(): Shop {
  const { shop } = readShop(asset("demo.shop.json"));
  if (shop === null) throw new Error("the demo shop cannot be read");
  return shop;
}

function theCase(): PurchaseCase {
  const { purchaseCase } = readCase(asset("demo.case.json"));
  if (purchaseCase === null) throw new Error("the demo case cannot be read");
  return purchaseCase;
}

describe("the demo case", () => {
  test("is what its script writes", () => {
    expect(JSON.parse(asset("demo.case.json"))).toEqual(demoCase(theShop()));
  });

  test("has nothing to be said about but who decides on nights with nobody there", () => {
    expect(checkCase(theShop(), theCase()).map(({ code }) => code)).toEqual(["unattended"]);
    expect(idleCandidates(theShop(), theCase())).toEqual([]);
  });

  test("asks for a small filament machine, a large pellet machine, a second shift and an approval", () => {
    expect(theCase().candidates.map(({ changes }) => changes.map(({ kind }) => kind).join())).toEqual([
      "add-alike",
      "add-machine",
      "add-shift",
      "approve-unattended",
    ]);
  });

  test("is marked as invented wherever it has a name", () => {
    const { name, note, candidates } = theCase();
    for (const text of [name, note.toLowerCase(), ...candidates.map((own) => own.name)])
      expect(text).toContain("nvented");
  });

  test("expects every part of the shop", () => {
    const { demand } = theCase();
    const parts = demand.kind === "typed" ? demand.lines.map(({ partId }) => partId) : [];
    expect(parts).toEqual(theShop().parts.map(({ id }) => id));
  });
});

import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { besideShop } from "../../../electron/store/beside-shop.ts";
import { freePath, plainFileName } from "../../../electron/store/free-name.ts";
import { aFolder } from "../a-desk.ts";

describe("a file that a shop document names", () => {
  test("is found below the shop's folder", async () => {
    const folder = aFolder();
    mkdirSync(join(folder, "meshes"));
    writeFileSync(join(folder, "meshes", "a.stl"), "");
    expect(await besideShop(join(folder, "w.shop.json"), "meshes/a.stl")).toContain("a.stl");
  });

  test.each(["../a.stl", "meshes/../../a.stl", "/etc/hosts", "", ".", "a\0.stl"])(
    "is refused outside it: %j",
    async (named) => {
      expect(await besideShop(join(aFolder(), "w.shop.json"), named)).toBeNull();
    },
  );

  test("is refused where a link leads out", async () => {
    const [folder, other] = [aFolder(), aFolder()];
    writeFileSync(join(other, "a.stl"), "");
    symlinkSync(join(other, "a.stl"), join(folder, "a.stl"));
    expect(await besideShop(join(folder, "w.shop.json"), "a.stl")).toBeNull();
  });
});

describe("a name for a file", () => {
  test.each([
    ["Riverside Works", "Riverside Works"],
    ["My: shop/2", "My shop 2"],
    ["..", "shop"],
    ["", "shop"],
    ["con", "_con"],
    ["COM1.txt", "_COM1.txt"],
    ["a\u202Egnp", "a gnp"],
    ["end. ", "end"],
  ])("%j becomes %j", (given, plain) => {
    expect(plainFileName(given)).toBe(plain);
  });

  test("of 10,000 characters becomes one of 80", () => {
    expect(plainFileName("x".repeat(10_000))).toHaveLength(80);
  });

  test("that is taken is counted on, before all of its ending", async () => {
    const folder = aFolder();
    writeFileSync(join(folder, "a.shop.json"), "");
    expect(await freePath(folder, "a.shop.json")).toBe(join(folder, "a 2.shop.json"));
  });
});

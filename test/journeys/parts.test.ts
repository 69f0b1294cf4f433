import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, expect, test } from "vitest";
import type { OpenedApp } from "./open-app.ts";
import { faultsInBoth, openPage, SLOW_MS } from "./open-page.ts";

const CLIP = fileURLToPath(new URL("../../assets/bodies/clip.stl", import.meta.url));

let app: OpenedApp;

beforeEach(async () => {
  app = await openPage("parts");
  await app.page.getByRole("grid", { name: "Parts" }).waitFor();
  await app.page.getByRole("table", { name: /Ways to make/ }).waitFor();
});

afterEach(() => app.close());

const panel = () => app.page.getByRole("complementary");
const partCount = () => app.page.locator(".grid-foot span").first().textContent();

test(
  "every view of a part is without a fault of accessibility, the last in light and dark",
  async () => {
    for (const name of ["Ways to make it", "Layers", "Needs", "Body"]) {
      await app.page.getByRole("tab", { name }).click();
      expect(await app.accessibilityFaults(), name).toEqual([]);
    }
    expect(await faultsInBoth(app)).toEqual([]);
  },
  SLOW_MS,
);

test("drawing in three dimensions is fetched with the first body that is looked at, not before", async () => {
  const fetched: string[] = [];
  app.page.on("request", (request) => fetched.push(request.url()));
  await app.page.getByRole("tab", { name: "Layers" }).click();
  await panel().locator("img.layer-plot").waitFor();
  expect(fetched.filter((url) => url.includes("body-view"))).toEqual([]);
  await app.page.getByRole("tab", { name: "Body" }).click();
  await expect.poll(() => panel().textContent()).toContain("on the platform");
  expect(fetched.some((url) => url.includes("body-view"))).toBe(true);
});

test("a dropped STL is measured in the unit that was asked for, gets its routes, and undo takes it away", async () => {
  const bytes = await readFile(CLIP);
  const transfer = await app.page.evaluateHandle((base64) => {
    const held = new DataTransfer();
    const content = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    held.items.add(new File([content], "my clip.stl"));
    return held;
  }, bytes.toString("base64"));
  await app.page.locator("main").dispatchEvent("drop", { dataTransfer: transfer });
  const dialog = app.page.getByRole("dialog", { name: "Which unit is the file in?" });
  await dialog.waitFor();
  expect(await dialog.textContent()).toContain("32.0\u202fmm");
  await dialog.getByLabel("inches").check();
  expect(await dialog.textContent()).toContain("813\u202fmm");
  await dialog.getByLabel("millimetres").check();
  await dialog.getByRole("button", { name: "Take it so" }).click();
  await expect.poll(partCount).toBe("41 parts");
  await expect.poll(() => app.page.locator("aside h2").textContent()).toBe("my clip");
  await expect.poll(() => panel().locator(".ways tbody tr b").first().textContent()).toMatch(/\d/);
  await app.page.locator("[role=grid]").focus();
  await app.page.keyboard.press("Control+Z");
  await expect.poll(partCount).toBe("40 parts");
});

test("a direction of the part's own is added, measured, named and taken away, each one step of undo", async () => {
  await app.page.getByRole("tab", { name: "Body" }).click();
  await panel().getByRole("button", { name: "New direction" }).click();
  const group = panel().getByRole("group", { name: "Direction tilted" });
  await group.waitFor({ timeout: 30_000 });
  await group.getByLabel("Called").fill("z");
  await group.getByLabel("Called").press("Enter");
  expect(await group.textContent()).toContain("be none of x, y and z");
  await group.getByLabel("Called").fill("on edge");
  await group.getByLabel("Called").press("Enter");
  await panel().getByRole("group", { name: "Direction on edge" }).waitFor({ timeout: 30_000 });
  expect(await app.accessibilityFaults()).toEqual([]);
  await panel().getByRole("button", { name: "Remove direction on edge" }).click();
  await panel()
    .getByRole("group", { name: /^Direction/ })
    .waitFor({ state: "detached", timeout: 30_000 });
  await app.page.locator("[role=grid]").focus();
  for (let step = 0; step < 3; step += 1) await app.page.keyboard.press("Control+Z");
  expect(await app.page.getByRole("button", { name: "Undo", exact: true }).isDisabled()).toBe(true);
});

test("what a part must bear rules out feedstocks, each with its reason", async () => {
  await app.page.getByRole("tab", { name: "Needs" }).click();
  await panel().getByLabel("Heat", { exact: true }).fill("500");
  await panel().getByLabel("Heat", { exact: true }).press("Enter");
  await app.page.getByRole("tab", { name: "Ways to make it" }).click();
  await expect.poll(() => panel().locator(".ways tbody button").count()).toBe(0);
  expect(await panel().locator(".refused").first().textContent()).toContain("No.");
});

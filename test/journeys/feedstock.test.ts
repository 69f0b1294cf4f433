import { afterEach, beforeEach, expect, test } from "vitest";
import type { OpenedApp } from "./open-app.ts";
import { faultsInBoth, openPlanned } from "./open-page.ts";

let app: OpenedApp;

beforeEach(async () => {
  app = await openPlanned("feedstock");
  await app.page.getByRole("grid", { name: "Feedstock" }).waitFor();
});

afterEach(() => app.close());

test("what the plan asks to buy leads to the grade, and nothing is at fault in light and dark", async () => {
  const buys = app.page.getByRole("region", { name: "To buy for this plan" });
  await buys.getByRole("row").nth(1).waitFor();
  expect(await faultsInBoth(app)).toEqual([]);
  const first = buys.getByRole("button").first();
  const name = (await first.locator(".name").textContent()) ?? "";
  await first.press("Enter");
  await expect.poll(() => app.page.locator("aside h2").textContent()).toBe(name);
  expect(await app.page.getByRole("complementary").textContent()).toContain("To buy");
});

test("a price is typed into the grid and stands in the panel, in both units", async () => {
  await app.page.locator('[data-row="0"][data-col="4"]').click();
  await app.page.keyboard.type("20");
  await app.page.keyboard.press("Enter");
  const price = app.page.getByRole("complementary").getByLabel("Price", { exact: true });
  await app.page.keyboard.press("ArrowUp");
  await expect.poll(() => price.inputValue()).toBe("20");
  await app.page.getByRole("button", { name: /Units and look/ }).click();
  await app.page.getByLabel("Units", { exact: true }).selectOption({ label: "in and lb" });
  await app.page.keyboard.press("Escape");
  await expect.poll(() => price.inputValue()).toBe("9.0718474");
});

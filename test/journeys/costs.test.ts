import { afterEach, beforeEach, expect, test } from "vitest";
import type { OpenedApp } from "./open-app.ts";
import { faultsInBoth, openPlanned, SLOW_MS } from "./open-page.ts";

let app: OpenedApp;

beforeEach(async () => {
  app = await openPlanned("costs");
  await app.page.getByRole("treegrid").waitFor();
});

afterEach(() => app.close());

test(
  "every view of the costs page is without a fault of accessibility, in light and dark",
  async () => {
    for (const name of ["The total opened", "Price of an hour", "Against rules of thumb", "Money rules"]) {
      await app.page.getByRole("tab", { name }).click();
      expect(await faultsInBoth(app), name).toEqual([]);
    }
  },
  SLOW_MS,
);

test("with arrow keys a machine's amount opens down to a line, its formula and its inputs", async () => {
  await app.page.getByLabel("Opened by").selectOption({ label: "machine, then kind" });
  const rows = app.page.locator("[role=treegrid] [data-at]");
  const closed = await rows.count();
  await rows.first().focus();
  for (let step = 0; step < 4; step += 1) await app.page.keyboard.press("ArrowRight");
  expect(await app.page.locator(":focus").getAttribute("aria-level")).toBe("3");
  expect(await app.page.locator(".made-formula").textContent()).not.toBe("");
  expect(await app.page.locator("aside table tbody tr").count()).toBeGreaterThan(0);
  for (let step = 0; step < 4; step += 1) await app.page.keyboard.press("ArrowLeft");
  expect(await rows.count()).toBe(closed);
});

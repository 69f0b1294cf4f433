import { afterEach, beforeEach, expect, test } from "vitest";
import { aMachine, aShop } from "../fixtures/a-route.ts";
import type { OpenedApp } from "./open-app.ts";
import { faultsInBoth, openPage, SLOW_MS } from "./open-page.ts";

/** Planning a few weeks takes seconds, more where the machine is busy. */
const WORK_MS = 120_000;

let app: OpenedApp;

beforeEach(async () => {
  const second = aMachine({ id: "F2", name: "Bench 2" });
  app = await openPage("purchase", { shop: aShop({ machines: [aMachine(), second] }) });
  await app.page.getByRole("heading", { name: "No case yet", exact: true }).waitFor();
});

afterEach(() => app.close());

test(
  "by keyboard alone a new case is made, worked out and its recommendation read; undo takes the case back",
  async () => {
    const { page } = app;
    await page.keyboard.press("n");
    await page.getByRole("button", { name: "Add a candidate" }).focus();
    await page.keyboard.press("Enter");
    await page.getByRole("menuitem", { name: "Another machine like one of ours" }).waitFor();
    await page.keyboard.press("Enter");
    await type("Price", "4000");
    await page.getByRole("tab", { name: "Candidates" }).focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    await type("Weeks planned", "4");
    await type("Scenarios of demand", "2");
    expect(await faultsInBoth(app), "no answer yet").toEqual([]);
    await page.getByRole("tab", { name: "Money and time" }).focus();
    await page.keyboard.press("w");
    await page.locator(".answer-stage").getByText("Whole").waitFor({ timeout: WORK_MS });
    expect(await page.locator(".answer-sentence").textContent()).toMatch(/^(Take|Leave|Think twice about) /);
    expect(await page.locator(".cash-table tbody tr").count()).toBeGreaterThan(0);
    await page.getByRole("tab", { name: "Candidates" }).click();
    expect(await faultsInBoth(app), "with the answer").toEqual([]);
    await page.locator("h1").click();
    for (let step = 0; step < 5; step += 1) await page.keyboard.press("Control+z");
    await page.getByRole("heading", { name: "No case yet", exact: true }).waitFor();
  },
  SLOW_MS * 2,
);

test(
  "stopping at once ends the work and leaves the page to be used",
  async () => {
    const { page } = app;
    await page.keyboard.press("n");
    await page.getByRole("button", { name: "Add a candidate" }).click();
    await page.getByRole("menuitem", { name: "Second shift or overtime" }).click();
    await page.keyboard.press("w");
    await page.getByRole("button", { name: "Stop and keep" }).click();
    await page.getByRole("button", { name: /Work it out/ }).waitFor({ timeout: WORK_MS });
    await type("Price", "100");
    expect(await page.locator(".candidate-outlay").textContent()).toContain("100");
  },
  SLOW_MS,
);

test(
  "Ctrl+Enter on a menu's button opens the planning alone, and the window goes on",
  async () => {
    const { page } = app;
    await page.keyboard.press("n");
    await page.getByRole("button", { name: "Add a candidate" }).focus();
    await page.keyboard.press("Control+Enter");
    await page.getByRole("dialog").waitFor();
    expect(await page.getByRole("menu").count()).toBe(0);
    await page.keyboard.press("Escape");
    await page.getByRole("tab", { name: "Money and time" }).click();
    await type("Weeks planned", "4");
  },
  SLOW_MS,
);

async function type(label: string, text: string): Promise<void> {
  const field = app.page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press("Enter");
}

import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, expect, test } from "vitest";
import type { OpenedApp } from "./open-app.ts";
import { faultsInBoth, go, openPlanned, SLOW_MS } from "./open-page.ts";

const CLIP = fileURLToPath(new URL("../../assets/bodies/clip.stl", import.meta.url));

let app: OpenedApp;

/** A loaded machine takes its time. */
const ANSWER = { timeout: 90_000 };

beforeEach(async () => {
  app = await openPlanned("quote");
  await app.page.getByLabel("Customer").waitFor();
});

afterEach(() => app.close());

test(
  "a clerk quotes with the keyboard alone: a rough price at once, the whole answer, the draft, the order, and back",
  async () => {
    const { page } = app;
    const { keyboard } = page;
    await keyboard.press("n");
    await keyboard.type("Brindle & Co (invented)");
    await keyboard.press("Tab");
    await keyboard.type("Sorting");
    await keyboard.press("ArrowDown");
    await keyboard.press("Tab");
    await keyboard.type("12");
    await keyboard.press("Tab");
    await keyboard.type("2029-03-01");
    const stage = page.locator(".quote-stage");
    const list = page.getByRole("listbox", { name: "Quotes" });
    await stage.waitFor(ANSWER);
    expect(await page.getByLabel("Part", { exact: true }).inputValue()).toBe("tray");
    await page.getByText("Whole", { exact: true }).waitFor(ANSWER);
    expect(await page.getByRole("table", { name: "Dates of the line" }).innerText()).toContain(
      "Kept with 95 %",
    );
    // Another quantity: the old answer gives way to a rough one, which is then refined.
    await keyboard.press("Shift+Tab");
    const roughSeen = page.waitForFunction(
      () => document.querySelector(".quote-stage")?.textContent === "Rough",
    );
    await keyboard.type("15");
    await roughSeen;
    await page.getByText("Whole", { exact: true }).waitFor(ANSWER);
    const figure = await page.locator(".quote-figure").first().innerText();
    await keyboard.press("Control+Shift+S");
    await list.getByRole("option", { name: /Q-\d{4}-0001/ }).waitFor();
    expect(await list.innerText()).toContain(figure);
    await page.getByRole("button", { name: "Accept" }).focus();
    await keyboard.press("Enter");
    await page.getByRole("dialog").getByLabel("This promise must hold").focus();
    await keyboard.press("Space");
    await page.getByRole("button", { name: "Make orders of it" }).focus();
    await keyboard.press("Enter");
    await page.getByRole("region", { name: "As it was offered" }).waitFor();
    await go(app, "orders");
    await page
      .getByRole("gridcell", { name: /Q-\d{4}-0001-1/ })
      .first()
      .waitFor();
    await go(app, "quote");
    await list.getByRole("option", { name: /Accepted/ }).waitFor();
    await keyboard.press("Control+Z");
    await list.getByRole("option", { name: /Draft/ }).waitFor();
  },
  2 * SLOW_MS,
);

test(
  "the page is without a fault of accessibility while it is empty, answered and asking, in light and dark",
  async () => {
    const { page } = app;
    expect(await faultsInBoth(app), "empty").toEqual([]);
    await page.getByLabel("Part", { exact: true }).fill("clip");
    await page.getByRole("textbox", { name: "Quantity" }).fill("40");
    await page.getByLabel("Wanted by").fill("2029-03-01");
    await page.getByText("Whole", { exact: true }).waitFor(ANSWER);
    expect(await faultsInBoth(app), "answered").toEqual([]);
    await page.getByRole("button", { name: "Accept" }).click();
    expect(await faultsInBoth(app), "accepting").toEqual([]);
    await page.getByRole("button", { name: "Make orders of it" }).click();
    await page.getByRole("region", { name: "As it was offered" }).waitFor();
    expect(await faultsInBoth(app), "offered").toEqual([]);
    await page.getByRole("button", { name: "Sheet" }).click();
    await page.getByRole("menuitem", { name: "For the customer" }).click();
    await page
      .frameLocator(".sheet-preview")
      .getByRole("heading", { name: /Quote Q-/ })
      .waitFor();
  },
  2 * SLOW_MS,
);

test("a body that is dropped becomes a part and a line, which is priced", async () => {
  const { page } = app;
  const bytes = await readFile(CLIP);
  const transfer = await page.evaluateHandle((base64) => {
    const held = new DataTransfer();
    const content = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    held.items.add(new File([content], "door wedge.stl"));
    return held;
  }, bytes.toString("base64"));
  await page.locator("main").dispatchEvent("drop", { dataTransfer: transfer });
  await page.getByRole("dialog").getByRole("button", { name: "Take it so" }).click();
  await page.locator(".quote-stage").waitFor(ANSWER);
  expect(await page.getByLabel("Part", { exact: true }).inputValue()).toBe("door-wedge");
  expect(await page.locator(".quote-figure").first().innerText()).toMatch(/\d\sEUR$/);
});

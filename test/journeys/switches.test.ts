import { afterEach, beforeEach, expect, test } from "vitest";
import { PAGES } from "../../renderer/pages/page-list.ts";
import type { OpenedApp } from "./open-app.ts";
import { go, openPlanned, SLOW_MS } from "./open-page.ts";

let app: OpenedApp;

beforeEach(async () => {
  app = await openPlanned("orders");
});

afterEach(() => app.close());

/** What a page shows needs a moment on a busy machine. */
const REST_MS = 600;
const DARK = "rgb(21, 25, 27)";

/** In names and in what the trade gives in these units everywhere: densities and heat capacities of data sheets. */
const LEFT_OUT = /kg\/m³|J\/\(kg K\)/;
const METRIC = /(?<![\w/])(mm|kg|cm)[²³]?(?!\w)/;
const INCH = /(?<![\w/])(lb|in[²³])(?!\w)/;

async function choose(label: string, choice: string): Promise<void> {
  await app.page.getByRole("button", { name: /Units and look/ }).click();
  await app.page.getByLabel(label, { exact: true }).selectOption({ label: choice });
  await app.page.keyboard.press("Escape");
  await app.page.getByRole("dialog").waitFor({ state: "hidden" });
}

/** Lines of every page and of every tab on it in which something stands. */
async function linesWith(wanted: RegExp): Promise<string[]> {
  const found = new Set<string>();
  for (const { id } of PAGES) {
    await go(app, id);
    await app.page.waitForTimeout(REST_MS);
    const lines = (await textsOfTabs()).join("\n").split("\n");
    for (const line of lines.filter((text) => wanted.test(text) && !LEFT_OUT.test(text)))
      found.add(`${id}: ${line}`);
  }
  return [...found];
}

/** What the open page shows with each of its tabs, or as it is where it has none. */
async function textsOfTabs(): Promise<string[]> {
  const main = app.page.locator("main");
  const tabs = main.locator("[role=tab]");
  const texts = [await main.innerText()];
  for (let place = 0; place < (await tabs.count()); place += 1) {
    await tabs.nth(place).click();
    await app.page.waitForTimeout(REST_MS / 2);
    texts.push(await main.innerText());
  }
  return texts;
}

test(
  "one switch changes the units of every page and every tab, there and back",
  async () => {
    await choose("Units", "in and lb");
    expect(await linesWith(METRIC)).toEqual([]);
    expect(await linesWith(INCH)).not.toEqual([]);
    await choose("Units", "mm and kg");
    expect(await linesWith(INCH)).toEqual([]);
    expect(await linesWith(METRIC)).not.toEqual([]);
  },
  SLOW_MS,
);

test(
  "one switch changes how amounts and numbers are written on every page",
  async () => {
    await choose("Numbers", "1.234,5");
    // Two decimals before a unit or a currency: names such as PLA 1.75 are not numbers of the screen.
    expect(await linesWith(/\d\.\d+\s(EUR|mm|kg|%)/)).toEqual([]);
    expect(await linesWith(/\d,\d+\s(EUR|mm|kg|%)/)).not.toEqual([]);
  },
  SLOW_MS,
);

test.each(["dark", "light"])(
  "one switch makes every page %s, each legible",
  async (choice) => {
    await app.page.emulateMedia({ colorScheme: choice === "dark" ? "light" : "dark" });
    await choose("Light or dark", choice);
    for (const { id } of PAGES) {
      await go(app, id);
      await app.page.waitForTimeout(REST_MS / 2);
      const shown = await app.page.evaluate(() => getComputedStyle(document.body).backgroundColor);
      expect(shown === DARK, `${id} is ${shown}`).toBe(choice === "dark");
      expect(await app.accessibilityFaults("color-contrast"), id).toEqual([]);
    }
  },
  SLOW_MS,
);

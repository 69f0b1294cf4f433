import { afterEach, beforeEach, expect, test } from "vitest";
import type { OpenedApp } from "./open-app.ts";
import { faultsInBoth, openPage, SLOW_MS } from "./open-page.ts";

let app: OpenedApp;

beforeEach(async () => {
  app = await openPage("machines");
  await app.page.getByRole("grid", { name: "Machines" }).waitFor();
});

afterEach(() => app.close());

const tab = (name: string) => app.page.getByRole("tab", { name });
const field = (label: string) => app.page.getByRole("complementary").getByLabel(label, { exact: true });
const rate = () => app.page.locator(".rate tfoot td").last();

test(
  "every view of the machine page is without a fault of accessibility, the last in light and dark",
  async () => {
    expect(await app.page.locator("h1").textContent()).toContain("What do we have?");
    for (const name of ["Now", "Facts", "Nozzles", "Hour rate", "Calendar"]) {
      await tab(name).click();
      expect(await app.accessibilityFaults(), name).toEqual([]);
    }
    expect(await faultsInBoth(app)).toEqual([]);
  },
  SLOW_MS,
);

test("an input of the hour rate changes its terms and the grid, and undo brings all back", async () => {
  await tab("Hour rate").click();
  const before = await rate().textContent();
  await field("In use a year").fill("1800");
  await field("In use a year").press("Enter");
  await expect.poll(() => rate().textContent()).not.toBe(before);
  // Bench 1 by hand: (750 + 85 + 165 + 384) a year / 1800 h + 0.18 kW x 0.24 = 0.8121 per h.
  expect(await rate().textContent()).toBe("0.8121");
  expect(await app.page.locator('[data-row="0"][data-col="7"]').textContent()).toBe("0.81");
  await app.page.locator("[role=grid]").focus();
  await app.page.keyboard.press("Control+Z");
  await expect.poll(() => rate().textContent()).toBe(before);
});

test("a shift over midnight is drawn on both days, and calendars are added and deleted", async () => {
  await tab("Calendar").click();
  await app.page.getByRole("button", { name: "New calendar" }).click();
  const strip = app.page.locator(".week-strip svg");
  await expect.poll(() => strip.getAttribute("aria-label")).toContain("Mon: 08:00 to 16:00 1");
  await field("Starts").fill("22");
  await field("Starts").press("Enter");
  await field("Ends").fill("6:00");
  await field("Ends").press("Tab");
  await expect.poll(() => strip.getAttribute("aria-label")).toContain("Sat: 00:00 to 06:00 1");
  expect(await app.page.getByRole("complementary").textContent()).toContain("Passes midnight");
  await app.page
    .getByRole("group", { name: "Days on which shift 1 starts" })
    .getByRole("button", { name: "Sun" })
    .click();
  await expect.poll(() => strip.getAttribute("aria-label")).toContain("Mon: 00:00 to 06:00 1");
  await app.page.getByRole("complementary").getByRole("button", { name: "Delete" }).click();
  await expect.poll(() => strip.getAttribute("aria-label")).toContain("06:00 to 14:00 3");
});

test("with the keyboard alone a machine is added, named, given a nozzle and taken away again", async () => {
  const { keyboard } = app.page;
  await app.page.getByRole("button", { name: "New machine" }).focus();
  await keyboard.press("Enter");
  await expect.poll(() => app.page.locator(".grid-foot span").first().textContent()).toBe("13 machines");
  await tab("Now").focus();
  await keyboard.press("ArrowRight");
  await keyboard.press("ArrowRight");
  await app.page.getByRole("button", { name: "New nozzle" }).focus();
  await keyboard.press("Enter");
  await expect.poll(() => app.page.getByRole("group", { name: /^Nozzle / }).count()).toBe(2);
  await app.page.locator("[role=grid]").focus();
  await keyboard.press("Control+Delete");
  await expect.poll(() => app.page.locator(".grid-foot span").first().textContent()).toBe("12 machines");
});

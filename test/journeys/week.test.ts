import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type OpenedApp, openApp } from "./open-app.ts";

/** What takes a moment on a quiet machine may take seconds on a busy one. */
const SOON = { timeout: 30_000 };

let app: OpenedApp;

/** One week is planned once; the steps below follow one another as a planner's morning does. */
beforeAll(async () => {
  app = await openApp({ hash: "week" });
  await app.page.getByRole("heading", { name: /Who makes what, when/ }).waitFor();
}, 120_000);

afterAll(() => app?.close());

const builds = () => app.page.locator(".tree-row[data-level='2']");
const chosenRow = () => app.page.locator(".tree-row[aria-selected='true']");
const said = () => app.page.locator(".week > [role=status]");
const press = (keys: string) => app.page.keyboard.press(keys);

async function plan(button: string): Promise<void> {
  await app.page.getByRole("button", { name: button }).first().click();
  await app.page.getByLabel("Search for").fill("2");
  await app.page.getByRole("button", { name: "Start planning" }).click();
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Takes bar after bar and carries each to the right until it may stand there, puts it down, and gives what was said. */
async function dragToFreePlace(box: Box): Promise<string> {
  for (let y = box.y + 68; y < box.y + box.height; y += 50) {
    const verdict = await dragLastOf(box, y);
    if (verdict !== null) return verdict;
  }
  throw new Error("no build could be moved by the pointer");
}

/** The same with the last bar of one row; null: it cannot be moved. */
async function dragLastOf(box: Box, y: number): Promise<string | null> {
  const { mouse } = app.page;
  let x = box.x + box.width - 20;
  for (; x > box.x + 4; x -= 6) {
    await mouse.move(x, y);
    if ((await app.page.locator(".week-canvas.holds").count()) > 0) break;
  }
  if (x <= box.x + 4) return null;
  await mouse.down();
  for (let to = x + 6; to < Math.min(x + 240, box.x + box.width); to += 6) {
    await mouse.move(to, y);
    const verdict = await app.page.locator(".week-tip span").last().textContent();
    if (!/: (in time|late by)/.test(verdict ?? "")) continue;
    await mouse.up();
    return verdict;
  }
  await press("Escape");
  await mouse.up();
  return null;
}

describe("a morning of the planner", () => {
  test("without a plan the week shows what is committed, and makes the first plan at once the accepted one", async () => {
    await expect.poll(() => app.page.locator(".week").textContent()).toContain("No plan yet");
    await plan("Plan the week");
    await expect.poll(() => builds().count(), { timeout: 55_000 }).toBeGreaterThan(5);
    expect(await app.page.locator("h1").textContent()).toMatch(/\d+ builds, 7 days/);
  });

  test("by keyboard alone a build is chosen and said, and the picture follows", async () => {
    await app.page.locator(".tree-row[tabindex='0']").focus();
    await press("ArrowDown");
    await press("ArrowDown");
    expect(await chosenRow().getAttribute("aria-level")).toBe("2");
    const id = (await app.page.locator(".side h2").textContent()) ?? "";
    expect(await said().textContent()).toContain(`Chosen: ${id}`);
    await press("End");
    await expect.poll(() => app.page.locator(".side h2").textContent()).not.toBe(id);
    await press("Home");
    await press("ArrowLeft");
    expect(await chosenRow().getAttribute("aria-expanded")).toBe("false");
    await press("ArrowRight");
    expect(await chosenRow().getAttribute("aria-expanded")).toBe("true");
    await press("ArrowDown");
  });

  test("a click in the picture chooses the same as in the list", async () => {
    await press("ArrowDown");
    const id = await app.page.locator(".side h2").textContent();
    await press("Home");
    const box = await app.page.locator(".week-canvas").boundingBox();
    if (!box) throw new Error("no picture");
    let found: string | null = null;
    for (let x = 20; x < box.width && found !== id; x += 8) {
      await app.page.mouse.click(box.x + x, box.y + 68);
      const heading = app.page.locator(".side h2");
      found = (await heading.count()) > 0 ? await heading.textContent() : null;
    }
    expect(found).toBe(id);
  });

  test("pin and commit are single steps of undo", async () => {
    await app.page.locator(".tree-row[tabindex='0']").focus();
    await press("p");
    await expect.poll(() => chosenRow().textContent()).toContain("pinned");
    await press("c");
    await expect.poll(() => chosenRow().textContent()).toContain("committed, pinned");
    await press("Control+z");
    await expect.poll(() => chosenRow().textContent()).toContain("planned, pinned");
    await press("Control+z");
    await expect.poll(() => chosenRow().textContent()).not.toContain("pinned");
  });

  test("Alt and arrows take a build to another time, with the verdict before it is put down; undo brings it back", async () => {
    const before = await chosenRow().textContent();
    await press("Alt+ArrowRight");
    const verdict = app.page.locator(".week-hand [role=status]");
    await expect.poll(() => verdict.textContent()).toMatch(/in time|late by/);
    expect(await verdict.textContent()).toMatch(/costs|saves/);
    await press("Enter");
    await expect.poll(() => chosenRow().textContent()).toContain("committed, moved");
    await press("Control+z");
    await expect.poll(() => chosenRow().textContent()).toBe(before);
  });

  test("dragging shows the verdict too, and where it may not stand it stays", async () => {
    const before = await chosenRow().textContent();
    await press("0");
    const row = (await app.page.locator(".week-canvas").boundingBox()) ?? { x: 0, y: 0, width: 0 };
    await app.page.mouse.move(row.x + 4, row.y + 68);
    // The first bar of the first row: the pointer shows a hand over it.
    let x = 4;
    for (; x < row.width; x += 3) {
      await app.page.mouse.move(row.x + x, row.y + 68);
      if (await app.page.locator(".week-canvas.holds").count()) break;
    }
    await app.page.mouse.move(row.x + x + 4, row.y + 68);
    await app.page.mouse.down();
    await app.page.mouse.move(row.x + x + 40, row.y + 68, { steps: 4 });
    await app.page.mouse.move(row.x + x + 44, row.y + 70);
    await expect
      .poll(() => app.page.locator(".week-tip.refused").textContent())
      .toContain("cannot stand there");
    await app.page.mouse.up();
    await expect.poll(() => app.page.locator(".week-hand").count()).toBe(0);
    expect(await app.page.locator(".tree-row", { hasText: "moved" }).count()).toBe(0);
    expect(before).not.toBeNull();
  });

  test("commits everything up to a build in one step", async () => {
    await builds().nth(2).click();
    await app.page.getByRole("button", { name: "Commit up to here" }).click();
    const states = () => builds().evaluateAll((rows) => rows.slice(0, 4).map((row) => row.textContent ?? ""));
    await expect.poll(async () => (await states())[2]).toContain("committed");
    expect((await states()).map((text) => text.includes("committed"))).toEqual([true, true, true, false]);
    await app.page.getByRole("button", { name: "Undo" }).first().click();
    await expect.poll(async () => (await states())[2]).toContain("planned");
  });

  test("a build dragged to a free time is put down there, as its verdict said; typed at the same time it gets the same verdict", async () => {
    await press("0");
    const box = await app.page.locator(".week-canvas").boundingBox();
    if (!box) throw new Error("no picture");
    const verdict = await dragToFreePlace(box);
    await expect.poll(() => app.page.locator(".tree-row", { hasText: "moved" }).count()).toBe(1);
    const moved = app.page.locator(".tree-row", { hasText: "moved" });
    await moved.click();
    const [, machine = "", from = ""] = /^(\S+) from (.*?) to /.exec(verdict) ?? [];
    const landed = (await moved.textContent()) ?? "";
    expect(landed).toContain(from);
    await press("Control+z");
    await expect.poll(() => moved.count()).toBe(0);
    expect(await chosenRow().textContent()).not.toContain(from);
    await press("Alt+ArrowRight");
    const hand = app.page.locator(".week-hand");
    await hand.getByLabel("To machine").selectOption(machine);
    const field = hand.getByLabel("Set-up from");
    await field.fill("soon");
    await field.press("Enter");
    expect(await hand.textContent()).toContain("This is no date");
    const [, day = "", month = "", clock = ""] = /^\w+ (\d+) (\w+) (.*)$/.exec(from) ?? [];
    await field.fill(`2026-${month === "Dec" ? 12 : 11}-${day.padStart(2, "0")} ${clock}`);
    await field.press("Enter");
    await expect.poll(() => hand.getByRole("status").textContent()).toBe(verdict);
    await hand.getByRole("button", { name: "Commit it there" }).press("Enter");
    await expect.poll(() => moved.textContent()).toBe(landed);
    await press("Control+z");
    await expect.poll(() => moved.count()).toBe(0);
  });

  test("a second plan is compared with the first before it is accepted", async () => {
    await plan("Plan again");
    const compare = app.page.locator("section.week-compare");
    await compare.waitFor({ timeout: 55_000 });
    expect(await compare.textContent()).toMatch(/A new plan .*(moved|stays)/);
    expect(await compare.textContent()).toContain("late orders");
    expect(await compare.textContent()).toMatch(/Of \d+ builds planned before, \d+ stays?/);
    expect(await app.accessibilityFaults()).toEqual([]);
    const before = await app.page.locator(".band-plan b").textContent();
    await app.page.getByRole("button", { name: "Accept the new plan" }).click();
    await expect.poll(() => compare.count(), SOON).toBe(0);
    const after = await app.page.locator(".band-plan b").textContent();
    await press("Control+z");
    await expect.poll(() => app.page.locator(".band-plan b").textContent()).toBe(before);
    await press("Control+Shift+z");
    await expect.poll(() => app.page.locator(".band-plan b").textContent()).toBe(after);
  });

  test("has no fault of accessibility in light and dark, everything opened", async () => {
    await builds().nth(1).click();
    for (const summary of await app.page.locator("main summary").all()) await summary.click();
    await app.page.locator(".week-places li").first().waitFor({ timeout: 30_000 });
    expect(await app.accessibilityFaults()).toEqual([]);
    await app.page.emulateMedia({ colorScheme: "dark" });
    expect(await app.accessibilityFaults()).toEqual([]);
    await app.page.emulateMedia({ colorScheme: "light" });
  });

  test("the operators' list is seen before it is printed, and tables are given out", async () => {
    await app.page.getByRole("button", { name: "Give out" }).click();
    await app.page.getByRole("menuitem", { name: "Operators' list to print" }).click();
    const sheet = app.page.frameLocator(".sheet-preview");
    await sheet.locator("table.tasks").first().waitFor();
    expect(await sheet.locator("table.timeline").count()).toBe(0);
    await app.page.getByRole("button", { name: "Close" }).last().click();
    const download = app.page.waitForEvent("download");
    await app.page.getByRole("button", { name: "Give out" }).click();
    await app.page.getByRole("menuitem", { name: "Builds as iCalendar" }).click();
    expect((await download).suggestedFilename()).toMatch(/^week-2026-11-30\.ics$/);
  });
});

import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { readShop } from "../../core/shop/read-shop.ts";
import { aWorks } from "../fixtures/a-works.ts";
import { type OpenedApp, openApp } from "./open-app.ts";
import { cellOf } from "./order-grid.ts";
import { type OtherProgram, startOther } from "./other-program.ts";

/** Saving waits until edits rest, on a busy machine a while longer. */
const SOON = { timeout: 20_000 };

let dataFolder: string;
let file: string;
let app: OpenedApp | null = null;
let other: OtherProgram | null = null;

beforeEach(async () => {
  dataFolder = await mkdtemp(join(tmpdir(), "works-"));
  file = join(dataFolder, "test.shop.json");
  await writeFile(file, JSON.stringify(aWorks()));
});

afterEach(async () => {
  await other?.kill();
  await app?.close();
  [app, other] = [null, null];
  await rm(dataFolder, { recursive: true, force: true });
});

const copiesInFile = async (path = file) =>
  readShop(await readFile(path, "utf8")).shop?.orders[0]?.quantity ?? null;

async function typeCopies(page: Page, copies: string): Promise<void> {
  await page.getByRole("grid", { name: "Orders" }).waitFor();
  await cellOf(page, 1, 4).click();
  await page.keyboard.type(copies);
  await page.keyboard.press("Enter");
  expect(await cellOf(page, 1, 4).textContent()).toBe(copies);
}

/** Edits in a browser of its own, so that what the killed program leaves unanswered there is no error here. */
async function editAndCrash(copies: string): Promise<void> {
  other = await startOther(dataFolder, file);
  const first = await openApp({ file, dataFolder: await mkdtemp(join(dataFolder, "apart-")) });
  const page = await first.context.newPage();
  await page.goto(other.url);
  const committed = page.waitForResponse((answer) => answer.url().endsWith("/call/commit"));
  await typeCopies(page, copies);
  await (await committed).finished();
  await other.kill();
  await first.close();
}

describe("after a crash", () => {
  test("opening again tells what was found, and putting it back brings the edit into the shop and its file", async () => {
    const before = await copiesInFile();
    await editAndCrash("777");
    expect(await copiesInFile()).toBe(before);
    app = await openApp({ file, dataFolder });
    const dialog = app.page.getByRole("dialog", { name: "Edits were found that are not in the file" });
    await dialog.waitFor();
    expect(await dialog.textContent()).toContain("orders: 1 put");
    await app.page.keyboard.press("Escape");
    expect(await dialog.isVisible()).toBe(true);
    expect(await app.accessibilityFaults()).toEqual([]);
    await dialog.getByRole("button", { name: "Put them back" }).click();
    await expect.poll(() => cellOf(app!.page, 1, 4).textContent(), SOON).toBe("777");
    await expect.poll(() => copiesInFile(), SOON).toBe(777);
  });

  test("opening without the edits leaves the file as it was and the edits in a journal set aside", async () => {
    const before = await copiesInFile();
    await editAndCrash("778");
    app = await openApp({ file, dataFolder });
    await app.page.getByRole("button", { name: "Open without them" }).click();
    await expect.poll(() => cellOf(app!.page, 1, 4).textContent(), SOON).toBe(String(before));
    const kept = await readdir(dataFolder, { recursive: true });
    expect(kept.some((name) => /aside/.test(name))).toBe(true);
    expect(await copiesInFile()).toBe(before);
  });
});

describe("two programs on one file", () => {
  test("what the other saved is noticed, nothing is written over, and mine is kept under another name", async () => {
    app = await openApp({ file, dataFolder });
    await app.page.getByRole("grid", { name: "Orders" }).waitFor();
    other = await startOther(dataFolder, file);
    const theirs = await app.openWindow(other.url);
    await expect.poll(() => theirs.locator("body").textContent()).toContain("is open in another window");
    await typeCopies(theirs, "901");
    await expect.poll(() => copiesInFile(), SOON).toBe(901);
    const notice = app.page.getByRole("alert").filter({ hasText: "Keep mine" });
    await notice.waitFor(SOON);
    await typeCopies(app.page, "902");
    await app.page.waitForTimeout(2500);
    expect(await copiesInFile()).toBe(901);
    expect(await app.accessibilityFaults()).toEqual([]);
    await app.page.getByRole("button", { name: "Keep mine under another name" }).click();
    await notice.waitFor({ state: "hidden" });
    expect(await copiesInFile()).toBe(901);
    const mine = (await readdir(dataFolder, { recursive: true })).find((name) =>
      /mine.*shop\.json$/.test(name),
    );
    expect(await copiesInFile(join(dataFolder, mine ?? ""))).toBe(902);
    await theirs.close();
  });

  test("with nothing edited here the file is taken as it is now", async () => {
    app = await openApp({ file, dataFolder });
    await app.page.getByRole("grid", { name: "Orders" }).waitFor();
    const shop = aWorks();
    const orders = shop.orders.map((order) => ({ ...order, quantity: 55 }));
    await writeFile(file, JSON.stringify({ ...shop, orders }));
    await app.page.getByRole("button", { name: "Take the file as it is now" }).click(SOON);
    await expect.poll(() => cellOf(app!.page, 1, 4).textContent(), SOON).toBe("55");
    expect(await copiesInFile()).toBe(55);
  });
});

test("two windows of one program show each other's edits, and both are in the file", async () => {
  app = await openApp({ file, dataFolder });
  await app.page.getByRole("grid", { name: "Orders" }).waitFor();
  const second = await app.openWindow(app.url);
  await typeCopies(app.page, "61");
  await second.getByRole("grid", { name: "Orders" }).waitFor();
  await expect.poll(() => cellOf(second, 1, 4).textContent(), SOON).toBe("61");
  await cellOf(second, 2, 4).click();
  await second.keyboard.type("62");
  await second.keyboard.press("Enter");
  await expect.poll(() => cellOf(app!.page, 2, 4).textContent(), SOON).toBe("62");
  await expect
    .poll(
      async () =>
        readShop(await readFile(file, "utf8"))
          .shop?.orders.slice(0, 2)
          .map((order) => order.quantity),
      SOON,
    )
    .toEqual([61, 62]);
  await second.close();
});

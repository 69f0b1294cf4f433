import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { HOSTILE_NAMES } from "../fixtures/hostile-names.ts";
import type { OpenedApp } from "./open-app.ts";
import { cellOf, openOrders, orderCountOf } from "./order-grid.ts";

let app: OpenedApp;

beforeEach(async () => {
  app = await openOrders();
});

afterEach(() => app.close());

const cell = (row: number, column: number) => cellOf(app.page, row, column);
const orderCount = () => orderCountOf(app.page);

async function takeIn(name: string, buffer: Buffer): Promise<void> {
  const chooser = app.page.waitForEvent("filechooser");
  await app.page.getByRole("button", { name: "Take in a table" }).click();
  await (await chooser).setFiles({ name, mimeType: "application/octet-stream", buffer });
}

const dialog = () => app.page.getByRole("dialog");
const readIt = async () => {
  await app.page.getByRole("button", { name: "Read the table" }).click();
  await app.page.getByRole("button", { name: "Take them in" }).waitFor({ timeout: 60_000 });
};
const takeThem = () => app.page.getByRole("button", { name: "Take them in" }).click();

describe("a table taken in", () => {
  test("in Windows letters, with semicolons and decimal commas, is read right and remembered", async () => {
    const csv =
      "Auftrag;Teil;Menge;Liefertermin;Preis\r\nMüller-1;clip;1.200;4.12.2026;12,50\r\nMüller-2;clip;3;5.12.2026 10:00;0,75\r\n";
    await takeIn("orders.csv", Buffer.from(csv, "latin1"));
    await dialog().waitFor();
    for (const [title, head] of [
      ["Order", "Auftrag"],
      ["Part", "Teil"],
      ["Copies", "Menge"],
      ["Due", "Liefertermin"],
      ["Price, each", "Preis"],
    ]) {
      await app.page.getByLabel(`Column for ${title}`).selectOption({ label: head! });
    }
    expect(await app.accessibilityFaults()).toEqual([]);
    await readIt();
    expect(await dialog().textContent()).toContain("Every cell could be read.");
    await takeThem();
    await expect.poll(orderCount).toBe(122);
    await app.page.locator("[role=grid]").focus();
    await app.page.keyboard.press("Control+End");
    expect(await cell(121, 1).textContent()).toBe("Müller-1");
    expect(await cell(121, 4).textContent()).toBe("1,200");
    expect(await cell(121, 9).textContent()).toBe("12.50");
    expect(await cell(122, 5).textContent()).toBe("Sat 5 Dec 10:00");
    await takeIn("more.csv", Buffer.from(csv.replaceAll("Müller", "Möller"), "latin1"));
    await readIt();
    expect(await dialog().textContent()).toContain("2 new orders");
    await app.page.keyboard.press("Escape");
    await dialog().waitFor({ state: "hidden" });
    await app.page.locator("[role=grid]").focus();
    await app.page.keyboard.press("Control+Z");
    await expect.poll(orderCount).toBe(120);
  });

  test("with dates that can be read two ways asks, and with faults lists each and loses nothing", async () => {
    const csv =
      "Order,Part,Quantity,Due\nX-1,clip,5,03/12/2026\nX-2,clip,lots,04/12/2026\nO-001,clip,7,05/12/2026\n";
    await takeIn("orders.csv", Buffer.from(csv));
    await dialog().waitFor();
    expect(await app.page.getByRole("button", { name: "Read the table" }).isDisabled()).toBe(true);
    await app.page.getByLabel('"03/12/2026" is').selectOption("dmy");
    await readIt();
    expect(await dialog().textContent()).toContain("2 new orders, 1 put in place");
    expect(await app.page.locator("[role=dialog] tbody tr").allTextContents()).toEqual([
      expect.stringContaining('3Copies"lots" is no quantity'),
    ]);
    await takeThem();
    await expect.poll(orderCount).toBe(122);
    expect(await cell(1, 4).textContent()).toBe("7");
    await app.page.locator("[role=grid]").focus();
    await app.page.keyboard.press("Control+End");
    expect(await cell(122, 4).textContent()).toBe("lots");
  });

  test("of 10,000 lines is read beside the hands, and one undo takes it back", async () => {
    const rows = Array.from(
      { length: 10_000 },
      (_, at) => `B-${at},clip,${(at % 90) + 1},2026-12-04 12:00,Customer ${at}`,
    );
    await takeIn("big.csv", Buffer.from(["Order,Part,Quantity,Due,Customer", ...rows].join("\n")));
    await readIt();
    await takeThem();
    await expect.poll(orderCount, { timeout: 20_000 }).toBe(10_120);
    await app.page.locator("[role=grid]").focus();
    await app.page.keyboard.press("Control+End");
    expect(await cell(10_120, 1).textContent()).toBe("B-9999");
    expect(await app.page.locator(".grid-row").count()).toBeLessThan(80);
    await app.page.keyboard.press("Control+Z");
    await expect.poll(orderCount, { timeout: 20_000 }).toBe(120);
  });

  test("that was given out as XLSX or CSV comes back the same", async () => {
    for (const kind of ["XLSX", "CSV"]) {
      const before = await app.page.locator(".grid-canvas").textContent();
      const waiting = app.page.waitForEvent("download");
      await app.page.getByRole("button", { name: "Give out" }).click();
      await app.page.getByRole("menuitem", { name: `Orders as ${kind}` }).click();
      const path = await (await waiting).path();
      const chooser = app.page.waitForEvent("filechooser");
      await app.page.getByRole("button", { name: "Take in a table" }).click();
      const { readFile } = await import("node:fs/promises");
      await (await chooser).setFiles({
        name: `orders.${kind.toLowerCase()}`,
        mimeType: "",
        buffer: await readFile(path),
      });
      await readIt();
      expect(await dialog().textContent()).toContain("0 new orders, 120 put in place");
      expect(await dialog().textContent()).toContain("Every cell could be read.");
      await takeThem();
      expect(await app.page.locator(".grid-canvas").textContent()).toBe(before);
    }
  });

  test("that is no workbook, or empty, is refused in a sentence", async () => {
    await takeIn("broken.xlsx", Buffer.from("no workbook"));
    await app.page.getByText("broken.xlsx is no XLSX workbook that can be read").waitFor();
    await takeIn("empty.csv", Buffer.from("\n\n"));
    await app.page.getByText("empty.csv is empty").waitFor();
  });
});

test("hostile names are shown as text and break nothing", async () => {
  const rows = HOSTILE_NAMES.map(
    (name, at) => `H-${at},clip,1,2026-12-04 12:00,"${name.replaceAll('"', '""')}"`,
  );
  await takeIn("hostile.csv", Buffer.from(["Order,Part,Quantity,Due,Customer", ...rows].join("\n")));
  await readIt();
  await takeThem();
  await expect.poll(orderCount).toBe(120 + HOSTILE_NAMES.length);
  const { keyboard } = app.page;
  await app.page.locator("[role=grid]").focus();
  await keyboard.press("Control+End");
  expect(await app.page.locator(".grid script, .grid img").count()).toBe(0);
  expect(await cell(121, 6).textContent()).toBe("<script>alert(1)</script>");
  expect((await cell(120 + HOSTILE_NAMES.length, 6).textContent())?.length).toBeLessThan(200);
  const heights = await app.page
    .locator(".grid-row")
    .evaluateAll((found) => [...new Set(found.map((row) => row.getBoundingClientRect().height))]);
  expect(heights).toHaveLength(1);
  expect(await app.page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  for (let step = 0; step < HOSTILE_NAMES.length; step += 1) await keyboard.press("ArrowUp");
  expect(await app.accessibilityFaults()).toEqual([]);
});

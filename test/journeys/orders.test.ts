import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { type OpenedApp, pasteText } from "./open-app.ts";
import { cellOf, openOrders, orderCountOf } from "./order-grid.ts";

let app: OpenedApp;

beforeEach(async () => {
  app = await openOrders();
});

afterEach(() => app.close());

const cell = (row: number, column: number) => cellOf(app.page, row, column);
const orderCount = () => orderCountOf(app.page);

function lines(count: number): string {
  const head = "Order\tPart\tCopies\tDue\tCustomer";
  const rows = Array.from(
    { length: count },
    (_, at) => `P-${at + 1}\tclip\t${at + 1}\t2026-12-04 12:00\tCustomer ${at + 1}`,
  );
  return [head, ...rows].join("\n");
}

describe("the first start", () => {
  test("shows the orders of the demo shop, saved, without a fault of accessibility, in light and dark", async () => {
    expect(await app.page.locator("h1").textContent()).toContain("What must be made by when?");
    expect(await cell(1, 1).textContent()).toBe("O-001");
    expect(await orderCount()).toBe(120);
    expect(await app.page.locator(".saved").textContent()).toBe("All edits are saved");
    expect(await app.accessibilityFaults()).toEqual([]);
    await app.page.emulateMedia({ colorScheme: "dark" });
    expect(await app.accessibilityFaults()).toEqual([]);
  });
});

describe("pasting 200 orders", () => {
  test("below the last line adds them, and one undo takes all back", async () => {
    await cell(1, 1).click();
    await app.page.keyboard.press("Control+End");
    await app.page.keyboard.press("Home");
    await app.page.keyboard.press("ArrowDown");
    const orderIds = () => app.page.evaluate(() => document.querySelectorAll(".grid-row").length);
    expect(await orderIds()).toBeLessThan(60);
    const text = lines(200)
      .split("\n")
      .map((line) => line.split("\t"))
      .map(([id, part, copies, due, customer]) => [id, "", part, copies, due, customer].join("\t"));
    // The last line is replaced by the first of the pasted ones: 199 are new.
    await pasteText(app.page, text.slice(1).join("\n"));
    await expect.poll(orderCount).toBe(319);
    expect(await app.page.getByRole("log").textContent()).not.toContain("fault");
    await app.page.keyboard.press("Control+Z");
    await expect.poll(orderCount).toBe(120);
    await app.page.keyboard.press("Control+Shift+Z");
    await expect.poll(orderCount).toBe(319);
  });

  test("with cells that cannot be read keeps their texts, marked, until they are corrected", async () => {
    await cell(2, 4).click();
    await pasteText(app.page, "12\nmany\n1.5\n14");
    await expect.poll(() => cell(3, 4).textContent()).toBe("many");
    expect(await cell(3, 4).getAttribute("aria-invalid")).toBe("true");
    expect(await cell(5, 4).textContent()).toBe("14");
    await cell(3, 4).click();
    expect(await app.page.locator(".grid-foot [role=status]").textContent()).toContain(
      '"many" is no quantity',
    );
    await app.page.keyboard.type("33");
    await app.page.keyboard.press("Enter");
    expect(await cell(3, 4).textContent()).toBe("33");
    expect(await cell(3, 4).getAttribute("aria-invalid")).toBeNull();
  });

  test("asks once which comes first, the day or the month", async () => {
    await cell(1, 5).click();
    await pasteText(app.page, "03/12/2026");
    await app.page.getByRole("button", { name: /^day first: Thu 3 Dec/ }).click();
    await expect.poll(() => cell(1, 5).textContent()).toBe("Thu 3 Dec 16:00");
    await cell(2, 5).click();
    await pasteText(app.page, "04/12/2026 10:00");
    await expect.poll(() => cell(2, 5).textContent()).toBe("Fri 4 Dec 10:00");
  });
});

describe("with the keyboard alone", () => {
  test("cells are edited, filled down, copied, cleared, lines added, duplicated and deleted, and all of it undone", async () => {
    const { keyboard } = app.page;
    await app.page.locator("[role=grid]").focus();
    const before = await app.page.evaluate(() => document.querySelector(".grid-canvas")?.textContent);
    await keyboard.press("Control+Home");
    for (let step = 0; step < 3; step += 1) await keyboard.press("ArrowRight");
    await keyboard.press("F2");
    await keyboard.press("Control+A");
    await keyboard.type("7");
    await keyboard.press("Enter");
    expect(await cell(1, 4).textContent()).toBe("7");
    await keyboard.press("ArrowUp");
    await keyboard.press("Shift+ArrowDown");
    await keyboard.press("Shift+ArrowDown");
    await keyboard.press("Control+D");
    expect(await cell(3, 4).textContent()).toBe("7");
    await keyboard.press("Control+C");
    await keyboard.press("Control+ArrowDown");
    await keyboard.press("Control+V");
    await expect.poll(orderCount).toBe(122);
    await keyboard.press("Control+Home");
    await keyboard.press("Insert");
    await expect.poll(orderCount).toBe(123);
    await keyboard.press("Control+Shift+D");
    await expect.poll(orderCount).toBe(124);
    await keyboard.press("Control+Delete");
    await expect.poll(orderCount).toBe(123);
    await keyboard.press("End");
    await keyboard.type("hello");
    await keyboard.press("Tab");
    await keyboard.press("Delete");
    for (let step = 0; step < 9; step += 1) await keyboard.press("Control+Z");
    await expect.poll(orderCount).toBe(120);
    await keyboard.press("Control+Home");
    expect(await app.page.evaluate(() => document.querySelector(".grid-canvas")?.textContent)).toBe(before);
    expect(await app.page.getByRole("button", { name: "Undo", exact: true }).isDisabled()).toBe(true);
  });

  test("columns are sorted and sifted from their heads", async () => {
    const { keyboard } = app.page;
    await app.page.locator("[role=grid]").focus();
    await keyboard.press("Control+Home");
    await keyboard.press("ArrowUp");
    for (let step = 0; step < 3; step += 1) await keyboard.press("ArrowRight");
    await keyboard.press("Enter");
    expect(await app.page.getByRole("columnheader", { name: /^Copies/ }).getAttribute("aria-sort")).toBe(
      "ascending",
    );
    const least = Number(await cell(1, 4).textContent());
    await keyboard.press("Enter");
    expect(Number(await cell(1, 4).textContent())).toBeGreaterThan(least);
    await keyboard.press("F2");
    await keyboard.type("> 100");
    await keyboard.press("Enter");
    expect(await orderCount()).not.toBe(120);
    expect(await app.page.locator("[role=grid]").evaluate((grid) => grid === document.activeElement)).toBe(
      true,
    );
  });

  test("the list of keys opens with F1 and closes with Escape", async () => {
    await app.page.locator("[role=grid]").focus();
    await app.page.keyboard.press("F1");
    const dialog = app.page.getByRole("dialog", { name: "Keys" });
    await dialog.waitFor();
    expect(await app.accessibilityFaults()).toEqual([]);
    await app.page.keyboard.press("Escape");
    await dialog.waitFor({ state: "hidden" });
  });
});

test("units and language of numbers change everywhere at once", async () => {
  await app.page.getByRole("button", { name: /Units and look/ }).click();
  const facts = app.page.locator("[role=dialog] .pairs");
  expect(await facts.textContent()).toContain("1,235\u202fmm");
  await choose("Units", "in and lb");
  expect(await facts.textContent()).toContain("48.602\u202fin");
  await choose("Numbers", "1.234,5");
  expect(await facts.textContent()).toContain("1.234,50\u202fEUR");
  await choose("Light or dark", "dark");
  expect(await app.page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe(
    "rgb(21, 25, 27)",
  );
  expect(await app.accessibilityFaults()).toEqual([]);
  await app.page.keyboard.press("Escape");
  expect(await cell(1, 8).textContent()).toBe("15,00");
});

async function choose(label: string, choice: string): Promise<void> {
  await app.page.getByLabel(label, { exact: true }).selectOption({ label: choice });
}

import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, describe, expect, test } from "vitest";
import type { PlanDocument } from "../../core/plan/plan-document.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { OpenedApp } from "./open-app.ts";
import { go, openPlanned, SLOW_MS } from "./open-page.ts";
import { cellOf, openOrders } from "./order-grid.ts";

let app: OpenedApp | null = null;

afterEach(async () => {
  await app?.close();
  app = null;
});

/** What takes a moment on a quiet machine may take seconds on a busy one. */
const SOON = { timeout: 30_000 };

const BODIES = fileURLToPath(new URL("../../assets/bodies/", import.meta.url));

/** Drops a body of the demo shop on the page, as a file manager does. */
async function dropBody({ page }: OpenedApp, name: string): Promise<void> {
  const bytes = await readFile(BODIES + name);
  const transfer = await page.evaluateHandle(
    ({ base64, called }) => {
      const held = new DataTransfer();
      const content = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      held.items.add(new File([content], called));
      return held;
    },
    { base64: bytes.toString("base64"), called: `new ${name}` },
  );
  await page.locator("main").dispatchEvent("drop", { dataTransfer: transfer });
}

test(
  "a 3MF file and an STL file dropped on the Orders page become parts, and the Parts page shows routes of each",
  async () => {
    app = await openOrders();
    await dropBody(app, "pipe-saddle.3mf");
    await expect.poll(() => app!.page.locator("body").textContent(), SOON).toContain("Measured and taken");
    await dropBody(app, "gauge.stl");
    await app.page.getByRole("button", { name: "Take it so" }).click(SOON);
    await expect
      .poll(() => app!.page.getByRole("button", { name: /^Undo: new part/ }).getAttribute("aria-label"), {
        timeout: 30_000,
      })
      .toContain("new-gauge");
    await go(app, "parts");
    const routes = app.page.getByRole("complementary").locator(".ways tbody tr b");
    for (const [name, key] of [
      ["new gauge", "Control+End"],
      ["new pipe-saddle", "ArrowUp"],
    ] as const) {
      await app.page.getByRole("grid", { name: "Parts" }).focus();
      await app.page.keyboard.press(key);
      await expect.poll(() => app!.page.locator("aside h2").textContent(), SOON).toBe(name);
      await expect.poll(() => routes.first().textContent(), SOON).toMatch(/\d/);
    }
  },
  SLOW_MS,
);

describe("with the keyboard alone", () => {
  test(
    "from the first start to an accepted plan: planned, an order changed, planned again, compared and accepted",
    async () => {
      app = await openOrders();
      const { keyboard } = app.page;
      const focused = () =>
        app!.page.evaluate(() => {
          const { activeElement: at } = document;
          if (!at || at === document.body) return "";
          return `${at.getAttribute("role") ?? at.tagName} ${at.getAttribute("aria-label") ?? at.textContent}`;
        });
      const tabTo = async (wanted: RegExp): Promise<void> => {
        for (let step = 0; step < 80; step += 1) {
          if (wanted.test(await focused())) return;
          await keyboard.press("Tab");
        }
        throw new Error(`Tab never came to ${String(wanted)}; it is at ${await focused()}`);
      };
      const plan = async (): Promise<void> => {
        await keyboard.press("Control+Enter");
        await app!.page.getByRole("dialog", { name: "Plan" }).waitFor();
        await app!.page.waitForTimeout(100);
        for (let step = 0; step < 6 && !(await focused()).includes("INPUT"); step += 1)
          await keyboard.press("Tab");
        await keyboard.press("Tab");
        await keyboard.press("Tab");
        await keyboard.press("Control+A");
        await keyboard.type("2");
        await tabTo(/^BUTTON.*Start planning/);
        await keyboard.press("Enter");
      };
      await plan();
      await expect
        .poll(() => app!.page.locator(".band-plan").textContent(), { timeout: 55_000 })
        .toContain("Plan again");
      await tabTo(/^grid Orders/);
      await keyboard.press("Control+Home");
      for (let step = 0; step < 3; step += 1) await keyboard.press("ArrowRight");
      await keyboard.type("9");
      await keyboard.press("Enter");
      expect(await cellOf(app.page, 1, 4).textContent()).toBe("9");
      await plan();
      await keyboard.press("Alt+5");
      const compare = app.page.locator("section.week-compare");
      await compare.waitFor({ timeout: 55_000 });
      expect(await compare.textContent()).toMatch(/builds? planned before/);
      await tabTo(/^BUTTON.*Accept the new plan/);
      await keyboard.press("Enter");
      await expect.poll(() => compare.count(), SOON).toBe(0);
      await keyboard.press("Control+Z");
      await app.page.getByRole("button", { name: "Redo: the new plan" }).waitFor(SOON);
    },
    SLOW_MS,
  );
});

/** What the shop file and the plan beside it hold. */
async function kept({ dataFolder }: OpenedApp): Promise<string> {
  const read = (name: string) => readFile(join(dataFolder, name), "utf8").catch(() => "null");
  const { parts, orders, machines, feedstocks, builds } = JSON.parse(await read("test.shop.json")) as Shop;
  const plan = JSON.parse(await read("test.plan.json")) as PlanDocument;
  const places = plan.builds.map(({ id, machineId, setUpStart }) => [id, machineId, setUpStart]);
  return JSON.stringify([{ parts, orders, machines, feedstocks, builds }, plan.cost, places]);
}

test(
  "everything done on any page is undone step by step, the accepted plan too, and done again",
  async () => {
    app = await openPlanned("orders");
    const { page } = app;
    const { keyboard } = page;
    const undo = page.getByRole("button", { name: /^Undo/ });
    const saved = async (): Promise<void> => {
      await keyboard.press("Control+S");
      await expect.poll(() => page.locator(".saved").textContent(), SOON).toBe("All edits are saved");
      await page.waitForTimeout(500);
    };
    await cellOf(page, 1, 4).click();
    await keyboard.type("13");
    await keyboard.press("Enter");
    await keyboard.press("Control+Z");
    await saved();
    const before = await kept(app);
    await keyboard.press("Control+Shift+Z");
    await go(app, "parts");
    await page.getByRole("button", { name: "New part" }).click();
    await go(app, "machines");
    await page.getByRole("button", { name: "New machine" }).click();
    await go(app, "feedstock");
    await page.locator('[data-row="0"][data-col="4"]').click();
    await keyboard.type("33");
    await keyboard.press("Enter");
    await go(app, "week");
    await page.locator(".tree-row[data-level='2']").nth(1).click();
    await keyboard.press("p");
    await page.getByRole("button", { name: "Plan again" }).first().click();
    await page.getByLabel("Search for").fill("1");
    await page.getByRole("button", { name: "Start planning" }).click();
    await page.getByRole("button", { name: "Accept the new plan" }).click({ timeout: 55_000 });
    await expect.poll(() => undo.getAttribute("aria-label"), SOON).toBe("Undo: the new plan");
    await saved();
    const after = await kept(app);
    await page.locator(".tree-row[tabindex='0']").focus();
    let steps = 0;
    for (; (await undo.isEnabled()) && steps < 20; steps += 1) await keyboard.press("Control+Z");
    expect(steps).toBe(6);
    await saved();
    expect(await kept(app)).toBe(before);
    for (let step = 0; step < steps; step += 1) await keyboard.press("Control+Shift+Z");
    await expect.poll(() => undo.getAttribute("aria-label"), SOON).toBe("Undo: the new plan");
    await saved();
    expect(await kept(app)).toBe(after);
  },
  SLOW_MS,
);

describe("the preview of a sheet", () => {
  test.each(["Week sheet to print", "Operators' list to print"])(
    "%s is what is printed: a PDF with pages comes of it",
    async (entry) => {
      app = await openPlanned("week");
      const { page } = app;
      await page.getByRole("button", { name: "Give out" }).click();
      await page.getByRole("menuitem", { name: entry }).click();
      const frame = page.locator("iframe.sheet-preview");
      await frame.waitFor();
      const html = (await frame.getAttribute("srcdoc")) ?? "";
      expect(html).toContain("Quillbank Works");
      const printed = await app.context.newPage();
      await printed.setContent(html);
      const pdf = await printed.pdf({ preferCSSPageSize: true, printBackground: true });
      expect(pdf.subarray(0, 5).toString()).toBe("%PDF-");
      expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0).toBeGreaterThan(0);
      await printed.close();
      await page.getByRole("button", { name: "Keep as PDF" }).click();
      await expect.poll(() => page.locator("body").textContent()).toContain("Choose PDF as the printer");
    },
  );
});

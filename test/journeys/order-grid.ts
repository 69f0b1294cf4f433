import type { Locator, Page } from "playwright-core";
import { type OpenedApp, openApp } from "./open-app.ts";

/** The demo shop, with its orders in sight. */
export async function openOrders(): Promise<OpenedApp> {
  const app = await openApp();
  await app.page.getByRole("grid", { name: "Orders" }).waitFor();
  return app;
}

/** What a cell of the grid shows, by the numbers of row and column as shown, both from 1. */
export function cellOf(page: Page, row: number, column: number): Locator {
  return page.locator(`[data-row="${row - 1}"][data-col="${column - 1}"]`);
}

/** Orders in the grid, as its foot says. */
export async function orderCountOf(page: Page): Promise<number> {
  const words = await page.locator(".grid-foot span").first().textContent();
  return Number(words?.replace(/\D/g, ""));
}

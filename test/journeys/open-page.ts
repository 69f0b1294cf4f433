import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { aPlan } from "../fixtures/a-plan.ts";
import { aWorks } from "../fixtures/a-works.ts";
import { type AppOptions, type OpenedApp, openApp } from "./open-app.ts";

/** Judging a whole page takes seconds on a busy machine. */
export const SLOW_MS = 180_000;

/** Opens a page by its address. Example: `await openPage("machines")` on the demo shop. */
export async function openPage(id: string, options: AppOptions = {}): Promise<OpenedApp> {
  const app = await openApp(options);
  await app.page.getByRole("grid", { name: "Orders" }).waitFor();
  await app.page.evaluate((hash) => void (location.hash = hash), `#${id}`);
  return app;
}

/** The same on invented works with a plan kept beside their file. */
export async function openPlanned(id: string, options: AppOptions = {}): Promise<OpenedApp> {
  const shop = aWorks();
  const dataFolder = await mkdtemp(join(tmpdir(), "works-"));
  await writeFile(join(dataFolder, "test.plan.json"), JSON.stringify(aPlan(shop)));
  const app = await openPage(id, { ...options, shop, dataFolder });
  return {
    ...app,
    close: () => app.close().finally(() => rm(dataFolder, { recursive: true, force: true })),
  };
}

/** Faults of accessibility in light and in dark. */
export async function faultsInBoth(app: OpenedApp): Promise<string[]> {
  await app.page.emulateMedia({ colorScheme: "light" });
  const light = await app.accessibilityFaults();
  await app.page.emulateMedia({ colorScheme: "dark" });
  return [...light, ...(await app.accessibilityFaults())];
}

/** Goes to another page of the open program. */
export async function go({ page }: OpenedApp, id: string): Promise<void> {
  await page.evaluate((hash) => void (location.hash = hash), `#${id}`);
  await page.locator(`.rooms a[href="#${id}"][aria-current=page]`).waitFor();
  await page.locator("main h1").waitFor();
}

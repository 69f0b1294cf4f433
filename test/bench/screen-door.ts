import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import type { PlanDocument } from "../../core/plan/plan-document.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { findChromium } from "../journeys/find-chromium.ts";

const DOOR = pathToFileURL(fileURLToPath(new URL("../../dist/browser-door.js", import.meta.url))).href;
const PROGRAM =
  "const [, door, file] = process.argv; const { openBrowserDoor } = await import(door);" +
  'console.log((await openBrowserDoor(file || null, "a bench")).url);';

/** The built program in a process of its own, open in a browser. */
export interface BenchedScreen {
  readonly page: Page;
  /** from the start of the process until the first order can be read and edited, ms */
  readonly startMs: number;
  /** memory that the program's process holds, MB; null where the system does not tell */
  readonly hostMb: () => number | null;
  /** memory of the window's own objects, after cleaning up, MB */
  readonly heapMb: () => Promise<number>;
  readonly close: () => Promise<void>;
}

export interface BenchedFiles {
  /** left out: the first start, with the demo shop */
  readonly shop?: Shop;
  readonly plan?: PlanDocument;
}

/** One browser for all measures. */
export function launchBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: findChromium(), args: ["--no-sandbox"] });
}

/** Starts the built program on a fresh folder and opens its Orders page. */
export async function openBenched(browser: Browser, { shop, plan }: BenchedFiles): Promise<BenchedScreen> {
  const folder = mkdtempSync(join(tmpdir(), "screen-bench-"));
  const file = shop ? join(folder, "bench.shop.json") : "";
  if (shop) writeFileSync(file, JSON.stringify(shop));
  if (plan) writeFileSync(join(folder, "bench.plan.json"), JSON.stringify(plan));
  const context = await browser.newContext({ viewport: { width: 1920, height: 1080 }, locale: "en-GB" });
  const page = await context.newPage();
  const startedMs = performance.now();
  const child = spawn(process.execPath, ["--input-type=module", "-e", PROGRAM, DOOR, file], {
    env: { ...process.env, HOPPER_AND_SPOOL_DATA: join(folder, "data") },
    stdio: ["ignore", "pipe", "inherit"],
  });
  const url = await new Promise<string>((resolve) =>
    child.stdout.once("data", (told: Buffer) => resolve(told.toString().trim())),
  );
  await page.goto(url);
  await page.locator('[data-row="0"][data-col="0"]').waitFor();
  return {
    page,
    startMs: performance.now() - startedMs,
    hostMb: () => residentMb(child.pid ?? 0),
    heapMb: () => heapMb(page),
    close: async () => {
      await context.close();
      child.kill();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function residentMb(pid: number): number | null {
  const status = `/proc/${pid}/status`;
  if (!existsSync(status)) return null;
  const kb = /VmRSS:\s+(\d+) kB/.exec(readFileSync(status, "utf8"))?.[1];
  return kb === undefined ? null : Number(kb) / 1024;
}

async function heapMb(page: Page): Promise<number> {
  const session = await page.context().newCDPSession(page);
  await session.send("HeapProfiler.collectGarbage");
  const { usedSize } = await session.send("Runtime.getHeapUsage");
  return usedSize / 1024 ** 2;
}

import { readFileSync } from "node:fs";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from "playwright-core";
import { afterAll, inject } from "vitest";
import type { Shop } from "../../core/shop/shop.ts";
import { makeHost } from "../../electron/host.ts";
import { startLoopback } from "../../electron/loopback.ts";
import { findChromium } from "./find-chromium.ts";

const ASSETS = fileURLToPath(new URL("../../assets", import.meta.url));
const AXE = readFileSync(fileURLToPath(import.meta.resolve("axe-core/axe.min.js")), "utf8");

export interface AppOptions {
  /** opens this shop; without it the program starts as on its first day, with the demo shop */
  readonly shop?: Shop;
  /** opens this file, which is there already */
  readonly file?: string;
  /** the program's own folder, to start again where another run ended; without it a fresh one */
  readonly dataFolder?: string;
  /** of the page: #week */
  readonly hash?: string;
  readonly context?: BrowserContextOptions;
}

/** The program in a real browser over the loopback door. */
export interface OpenedApp {
  readonly page: Page;
  readonly context: BrowserContext;
  /** another window in the same browser, at an address of this or another program; its errors count too */
  readonly openWindow: (url: string) => Promise<Page>;
  readonly url: string;
  readonly dataFolder: string;
  /** what the console or the page called an error so far; `close` fails where there is any */
  readonly errors: string[];
  /** rules of accessibility that are broken now, in words; of all, or of those named */
  readonly accessibilityFaults: (...rules: string[]) => Promise<string[]>;
  /** ends everything and throws where the console had errors */
  readonly close: () => Promise<void>;
}

/**
 * Starts the host on a temporary folder, serves the built screen and opens it in Chromium. Example:
 * `const app = await openApp(); await app.page.getByRole("grid", { name: "Orders" }).waitFor(); await app.close();`
 */
export async function openApp(options: AppOptions = {}): Promise<OpenedApp> {
  const dataFolder = options.dataFolder ?? (await mkdtemp(join(tmpdir(), "works-")));
  const launchFile = options.file ?? (options.shop ? join(dataFolder, "test.shop.json") : null);
  if (launchFile && options.shop) await writeFile(launchFile, JSON.stringify(options.shop));
  const host = makeHost({
    data: dataFolder,
    assets: ASSETS,
    info: { door: "browser", reason: "a test", version: "0.0.0", platform: "test" },
    launchFile,
    dialogs: null,
    makePdf: null,
    now: () => Date.now(),
  });
  const door = await startLoopback(host.methods, inject("screenFolder"));
  const browser = await sharedBrowser();
  const context = await browser.newContext({
    viewport: { width: 1280, height: 720 },
    locale: "en-GB",
    timezoneId: "America/Los_Angeles",
    permissions: ["clipboard-read", "clipboard-write"],
    ...options.context,
  });
  const errors: string[] = [];
  const openWindow = (url: string): Promise<Page> => listenedPage(context, url, errors);
  const page = await openWindow(door.url);
  if (options.hash) await page.evaluate((hash) => void (location.hash = hash), options.hash);
  return {
    page,
    context,
    openWindow,
    url: door.url,
    dataFolder,
    errors,
    accessibilityFaults: (...rules) => accessibilityFaults(page, rules),
    close: async () => {
      await context.close();
      await door.end();
      await host.end();
      if (options.dataFolder === undefined) await rm(dataFolder, { recursive: true, force: true });
      if (errors.length > 0) throw new Error(`The console had errors: ${errors.join("; ")}`);
    },
  };
}

async function listenedPage(context: BrowserContext, url: string, errors: string[]): Promise<Page> {
  const page = await context.newPage();
  page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
  page.on("pageerror", (error) => errors.push(error.stack ?? String(error)));
  await page.goto(url);
  return page;
}

let launched: Browser | null = null;

/** One browser for all journeys of a file; each has a context of its own, and with it storage and pages. */
async function sharedBrowser(): Promise<Browser> {
  launched ??= await chromium.launch({ executablePath: findChromium(), args: ["--no-sandbox"] });
  return launched;
}

afterAll(async () => {
  await launched?.close();
  launched = null;
});

/** Puts text on the clipboard and presses the keys that paste it. */
export async function pasteText(page: Page, text: string): Promise<void> {
  await page.evaluate((content) => navigator.clipboard.writeText(content), text);
  await page.keyboard.press("Control+V");
}

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly help: string;
    readonly nodes: readonly { readonly html: string }[];
  }[];
}

const ALL = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

async function accessibilityFaults(page: Page, rules: readonly string[]): Promise<string[]> {
  await page.evaluate(AXE);
  const runOnly = rules.length > 0 ? { type: "rule", values: rules } : ALL;
  const { violations } = await page.evaluate<AxeResult>(`axe.run(${JSON.stringify({ runOnly })})`);
  return violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ html }) => html.slice(0, 160)).join(" | ")}`,
  );
}

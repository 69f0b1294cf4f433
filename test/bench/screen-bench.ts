import { existsSync, readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import type { Browser } from "playwright-core";
import { readShop } from "../../core/shop/read-shop.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { aCrowdedPlan, aCrowdedShop } from "../fixtures/a-crowded-week.ts";
import { type BenchCall, type BenchRow, atMost, median, told } from "./bench-row.ts";
import { makeShop } from "./make-shop.ts";
import { launchBrowser, openBenched } from "./screen-door.ts";
import { p95FrameMs, WATCH } from "./screen-frames.ts";

const SCREEN = fileURLToPath(new URL("../../dist/screen/assets", import.meta.url));
const DEMO = fileURLToPath(new URL("../../assets/demo.shop.json", import.meta.url));

const START_S = 2;
const FRAME_MS = 20;
const EDIT_MS = 50;
const BLOCKED_MS = 50;
const BUNDLE_KB = 400;
const MEMORY_MB = 300;

const MANY_ORDERS = 5000;
const EDITS = 15;
/** Pages settle, workers warm up. */
const REST_MS = 3000;

/** The screen as a planner has it: the built program behind its browser door, in Chromium. */
export async function benchScreen(call: BenchCall): Promise<BenchRow[]> {
  const browser = await launchBrowser();
  try {
    return [
      ...bundleRows(),
      await startRow(browser, call),
      ...(await orderRows(browser)),
      ...(await weekRows(browser, 2000)),
      ...(await weekRows(browser, 10_000)),
      ...(await planningRows(browser, call)),
    ];
  } finally {
    await browser.close();
  }
}

/** Workers and engines run beside the window; the 3D view is fetched with the first body that is looked at. */
const NOT_THE_WINDOW = /worker|glpk|highs|no-node|body-view/;

function bundleRows(): BenchRow[] {
  if (!existsSync(SCREEN)) throw new Error("the screen is not built: run npm run build first");
  const files = readdirSync(SCREEN).filter((name) => /\.(js|css)$/.test(name));
  const kb = (names: readonly string[]): number =>
    names.reduce((sum, name) => sum + gzipSync(readFileSync(`${SCREEN}/${name}`)).length, 0) / 1024;
  return [
    atMost(
      "screen: all pages, scripts and styles, gz, without the 3D view and the workers",
      kb(files.filter((name) => !NOT_THE_WINDOW.test(name))),
      "kB",
      BUNDLE_KB,
    ),
    told(
      "screen: 3D view, fetched with the first body, gz",
      kb(files.filter((name) => name.includes("body-view"))),
      "kB",
    ),
  ];
}

async function startRow(browser: Browser, { quick }: BenchCall): Promise<BenchRow> {
  const startsS: number[] = [];
  for (let run = 0; run < (quick ? 1 : 5); run += 1) {
    const screen = await openBenched(browser, {});
    startsS.push(screen.startMs / 1000);
    await screen.close();
  }
  return atMost("screen: first start to a usable Orders page, median", median(startsS), "s", START_S);
}

async function orderRows(browser: Browser): Promise<BenchRow[]> {
  const demo = demoShop();
  const orders = Array.from({ length: MANY_ORDERS }, (_, at) => ({
    ...demo.orders[at % demo.orders.length]!,
    id: `M-${at}`,
  }));
  const screen = await openBenched(browser, { shop: { ...demo, orders, builds: [] } });
  const { page } = screen;
  await page.waitForTimeout(REST_MS);
  const frameMs = await p95FrameMs(page, "scroll");
  await page.evaluate('document.querySelector(".grid-scroll").scrollTop = 0');
  await page.locator('[data-row="2"][data-col="3"]').click();
  await page.evaluate(WATCH);
  for (let edit = 0; edit < EDITS; edit += 1) {
    await page.keyboard.type(String(edit + 11));
    await page.keyboard.press("Enter");
    await page.waitForTimeout(200);
  }
  const editsMs = await page.evaluate<number[]>("window.edits");
  await screen.close();
  return [
    atMost(`screen: grid of ${MANY_ORDERS} orders scrolled, frame p95`, frameMs, "ms", FRAME_MS),
    atMost(`screen: edit to repaint with ${MANY_ORDERS} orders, median`, median(editsMs), "ms", EDIT_MS),
    told(`screen: edit to repaint with ${MANY_ORDERS} orders, worst`, Math.max(...editsMs), "ms"),
  ];
}

async function weekRows(browser: Browser, builds: number): Promise<BenchRow[]> {
  const shop = aCrowdedShop(demoShop());
  const screen = await openBenched(browser, { shop, plan: aCrowdedPlan(shop, builds) });
  const { page } = screen;
  await page.evaluate('location.hash = "week"');
  await page.locator(".week-canvas canvas").waitFor();
  await page.waitForTimeout(REST_MS);
  const panMs = await p95FrameMs(page, "pan");
  const zoomMs = await p95FrameMs(page, "zoom");
  await screen.close();
  return [
    atMost(`screen: week of ${builds} builds panned, frame p95`, panMs, "ms", FRAME_MS),
    atMost(`screen: week of ${builds} builds zoomed, frame p95`, zoomMs, "ms", FRAME_MS),
  ];
}

/** The L shop planned in the window: what blocks input meanwhile, and what memory is held afterwards. */
async function planningRows(browser: Browser, { quick, say }: BenchCall): Promise<BenchRow[]> {
  const screen = await openBenched(browser, { shop: makeShop("L", { seed: 1 }).shop });
  const { page } = screen;
  await page.waitForTimeout(REST_MS);
  await page.evaluate(WATCH);
  await page.keyboard.press("Control+Enter");
  await page.getByLabel("Plan from").fill("2026-11-30 00:00");
  await page.getByLabel("Days").fill("14");
  await page.getByLabel("Search for").fill(quick ? "3" : "10");
  await page.getByRole("button", { name: "Start planning" }).click();
  await page.getByRole("button", { name: "Plan again" }).waitFor({ timeout: 300_000 });
  const blockedMs = await page.evaluate<number[]>("window.blocked");
  await page.evaluate('location.hash = "week"');
  await page.locator(".week-canvas canvas").waitFor();
  await page.waitForTimeout(REST_MS);
  const [hostMb, heapMb] = [screen.hostMb(), await screen.heapMb()];
  await screen.close();
  if (hostMb === null) say("this system does not tell the memory of a process: only the window's is counted");
  return [
    atMost(
      "screen: longest stretch that blocks input while L is planned",
      Math.max(0, ...blockedMs),
      "ms",
      BLOCKED_MS,
    ),
    told("screen: stretches over 50 ms while L is planned", blockedMs.length, ""),
    atMost(
      "screen: memory with L and its plan, program and window's objects",
      (hostMb ?? 0) + heapMb,
      "MB",
      MEMORY_MB,
    ),
    told("screen: of it the window's objects", heapMb, "MB"),
  ];
}

function demoShop(): Shop {
  const { shop } = readShop(readFileSync(DEMO, "utf8"));
  if (!shop) throw new Error("the demo shop cannot be read");
  return shop;
}

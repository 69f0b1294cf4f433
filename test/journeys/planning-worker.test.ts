import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { build } from "vite";
import { afterAll, beforeAll, expect, test } from "vitest";
import { checkPlan } from "../../core/plan/check/check-plan.ts";
import type { PlanDocument } from "../../core/plan/plan-document.ts";
import { readShop } from "../../core/shop/read-shop.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { type Loopback, startLoopback } from "../../electron/loopback.ts";
import type { HostSide } from "../../electron/host.ts";
import type { Answer } from "../../electron/contract/answer.ts";
import type { Opened } from "../../electron/contract/shop-messages.ts";
import { readFileSync } from "node:fs";
import { makeHost } from "../../electron/host.ts";
import { findChromium } from "./find-chromium.ts";

/* The planning worker, both engines and the host's client in a real browser, under the real policy, without any page. */

const ROOT = join(import.meta.dirname, "../..");
const PAGE = `
import { host } from "${join(ROOT, "renderer/host.ts")}";
import { startPlanning, warmUpPlanning } from "${join(ROOT, "renderer/worker/plan-client.ts")}";
Object.assign(window, { host, startPlanning, warmUpPlanning });
`;
const demo = readShop(readFileSync(join(ROOT, "assets/demo.shop.json"), "utf8")).shop as Shop;

let folder: string;
let host: HostSide;
let door: Loopback;
let browser: Browser;
let page: Page;
const errors: string[] = [];
const fetched: string[] = [];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "worker-"));
  const source = join(folder, "source");
  mkdirSync(source);
  writeFileSync(join(source, "page.ts"), PAGE);
  writeFileSync(
    join(source, "index.html"),
    '<link rel="icon" href="data:,"><script type="module" src="./page.ts"></script>',
  );
  await build({
    configFile: join(ROOT, "vite.screen.config.ts"),
    root: source,
    logLevel: "error",
    publicDir: false,
    build: { outDir: join(folder, "screen") },
  });
  const info = { door: "browser", reason: "a test", version: "0", platform: "test" } as const;
  const places = { data: join(folder, "data"), assets: join(ROOT, "assets") };
  host = makeHost({ ...places, info, launchFile: null, dialogs: null, makePdf: null, now: () => Date.now() });
  door = await startLoopback(host.methods, join(folder, "screen"));
  browser = await chromium.launch({ executablePath: findChromium(), args: ["--no-sandbox"] });
  page = await browser.newPage();
  page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
  page.on("pageerror", (error) => errors.push(String(error)));
  page.on("request", (request) => fetched.push(request.url()));
  await page.goto(door.url);
  await page.waitForFunction("window.startPlanning");
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await host?.end();
  await door?.end();
  rmSync(folder, { recursive: true, force: true });
});

interface Planned {
  readonly plan: PlanDocument | null;
  readonly ended: string | null;
  readonly stages: string[];
  readonly stopMs: number | null;
  readonly longTasksMs: number[];
}

/** What runs in the page: plans, and stops after so many ms. */
const RUN = `async ([shop, options, stopAfterMs, stops]) => {
  const longTasksMs = [];
  const observer = new PerformanceObserver((list) => longTasksMs.push(...list.getEntries().map((entry) => entry.duration)));
  observer.observe({ type: "longtask" });
  const stages = [];
  const run = startPlanning(shop, options, ({ stage }) => stages.at(-1) !== stage && stages.push(stage));
  let askedMs = null;
  if (stopAfterMs !== null) setTimeout(() => {
    askedMs = performance.now();
    for (let time = 0; time < stops; time++) run.stop();
  }, stopAfterMs);
  const outcome = await run.result.then((plan) => ({ plan, ended: null }), (error) => ({ plan: null, ended: error.message }));
  observer.disconnect();
  return { ...outcome, stages, stopMs: askedMs && performance.now() - askedMs, longTasksMs };
}`;

function plan(shop: Shop, seconds: number, stopAfterMs: number | null = null, stops = 1): Promise<Planned> {
  const options = { from: "2026-11-30T00:00", days: 7, seconds, seed: 1, gapPct: 0 };
  return page.evaluate(`(${RUN})(${JSON.stringify([shop, options, stopAfterMs, stops])})`);
}

/** The demo works with only its first order lines: few enough options for the smaller engine. */
const small: Shop = { ...demo, orders: demo.orders.slice(0, 8), builds: [] };

test("the page is isolated, so that its threads may share memory", async () => {
  expect(await page.evaluate("crossOriginIsolated")).toBe(true);
});

test("a small shop is planned with GLPK, and the plan passes the check", async () => {
  const planned = await plan(small, 1);
  expect(planned.ended).toBeNull();
  expect(planned.stages).toContain("searching");
  expect(checkPlan(small, planned.plan as PlanDocument)).toEqual([]);
  expect(fetched.filter((url) => /glpk.*\.wasm$/.test(url)).length).toBeGreaterThan(0);
});

test("the demo shop is planned with HiGHS, and the window is never held up for longer than 100 ms", async () => {
  const planned = await plan(demo, 2);
  expect(planned.ended).toBeNull();
  expect(planned.plan?.builds.length).toBeGreaterThan(50);
  expect(fetched.filter((url) => /highs.*\.wasm$/.test(url)).length).toBeGreaterThan(0);
  expect(Math.max(0, ...planned.longTasksMs)).toBeLessThan(100);
});

test("one stop keeps the best plan", async () => {
  const planned = await plan(demo, 60, 1500);
  expect(planned.plan?.status).toBe("stopped");
  expect(planned.plan?.builds.length).toBeGreaterThan(0);
});

test("a second stop ends at once without a plan, and the next run works", async () => {
  const planned = await plan(demo, 60, 1000, 2);
  expect(planned.ended).toContain("stopped before there was a plan");
  expect(planned.stopMs).toBeLessThan(1000);
  expect((await plan(small, 0)).plan?.builds.length).toBeGreaterThan(0);
});

test("a shop that cannot be planned is told in a sentence", async () => {
  expect((await plan({ ...demo, timeZone: "Nowhere/City" }, 0)).ended).toContain(
    "Time zone Nowhere/City is unknown",
  );
});

test("the host's client opens the demo shop, and the token is off the address", async () => {
  const answer = await page.evaluate<Answer<Opened>>('host.call("openFirst", {})');
  expect(answer).toMatchObject({ ok: true, value: { status: "opened", isDemo: true } });
  expect(page.url()).not.toContain("token");
});

test("bytes reach the host and come back through the client", async () => {
  const answer = await page.evaluate(
    'host.call("writeExport", { fileName: "a.csv", bytes: new Uint8Array([1, 2, 3]) })',
  );
  expect(answer).toMatchObject({ ok: true, value: { status: "not-here" } });
});

test("a sheet can be shown in a frame of the page, and its scripts do not run", async () => {
  const shown = await page.evaluate<string>(`new Promise((resolve) => {
    const frame = document.createElement("iframe");
    frame.sandbox = "allow-same-origin allow-modals";
    frame.srcdoc = "<style>p { color: rgb(1, 2, 3) }</style><p>sheet</p><script>document.title = 'ran'</scr" + "ipt>";
    frame.onload = () => {
      const p = frame.contentDocument.querySelector("p");
      resolve(p.textContent + " " + getComputedStyle(p).color + " " + frame.contentDocument.title);
    };
    document.body.append(frame);
  })`);
  expect(shown).toBe("sheet rgb(1, 2, 3) ");
});

test("without the program behind it a call is a trouble in words, not an exception", async () => {
  await door.end();
  expect(await page.evaluate('host.call("appInfo", {})')).toMatchObject({
    ok: false,
    trouble: { code: "gone" },
  });
});

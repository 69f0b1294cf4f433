import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import type { Shop } from "../../core/shop/shop.ts";
import { type OpenedApp, openApp } from "./open-app.ts";

const DEMO = JSON.parse(
  readFileSync(fileURLToPath(new URL("../../assets/demo.shop.json", import.meta.url)), "utf8"),
) as Shop;
const MANY = 5000;
/**
 * The goals are a frame of 16.7 ms, 20 ms at p95, and an edit of 50 ms on a quiet machine: they are printed. What fails here is
 * processor time of the window's thread several times above them, which a busy machine does not explain.
 */
const MOST_FRAME_MS = 50;
const MOST_EDIT_MS = 200;
const FRAMES = 180;
const EDITS = 10;

function manyOrders(): Shop {
  const orders = Array.from({ length: MANY }, (_, at) => ({
    ...DEMO.orders[at % DEMO.orders.length]!,
    id: `M-${at}`,
  }));
  return { ...DEMO, orders, builds: [] };
}

/** Processor time of the window's thread since the page was opened, ms. */
async function busyTime(app: OpenedApp): Promise<() => Promise<number>> {
  const session = await app.context.newCDPSession(app.page);
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
  return async () => {
    const { metrics } = await session.send("Performance.getMetrics");
    return (metrics.find(({ name }) => name === "TaskDuration")?.value ?? 0) * 1000;
  };
}

test("5000 orders scroll and are edited without keeping the window's thread", async () => {
  const startedMs = performance.now();
  const app = await openApp({ shop: manyOrders() });
  await app.page.locator('[data-row="0"][data-col="0"]').waitFor();
  const startMs = performance.now() - startedMs;
  await app.page.waitForTimeout(3000);
  const busy = await busyTime(app);
  const beforeFramesMs = await busy();
  const frames = await app.page.evaluate(async (count) => {
    const box = document.querySelector(".grid-scroll")!;
    const times: number[] = [];
    let last = performance.now();
    for (let frame = 0; frame < count; frame += 1) {
      box.scrollTop += frame % 60 === 59 ? 20_000 : 97;
      await new Promise(requestAnimationFrame);
      times.push(performance.now() - last);
      last = performance.now();
    }
    return times.slice(10).toSorted((a, b) => a - b);
  }, FRAMES);
  const frameBusyMs = ((await busy()) - beforeFramesMs) / FRAMES;
  await app.page.evaluate(() => (document.querySelector(".grid-scroll")!.scrollTop = 0));
  await app.page.locator('[data-row="2"][data-col="3"]').click();
  await app.page.evaluate(() => {
    const state = window as unknown as { edits: number[] };
    state.edits = [];
    document.addEventListener(
      "keydown",
      (event) => {
        if (event.key !== "Enter") return;
        const pressedMs = performance.now();
        requestAnimationFrame(() => setTimeout(() => state.edits.push(performance.now() - pressedMs)));
      },
      true,
    );
  });
  const beforeEditsMs = await busy();
  for (let edit = 0; edit < EDITS; edit += 1) {
    await app.page.keyboard.type(String(edit + 11));
    await app.page.keyboard.press("Enter");
    await app.page.waitForTimeout(300);
  }
  const edits = await app.page.evaluate(() =>
    (window as unknown as { edits: number[] }).edits.toSorted((a, b) => a - b),
  );
  const editBusyMs = ((await busy()) - beforeEditsMs) / EDITS;
  const p95 = frames[Math.floor(frames.length * 0.95)] ?? 0;
  const [middle = 0, worst = 0] = [edits[Math.floor(edits.length / 2)], edits.at(-1)];
  console.log(
    [
      `${MANY} orders: start ${startMs.toFixed(0)} ms`,
      `frame median ${frames[frames.length >> 1]?.toFixed(1)}, p95 ${p95.toFixed(1)}, processor ${frameBusyMs.toFixed(1)} ms`,
      `edit to repaint median ${middle.toFixed(1)}, worst ${worst.toFixed(1)}, processor ${editBusyMs.toFixed(1)} ms`,
    ].join("; "),
  );
  expect(frameBusyMs).toBeLessThan(MOST_FRAME_MS);
  expect(editBusyMs).toBeLessThan(MOST_EDIT_MS);
  await app.close();
});

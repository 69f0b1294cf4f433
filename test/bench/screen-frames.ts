import type { Page } from "playwright-core";

/** Frames that are timed in one go, and those at the start that still warm up. */
const FRAMES = 180;
const WARM_UP = 10;

/** Runs in the page: moves something once a frame and gives the times of the frames, ms. */
const IN_PAGE = `async ([frames, kind]) => {
  const grid = document.querySelector(".grid-scroll");
  const week = document.querySelector(".week-canvas");
  const { left, top } = (kind === "scroll" ? grid : week).getBoundingClientRect();
  const turn = (more) => week.dispatchEvent(
    new WheelEvent("wheel", { clientX: left + 400, clientY: top + 200, cancelable: true, ...more }),
  );
  const move = {
    scroll: (frame) => (grid.scrollTop += frame % 60 === 59 ? 20000 : 97),
    pan: (frame) => turn({ shiftKey: true, deltaY: frame < frames / 2 ? 12 : -12 }),
    zoom: (frame) => turn({ ctrlKey: true, deltaY: frame < frames / 2 ? -12 : 12 }),
  }[kind];
  const times = [];
  let last = await new Promise(requestAnimationFrame);
  for (let frame = 0; frame < frames; frame += 1) {
    move(frame);
    const now = await new Promise(requestAnimationFrame);
    times.push(now - last);
    last = now;
  }
  return times;
}`;

/** 95 of 100 frames are at most so long while the open grid is scrolled or the week is panned or zoomed, ms. */
export async function p95FrameMs(page: Page, kind: "scroll" | "pan" | "zoom"): Promise<number> {
  const times = await page.evaluate<number[]>(`(${IN_PAGE})(${JSON.stringify([FRAMES, kind])})`);
  const sorted = times.slice(WARM_UP).toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length * 0.95)] ?? NaN;
}

/** From now on the page notes how long each Enter takes until the next picture, and each stretch that blocks input. */
export const WATCH = `(() => {
  window.edits = [];
  window.blocked = [];
  document.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    const pressedMs = performance.now();
    requestAnimationFrame(() => setTimeout(() => window.edits.push(performance.now() - pressedMs)));
  }, true);
  new PerformanceObserver((list) => window.blocked.push(...list.getEntries().map((entry) => entry.duration)))
    .observe({ type: "longtask" });
})()`;

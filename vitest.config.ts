import solid from "vite-plugin-solid";
import { defineConfig } from "vitest/config";

const shared = { env: { TZ: "America/Los_Angeles" }, testTimeout: 60_000 };

/** Three kinds of tests: what needs no screen, what needs a made-up one, and journeys in a real browser. */
export default defineConfig({
  test: {
    // Two at once also on two cores, where one would be usual: most tests wait as much as they work.
    maxWorkers: 2,
    projects: [
      {
        test: {
          ...shared,
          name: "node",
          include: ["test/**/*.test.ts"],
          exclude: ["test/renderer/**", "test/journeys/**"],
        },
      },
      {
        plugins: [solid()],
        test: {
          ...shared,
          name: "screen",
          include: ["test/renderer/**/*.test.{ts,tsx}"],
          environment: "happy-dom",
        },
      },
      {
        test: {
          ...shared,
          name: "journeys",
          include: ["test/journeys/**/*.test.ts"],
          globalSetup: ["test/journeys/build-screen.ts"],
          hookTimeout: 60_000,
          // A browser and planning threads take a whole machine: one journey at a time.
          fileParallelism: false,
          // A pointer that is dragged over a busy screen may miss its place once.
          retry: 1,
        },
      },
    ],
  },
});

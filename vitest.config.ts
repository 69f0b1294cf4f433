import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    env: { TZ: "America/Los_Angeles" },
    testTimeout: 60_000,
  },
});

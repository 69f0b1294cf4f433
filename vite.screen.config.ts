import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";
import solid from "vite-plugin-solid";

/** How long plugins take says nothing about the screen. */
const QUIET = { bundlerTimings: false };

/** Builds the screen into dist/screen. Nothing is inlined and every address is relative, so that one policy fits both doors. */
export default defineConfig({
  root: "renderer",
  base: "./",
  // The engines' loaders name Node's own module for the case that they run there.
  resolve: {
    alias: [
      {
        find: /^(node:)?module$/,
        replacement: fileURLToPath(new URL("renderer/worker/no-node.ts", import.meta.url)),
      },
    ],
  },
  plugins: [solid()],
  build: {
    outDir: "../dist/screen",
    emptyOutDir: true,
    target: "es2023",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: { checks: QUIET },
  },
  worker: { format: "es", rolldownOptions: { checks: QUIET } },
});

import { defineConfig } from "vite";

/** Builds what runs outside the screen: the command line and the search thread, as plain Node modules in dist/. */
export default defineConfig({
  build: {
    ssr: true,
    outDir: "dist",
    target: "node20",
    minify: false,
    rollupOptions: {
      input: { "command-line": "electron/command-line.ts", "search-thread": "electron/search-thread.ts" },
      output: { entryFileNames: "[name].js", chunkFileNames: "[name]-[hash].js" },
    },
  },
  // Everything pure is bundled for a quick start; the solvers stay packages because they load their own wasm.
  ssr: { noExternal: true, external: ["glpk.js", "highs"] },
});

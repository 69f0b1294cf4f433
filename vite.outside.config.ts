import { defineConfig } from "vite";

/** Builds what runs outside the screen, as plain Node modules in dist/: command line, search thread, both doors' hosts. */
export default defineConfig({
  build: {
    ssr: true,
    outDir: "dist",
    target: "node20",
    minify: false,
    rollupOptions: {
      input: {
        "command-line": "electron/command-line.ts",
        "search-thread": "electron/search-thread.ts",
        "purchase-thread": "electron/purchase-thread.ts",
        "browser-door": "electron/browser-door.ts",
        main: "electron/main.ts",
      },
      output: { entryFileNames: "[name].js", chunkFileNames: "[name]-[hash].js" },
    },
  },
  // Everything pure is bundled for a quick start; the solvers stay packages because they load their own wasm.
  ssr: { noExternal: true, external: ["glpk.js", "highs", "electron"] },
});

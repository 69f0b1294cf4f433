import { defineConfig } from "vite";

/** Builds the window's preload script: CommonJS, because a sandboxed one cannot be a module. */
export default defineConfig({
  build: {
    ssr: "electron/preload.ts",
    outDir: "dist",
    emptyOutDir: false,
    target: "node20",
    minify: false,
    rollupOptions: { output: { format: "cjs", entryFileNames: "preload.cjs" } },
  },
  ssr: { noExternal: true, external: ["electron"] },
});

import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "vite";
import type { TestProject } from "vitest/node";

declare module "vitest" {
  export interface ProvidedContext {
    /** folder of the screen that journeys open */
    screenFolder: string;
  }
}

/** Builds the screen once for all journeys, apart from dist/, so that nobody else's build gets in between. */
export default async function buildScreen(project: TestProject): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), "screen-"));
  await build({
    configFile: "vite.screen.config.ts",
    logLevel: "error",
    build: { outDir: folder, emptyOutDir: true },
  });
  project.provide("screenFolder", folder);
  return () => rm(folder, { recursive: true, force: true });
}

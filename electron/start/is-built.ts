import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";

/** Everything that the build reads. */
const SOURCES = [
  "core",
  "electron",
  "renderer",
  "package.json",
  "vite.outside.config.ts",
  "vite.preload.config.ts",
  "vite.screen.config.ts",
];

/** True where every built file named is there and no source is newer. */
export function isBuilt(root: string, built: readonly string[]): boolean {
  const builtMs = Math.min(...built.map((file) => timeMs(join(root, file)) ?? -Infinity));
  return SOURCES.every((source) => newestMs(join(root, source)) <= builtMs);
}

function newestMs(path: string): number {
  const own = timeMs(path) ?? -Infinity;
  const entries = statSync(path, { throwIfNoEntry: false })?.isDirectory()
    ? readdirSync(path, { withFileTypes: true, recursive: true })
    : [];
  return entries
    .filter((entry) => entry.isFile())
    .reduce((newest, entry) => Math.max(newest, timeMs(join(entry.parentPath, entry.name)) ?? 0), own);
}

function timeMs(path: string): number | null {
  const found = statSync(path, { throwIfNoEntry: false });
  return found?.isFile() ? found.mtimeMs : null;
}

import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";

/**
 * Where Electron's runtime is, or null. Asking the package itself would try a download, so its own files are read: path.txt
 * names the program below dist/, or below the folder in ELECTRON_OVERRIDE_DIST_PATH.
 */
export function electronRuntime(root: string, env: NodeJS.ProcessEnv): string | null {
  const folder = join(root, "node_modules", "electron");
  const named = join(folder, "path.txt");
  if (!existsSync(named)) return null;
  const dist = env["ELECTRON_OVERRIDE_DIST_PATH"] ?? join(folder, "dist");
  const program = join(dist, readFileSync(named, "utf8").trim());
  return existsSync(program) ? program : null;
}

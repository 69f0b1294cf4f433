import { readFile, realpath } from "node:fs/promises";
import { extname, join } from "node:path";
import { isWithin } from "./store/beside-shop.ts";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".wasm": "application/wasm",
  ".woff2": "font/woff2",
};

export interface ScreenFile {
  readonly bytes: Buffer;
  readonly type: string;
}

/**
 * A file of the built screen by the path of its address, or null: only files below the folder, of the kinds that the screen is
 * made of. Example: "/" gives index.html; "/../main.js" and "/%2e%2e/main.js" give null.
 */
export async function screenFile(folder: string, urlPath: string): Promise<ScreenFile | null> {
  const path = decoded(urlPath);
  if (path === null || path.includes("\0") || path.includes("\\")) return null;
  if (path.split("/").includes("..")) return null;
  const wanted = join(folder, path === "/" ? "index.html" : path);
  const type = TYPES[extname(wanted)];
  const real = await realpath(wanted).catch(() => null);
  if (type === undefined || real === null || !isWithin(await realpath(folder), real)) return null;
  const bytes = await readFile(real).catch(() => null);
  return bytes && { bytes, type };
}

function decoded(urlPath: string): string | null {
  try {
    return decodeURIComponent(urlPath);
  } catch {
    return null;
  }
}

import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The program's folder: this file lies one below it, as source in electron/ and built in dist/. */
export const ROOT_FOLDER = join(dirname(fileURLToPath(import.meta.url)), "..");

export const ASSETS_FOLDER = join(ROOT_FOLDER, "assets");
export const SCREEN_FOLDER = join(ROOT_FOLDER, "dist", "screen");

/** The version in package.json. */
export function programVersion(): string {
  const { version } = JSON.parse(readFileSync(join(ROOT_FOLDER, "package.json"), "utf8")) as {
    version: string;
  };
  return version;
}

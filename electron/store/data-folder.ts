import { homedir } from "node:os";
import { join } from "node:path";
import { sha256 } from "./sha256.ts";

const NAME = "hopper-and-spool";

/** The program's own folder by the custom of each system; HOPPER_AND_SPOOL_DATA names another. Both doors use the same. */
export function dataFolder(
  platform: NodeJS.Platform = process.platform,
  env: NodeJS.ProcessEnv = process.env,
): string {
  const given = env["HOPPER_AND_SPOOL_DATA"];
  if (given) return given;
  if (platform === "win32") return join(env["APPDATA"] ?? join(homedir(), "AppData", "Roaming"), NAME);
  if (platform === "darwin") return join(homedir(), "Library", "Application Support", NAME);
  return join(env["XDG_DATA_HOME"] ?? join(homedir(), ".local", "share"), NAME);
}

/** Folders of the program's own, and what belongs to one shop file by its path. */
export interface Folders {
  readonly shops: string;
  readonly settings: string;
  readonly backupsOf: (path: string) => string;
  readonly journalsOf: (path: string) => string;
}

export function foldersIn(data: string): Folders {
  return {
    shops: join(data, "shops"),
    settings: join(data, "settings.json"),
    backupsOf: (path) => join(data, "backups", keyOf(path)),
    journalsOf: (path) => join(data, "journals", keyOf(path)),
  };
}

/** A short name for a path, the same each time, that says nothing of it. */
export function keyOf(path: string): string {
  return sha256(path).slice(0, 16);
}

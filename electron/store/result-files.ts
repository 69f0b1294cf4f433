import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { deserialize, serialize } from "node:v8";
import { gunzipSync, gzipSync } from "node:zlib";
import { sha256 } from "./sha256.ts";

/** Plain results of pure work as files by the hash of what they follow from, so that asking again is quick. */
export interface ResultFiles {
  /** undefined: not known */
  readonly get: (key: string) => unknown;
  readonly set: (key: string, result: unknown) => void;
  /** Takes away those that were used longest ago, until the folder is within its bound. */
  readonly trim: () => void;
}

const MOST_BYTES = 100_000_000;
const FASTEST = { level: 1 };

/**
 * Opens a folder of results, made where it is not there. `version` stands for the program: results of another one are not found.
 * The files are packed, and a half-written one fails the check sum of its format (RFC 1952), so it counts as not known. Where the
 * folder cannot be written nothing is remembered, and nobody is troubled by it.
 */
export function openResultFiles(folder: string, version: string, mostBytes = MOST_BYTES): ResultFiles {
  const pathOf = (key: string): string => join(folder, `${sha256(`${version}/${key}`)}.gz`);
  return {
    get: (key) => attempt(() => readResult(pathOf(key))),
    set: (key, result) => {
      attempt(() => {
        mkdirSync(folder, { recursive: true });
        writeFileSync(pathOf(key), gzipSync(serialize(result), FASTEST));
      });
    },
    trim: () => void attempt(() => trimFolder(folder, mostBytes)),
  };
}

function readResult(path: string): unknown {
  const result: unknown = deserialize(gunzipSync(readFileSync(path)));
  const now = new Date();
  attempt(() => utimesSync(path, now, now));
  return result;
}

function trimFolder(folder: string, mostBytes: number): void {
  const files = readdirSync(folder)
    .filter((name) => name.endsWith(".gz"))
    .map((name) => ({ path: join(folder, name), ...sizeAndTime(join(folder, name)) }))
    .toSorted((a, b) => b.usedMs - a.usedMs);
  let bytes = 0;
  for (const file of files) {
    bytes += file.bytes;
    if (bytes > mostBytes) rmSync(file.path, { force: true });
  }
}

function sizeAndTime(path: string): { readonly bytes: number; readonly usedMs: number } {
  const { size, mtimeMs } = statSync(path);
  return { bytes: size, usedMs: mtimeMs };
}

function attempt<Result>(work: () => Result): Result | undefined {
  try {
    return work();
  } catch {
    return undefined;
  }
}

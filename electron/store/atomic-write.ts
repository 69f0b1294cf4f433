import { open, realpath, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";

let count = 0;

/**
 * Writes a file so that at every moment either the old or the new one is whole: into a file beside it, down to the disk, then
 * renamed over it, then the folder's entry down to the disk. Throws the system's error; the old file is untouched then.
 * (write-file-atomic 7 was tried: it takes a short write for a whole one, so a full disk could replace a file by half of it.)
 */
export async function writeAtomically(path: string, data: string | Uint8Array): Promise<void> {
  const target = await realpath(path).catch(() => path);
  const beside = join(dirname(target), `.${basename(target)}.${process.pid}-${++count}.tmp`);
  try {
    await writeThrough(beside, data, await modeOf(target));
    await rename(beside, target);
  } catch (error) {
    await rm(beside, { force: true }).catch(() => undefined);
    throw error;
  }
  await syncFolder(dirname(target));
}

async function writeThrough(
  path: string,
  data: string | Uint8Array,
  mode: number | undefined,
): Promise<void> {
  const file = await open(path, "wx", mode);
  try {
    await file.writeFile(data);
    await file.sync();
  } finally {
    await file.close();
  }
}

async function modeOf(path: string): Promise<number | undefined> {
  return stat(path).then(
    ({ mode }) => mode & 0o777,
    () => undefined,
  );
}

/** Some systems cannot sync a folder; the rename is whole there all the same. */
async function syncFolder(path: string): Promise<void> {
  const folder = await open(path, "r").catch(() => null);
  await folder?.sync().catch(() => undefined);
  await folder?.close();
}

/** The process that left a file beside `name` when it was ended in the middle of writing; null for any other file. */
export function leftoverOf(name: string, candidate: string): number | null {
  const found = /^\.(.+)\.(\d+)-\d+\.tmp$/.exec(candidate);
  return found?.[1] === name ? Number(found[2]) : null;
}

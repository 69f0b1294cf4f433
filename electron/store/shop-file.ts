import { readdir, readFile, realpath, rm, stat } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { leftoverOf, writeAtomically } from "./atomic-write.ts";
import type { Backups } from "./backups.ts";
import { isAlive } from "./live-process.ts";
import { sha256 } from "./sha256.ts";

/** How the file on the disk stands to what we last read or wrote. */
export type FileState = "as-saved" | "changed" | "removed";

export type SaveResult = "saved" | Exclude<FileState, "as-saved">;

/** The user has marked the file as not to be written; renaming over it would work all the same. */
export class ReadOnlyError extends Error {
  readonly code = "EACCES";
}

/** One shop file: what it was when we last saw it, and how it is written without ever losing somebody's work. */
export class ShopFile {
  readonly path: string;
  /** SHA-256 of the file as we last read or wrote it: its revision */
  revision: string;
  private readonly backups: Backups;
  private seen = "";

  private constructor(path: string, revision: string, backups: Backups) {
    this.path = path;
    this.revision = revision;
    this.backups = backups;
  }

  /** Reads a file. Throws the system's error. */
  static async open(path: string, backups: Backups): Promise<{ file: ShopFile; text: string }> {
    await sweep(path);
    const bytes = await readFile(path);
    const file = new ShopFile(path, sha256(bytes), backups);
    file.seen = await file.stamp();
    return { file, text: bytes.toString("utf8") };
  }

  /** The file that `text` is about to become. Throws the system's error. */
  static async create(path: string, text: string, backups: Backups): Promise<ShopFile> {
    const there = await readFile(path).catch(() => null);
    if (there) await backups.keep(there, true);
    await refuseReadOnly(path);
    await writeAtomically(path, text);
    const file = new ShopFile(path, sha256(text), backups);
    file.seen = await file.stamp();
    return file;
  }

  /**
   * Writes the file unless something else has changed or removed it since; `overwrite` writes over that knowingly, and a
   * backup keeps what was there. Throws the system's error; the file is as it was then.
   */
  async save(
    text: string,
    overwrite: boolean,
    onWriting: (revision: string) => Promise<void>,
  ): Promise<SaveResult> {
    const there = await this.readAgain();
    const state = this.stateOf(there);
    if (state !== "as-saved" && !overwrite) return state;
    await refuseReadOnly(this.path);
    const next = sha256(text);
    if (there && sha256(there) !== next)
      await this.backups.keep(there, state === "changed").catch(() => undefined);
    await onWriting(next);
    await writeAtomically(this.path, text);
    this.revision = next;
    this.seen = await this.stamp();
    return "saved";
  }

  /** Looks at the disk. The file is read only where its time, size or place there has changed. */
  async state(): Promise<FileState> {
    const stamp = await this.stamp();
    if (stamp === "") return "removed";
    if (stamp === this.seen) return "as-saved";
    const state = this.stateOf(await this.readAgain());
    if (state === "as-saved") this.seen = stamp;
    return state;
  }

  async isReadOnly(): Promise<boolean> {
    return hasNoWriteBit(this.path);
  }

  private stateOf(there: Buffer | null): FileState {
    if (there === null) return "removed";
    return sha256(there) === this.revision ? "as-saved" : "changed";
  }

  private async readAgain(): Promise<Buffer | null> {
    return readFile(this.path).catch((error: NodeJS.ErrnoException) => {
      if (error.code === "ENOENT" || error.code === "ENOTDIR") return null;
      throw error;
    });
  }

  private async stamp(): Promise<string> {
    return stat(this.path, { bigint: true }).then(
      ({ mtimeNs, size, ino }) => `${mtimeNs}-${size}-${ino}`,
      () => "",
    );
  }
}

async function refuseReadOnly(path: string): Promise<void> {
  if (await hasNoWriteBit(path)) throw new ReadOnlyError("the file is marked as read-only");
}

async function hasNoWriteBit(path: string): Promise<boolean> {
  return stat(path).then(
    ({ mode }) => (mode & 0o222) === 0,
    () => false,
  );
}

/** Takes away what a process that was ended in the middle of writing has left beside the file. */
async function sweep(path: string): Promise<void> {
  const folder = dirname(path);
  for (const candidate of await readdir(folder).catch(() => [])) {
    const pid = leftoverOf(basename(path), candidate);
    if (pid !== null && !isAlive(pid))
      await rm(join(folder, candidate), { force: true }).catch(() => undefined);
  }
}

/** The one path of a file, however it was named. */
export async function truePath(path: string): Promise<string> {
  return realpath(path).catch(() => resolve(path));
}

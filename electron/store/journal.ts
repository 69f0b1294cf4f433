import { type FileHandle, mkdir, open, rm } from "node:fs/promises";
import { dirname } from "node:path";
import { type JournalEntry, journalLine } from "./journal-lines.ts";

const SYNC_MS = 1000;
/** The journal's own time tells other processes that this one lives. */
export const HEARTBEAT_MS = 3000;

/**
 * Edits of one open shop since it was opened, in the program's own folder, so that they are kept even where the shop's folder
 * cannot be written. A line is with the system when `append` answers (the program may be killed then), and on the disk within
 * a second (the power may fail then).
 */
export class Journal {
  readonly path: string;
  private file: FileHandle | null = null;
  private queue: Promise<unknown> = Promise.resolve();
  private syncTimer: NodeJS.Timeout | null = null;
  private readonly heartbeat: NodeJS.Timeout;

  constructor(path: string) {
    this.path = path;
    this.heartbeat = setInterval(() => void this.touch(), HEARTBEAT_MS);
    this.heartbeat.unref();
  }

  /** Writes one entry behind all others. Throws the system's error; the entry is then not in the journal. */
  append(entry: JournalEntry): Promise<void> {
    const written = this.queue.then(() => this.write(journalLine(entry)));
    this.queue = written.catch(() => undefined);
    return written;
  }

  /** Lets go of the file; `keep` false removes it, everything in it being in the shop file. */
  async close(keep: boolean): Promise<void> {
    clearInterval(this.heartbeat);
    if (this.syncTimer) clearTimeout(this.syncTimer);
    await this.queue;
    await this.file?.sync().catch(() => undefined);
    await this.file?.close();
    this.file = null;
    if (!keep) await rm(this.path, { force: true });
  }

  private async write(line: string): Promise<void> {
    const file = await this.opened();
    const { size } = await file.stat();
    try {
      await file.appendFile(line);
    } catch (error) {
      // Half a line would hide every later one.
      await file.truncate(size);
      throw error;
    }
    this.syncTimer ??= setTimeout(() => this.sync(), SYNC_MS);
  }

  private async opened(): Promise<FileHandle> {
    if (this.file) return this.file;
    await mkdir(dirname(this.path), { recursive: true });
    this.file = await open(this.path, "a");
    return this.file;
  }

  private sync(): void {
    this.syncTimer = null;
    this.queue = this.queue.then(() => this.file?.sync()).catch(() => undefined);
  }

  private async touch(): Promise<void> {
    const now = new Date();
    await this.file?.utimes(now, now).catch(() => undefined);
  }
}

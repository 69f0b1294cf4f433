import { randomBytes } from "node:crypto";
import { readdir, readFile, rename, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import { HEARTBEAT_MS } from "./journal.ts";
import { type JournalEntry, readJournalLines } from "./journal-lines.ts";
import { isAlive } from "./live-process.ts";

const ENDING = ".journal";
const ASIDE_ENDING = ".aside";
/** A journal set aside is kept so long. */
const ASIDE_MS = 30 * 86_400_000;
/** A process whose journal was not touched for so long is not the one that wrote it, whatever its number. */
const STALE_MS = 4 * HEARTBEAT_MS;

export interface FoundJournal {
  readonly path: string;
  readonly entries: readonly JournalEntry[];
}

export interface FolderLook {
  /** of processes that are gone: their edits may be missing from the file; oldest first */
  readonly orphans: readonly FoundJournal[];
  /** another living process has the shop open */
  readonly isOpenElsewhere: boolean;
}

/** The journals of one shop file: one of each process that has it open, and those of processes that did not end well. */
export class JournalFolder {
  private readonly folder: string;
  private readonly now: () => number;

  constructor(folder: string, now: () => number) {
    this.folder = folder;
    this.now = now;
  }

  /** Where this process is to write. */
  newPath(): string {
    return join(this.folder, `${process.pid}-${randomBytes(6).toString("hex")}${ENDING}`);
  }

  /** Looks around, before this process has a journal of its own here. */
  async look(): Promise<FolderLook> {
    const names = await readdir(this.folder).catch(() => []);
    const orphans: (FoundJournal & { readonly atMs: number })[] = [];
    let isOpenElsewhere = false;
    for (const name of names.filter((candidate) => candidate.endsWith(ENDING))) {
      const path = join(this.folder, name);
      const atMs = (await stat(path)).mtimeMs;
      if (this.lives(name, atMs)) isOpenElsewhere = true;
      else orphans.push({ path, entries: readJournalLines(await readFile(path, "utf8")), atMs });
    }
    await this.dropOld(names);
    return { orphans: orphans.toSorted((a, b) => a.atMs - b.atMs), isOpenElsewhere };
  }

  /** Puts a journal out of the way without destroying it. */
  async setAside(path: string): Promise<void> {
    await rename(path, path.replace(/\.journal$/, ASIDE_ENDING)).catch(() => undefined);
  }

  private lives(name: string, atMs: number): boolean {
    const pid = Number(name.split("-")[0]);
    return pid !== process.pid && isAlive(pid) && this.now() - atMs < STALE_MS;
  }

  private async dropOld(names: readonly string[]): Promise<void> {
    for (const name of names.filter((candidate) => candidate.endsWith(ASIDE_ENDING))) {
      const path = join(this.folder, name);
      if (this.now() - (await stat(path)).mtimeMs > ASIDE_MS) await rm(path, { force: true });
    }
  }
}

import { mkdir, readdir, readFile, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import type { Backup } from "../contract/shop-messages.ts";
import { writeAtomically } from "./atomic-write.ts";

const MOST_RECENT = 10;
const DAYS = 14;
const MS_PER_DAY = 86_400_000;
/** Saves closer together than this share a backup. */
const LEAST_APART_MS = 10 * 60_000;
const SUFFIX = ".shop.json";

/** Earlier states of one shop file, in a folder of their own. A backup's id is the instant it was kept. */
export class Backups {
  private readonly folder: string;
  private readonly now: () => number;

  constructor(folder: string, now: () => number) {
    this.folder = folder;
    this.now = now;
  }

  async list(): Promise<Backup[]> {
    const ids = await this.ids();
    return Promise.all(
      ids.map(async (id) => ({
        id,
        at: new Date(timeOf(id)).toISOString(),
        bytes: (await stat(this.pathOf(id))).size,
      })),
    );
  }

  /** Keeps a state of the file unless one was kept just before; `always` keeps it in any case. */
  async keep(text: Uint8Array, always: boolean): Promise<void> {
    const newest = (await this.ids())[0];
    if (!always && newest !== undefined && this.now() - timeOf(newest) < LEAST_APART_MS) return;
    await mkdir(this.folder, { recursive: true });
    await writeAtomically(this.pathOf(idOf(this.now())), text);
    for (const id of backupsToDrop(await this.ids(), this.now())) await rm(this.pathOf(id), { force: true });
  }

  /** The text of a backup; null where there is none of that id. */
  async read(id: string): Promise<string | null> {
    if (!(await this.ids()).includes(id)) return null;
    return readFile(this.pathOf(id), "utf8");
  }

  /** Newest first. */
  private async ids(): Promise<string[]> {
    const names = await readdir(this.folder).catch(() => []);
    const ids = names.filter((name) => name.endsWith(SUFFIX)).map((name) => name.slice(0, -SUFFIX.length));
    return ids
      .filter((id) => !Number.isNaN(timeOf(id)))
      .toSorted()
      .toReversed();
  }

  private pathOf(id: string): string {
    return join(this.folder, id + SUFFIX);
  }
}

/** Colons are not allowed in file names everywhere. Example: "2026-11-25T10-00-00.000Z". */
function idOf(ms: number): string {
  return new Date(ms).toISOString().replaceAll(":", "-");
}

function timeOf(id: string): number {
  const found = /^(\d{4}-\d{2}-\d{2}T\d{2})-(\d{2})-(\d{2}\.\d{3}Z)$/.exec(id);
  return found ? Date.parse(`${found[1]}:${found[2]}:${found[3]}`) : Number.NaN;
}

/**
 * Which backups go: all but the newest 10 and the newest of each of the last 14 days (UTC).
 * Example: of 11 kept within one hour today the oldest goes; 10 of today and one of each of 20 days before leave 10 + 13.
 */
export function backupsToDrop(idsNewestFirst: readonly string[], nowMs: number): string[] {
  const days = new Set<string>();
  return idsNewestFirst.filter((id, place) => {
    const day = id.slice(0, 10);
    const isFirstOfDay = !days.has(day);
    days.add(day);
    const isYoung = Math.floor(nowMs / MS_PER_DAY) - Math.floor(Date.parse(day) / MS_PER_DAY) < DAYS;
    return place >= MOST_RECENT && !(isFirstOfDay && isYoung);
  });
}

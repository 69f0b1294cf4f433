import { randomBytes } from "node:crypto";
import { basename, dirname } from "node:path";
import type { Change } from "../../core/shop/change.ts";
import { applyChanges } from "../../core/shop/change-many.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { type CommitAnswer, type SaveAnswer, WATCH_S, type WatchAnswer } from "../contract/shop-messages.ts";
import { Bell } from "./bell.ts";
import { troubleOf } from "./file-trouble.ts";
import type { Journal } from "./journal.ts";
import { SavingRhythm } from "./saving-rhythm.ts";
import type { FileState, ShopFile } from "./shop-file.ts";
import { conflictWords, journalWords, notSavedWords } from "./shop-words.ts";

export interface ShopParts {
  readonly shop: Shop;
  readonly file: ShopFile;
  readonly journal: Journal;
  readonly now: () => number;
}

const DISK_LOOK_MS = 1500;

/** One commit, and the window it came from. */
interface Commit {
  readonly client: string;
  readonly changes: readonly Change[];
}

/**
 * A shop while it is open: the document in memory, its journal, its file. Edits are in the journal when `commit` answers and in
 * the file a moment later. Several windows may hold the same one; a file that something else has changed is never written over
 * unless asked to.
 */
export class OpenShop {
  readonly handle = `shop-${randomBytes(9).toString("base64url")}`;
  shop: Shop;
  version = 0;
  file: ShopFile;
  journal: Journal;
  private readonly now: () => number;
  private readonly commits: Commit[] = [];
  private readonly bell = new Bell();
  private readonly rhythm = new SavingRhythm(() => void this.save(false));
  private readonly looking: NodeJS.Timeout;
  private saves: Promise<unknown> = Promise.resolve();
  private savedVersion = 0;
  private savedAt: string | null = null;
  private fileNews: Pick<WatchAnswer, "file" | "sentence"> = { file: "as-saved", sentence: null };

  constructor({ shop, file, journal, now }: ShopParts) {
    this.shop = shop;
    this.file = file;
    this.journal = journal;
    this.now = now;
    this.looking = setInterval(() => void this.look(), DISK_LOOK_MS);
    this.looking.unref();
  }

  get fileName(): string {
    return basename(this.file.path);
  }

  get folder(): string {
    return dirname(this.file.path);
  }

  get stamp(): number {
    return this.bell.rings;
  }

  get text(): string {
    return textOf(this.shop);
  }

  get isSaved(): boolean {
    return this.savedVersion === this.version;
  }

  /** Takes edits made on `baseVersion`: all or none. A window that missed edits of another is told them instead. */
  async commit(client: string, baseVersion: number, changes: readonly Change[]): Promise<CommitAnswer> {
    if (baseVersion < this.version) {
      const missed = this.commits.slice(baseVersion).flatMap((commit) => commit.changes);
      return { status: "behind", version: this.version, changes: missed };
    }
    try {
      this.shop = applyChanges(this.shop, changes).shop;
    } catch (error) {
      return { status: "misfit", sentence: `The edit does not fit the shop: ${(error as Error).message}.` };
    }
    this.commits.push({ client, changes });
    const version = ++this.version;
    const warning = await this.journal
      .append({ kind: "edits", version, at: this.time(), changes: [...changes] })
      .then(() => null, journalWords);
    this.bell.ring();
    this.rhythm.edited();
    return { status: "committed", version, warning };
  }

  /** The state, as soon as it is newer than `stamp`, without the edits of the window that asks. */
  async watch(client: string, stamp: number, version: number): Promise<WatchAnswer> {
    await this.bell.after(stamp, WATCH_S * 1000);
    const others = this.commits.slice(version).filter((commit) => commit.client !== client);
    return {
      stamp: this.stamp,
      version: this.version,
      changes: others.flatMap(({ changes }) => [...changes]),
      savedVersion: this.savedVersion,
      savedAt: this.savedAt,
      ...this.fileNews,
    };
  }

  /** Saves after every save before it. What is in the file already is not written again. */
  save(overwrite: boolean): Promise<SaveAnswer> {
    const answer = this.saves.then(() => this.saveNow(overwrite));
    this.saves = answer;
    return answer;
  }

  /** Goes on with another file, in which the shop of `version` is. */
  async moveTo(file: ShopFile, journal: Journal, version: number): Promise<void> {
    const before = this.journal;
    this.file = file;
    this.journal = journal;
    this.markSaved(version);
    await before.close(false);
  }

  /** Stops looking and saving. The journal stays where edits are in it alone. */
  async letGo(): Promise<void> {
    clearInterval(this.looking);
    this.rhythm.stop();
    await this.saves;
    await this.journal.close(!this.isSaved);
    this.bell.ring();
  }

  private async saveNow(overwrite: boolean): Promise<SaveAnswer> {
    const { shop, version } = this;
    const writing = (sha: string): Promise<void> =>
      this.journal.append({ kind: "saving", version, sha, at: this.time() }).catch(() => undefined);
    try {
      const isUpToDate = this.isSaved && !overwrite && (await this.file.state()) === "as-saved";
      const result = isUpToDate ? "saved" : await this.file.save(textOf(shop), overwrite, writing);
      return result === "saved" ? this.saved(version) : this.conflict(result);
    } catch (error) {
      return this.failed(error);
    }
  }

  private saved(version: number): SaveAnswer {
    const savedAt = this.markSaved(version);
    if (!this.isSaved) this.rhythm.edited();
    return { status: "saved", version, savedAt };
  }

  private markSaved(version: number): string {
    const savedAt = this.time();
    this.savedVersion = version;
    this.savedAt = savedAt;
    this.rhythm.saved();
    this.tell({ file: "as-saved", sentence: null });
    return savedAt;
  }

  private conflict(reason: Exclude<FileState, "as-saved">): SaveAnswer {
    this.rhythm.pause();
    const sentence = conflictWords(this.fileName, reason);
    this.tell({ file: reason, sentence });
    const choices: ("reload" | "save-as" | "overwrite")[] =
      reason === "changed" ? ["reload", "save-as", "overwrite"] : ["save-as", "overwrite"];
    return { status: "conflict", reason, sentence, choices };
  }

  private failed(error: unknown): SaveAnswer {
    const { code } = troubleOf(error);
    const sentence = notSavedWords(this.fileName, error);
    this.tell({ file: code === "read-only" ? "read-only" : "failed", sentence });
    this.rhythm.failed();
    return { status: "failed", code, sentence };
  }

  /** Tells the windows when something else has changed or removed the file. */
  private async look(): Promise<void> {
    await this.saves;
    const state = await this.file.state().catch(() => "as-saved" as const);
    const was = this.fileNews.file;
    if (state !== "as-saved" && was !== state) this.conflict(state);
    if (state === "as-saved" && (was === "changed" || was === "removed")) {
      this.tell({ file: "as-saved", sentence: null });
      this.rhythm.saved();
      if (!this.isSaved) this.rhythm.edited();
    }
  }

  private tell(news: Pick<WatchAnswer, "file" | "sentence">): void {
    this.fileNews = news;
    this.bell.ring();
  }

  private time(): string {
    return new Date(this.now()).toISOString();
  }
}

/** A shop as its file has it. */
export function textOf(shop: Shop): string {
  return `${JSON.stringify(shop, null, 2)}\n`;
}

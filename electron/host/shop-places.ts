import { Backups } from "../store/backups.ts";
import type { Folders } from "../store/data-folder.ts";
import { Journal } from "../store/journal.ts";
import { JournalFolder } from "../store/journal-folder.ts";
import type { ShopFile } from "../store/shop-file.ts";

/** What the program keeps about shop files, and the clock, ms. */
export interface Places {
  readonly folders: Folders;
  readonly now: () => number;
}

export function backupsOf({ folders, now }: Places, path: string): Backups {
  return new Backups(folders.backupsOf(path), now);
}

export function journalsOf({ folders, now }: Places, path: string): JournalFolder {
  return new JournalFolder(folders.journalsOf(path), now);
}

/** A journal of this process for a file as it is now. One that cannot be begun is told with the first edit. */
export async function beginJournal(places: Places, file: ShopFile): Promise<Journal> {
  const journal = new Journal(journalsOf(places, file.path).newPath());
  const at = new Date(places.now()).toISOString();
  await journal
    .append({ kind: "begin", schema: 1, path: file.path, base: file.revision, at })
    .catch(() => undefined);
  return journal;
}

import { basename, dirname } from "node:path";
import type { Finding } from "../../core/shop/finding.ts";
import { readShop } from "../../core/shop/read-shop.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { troubleOf } from "../store/file-trouble.ts";
import type { FoundJournal } from "../store/journal-folder.ts";
import { type UnsavedEdits, unsavedEdits } from "../store/recovery.ts";
import { ShopFile } from "../store/shop-file.ts";
import { backupsOf, journalsOf, type Places } from "./shop-places.ts";

/** Edits that earlier processes left behind, and the journals that hold them. */
export interface Found {
  readonly edits: UnsavedEdits;
  readonly journals: readonly FoundJournal[];
}

/** A shop file as it was found. */
export interface FileOnDesk {
  readonly shop: Shop;
  readonly file: ShopFile;
  readonly findings: readonly Finding[];
  readonly notes: readonly string[];
  readonly found: Found | null;
}

/** Reads one shop file and looks for what concerns it: edits of an earlier run, other windows, the right to write. */
export async function openFile(path: string, places: Places): Promise<FileOnDesk | { findings: Finding[] }> {
  let read: { file: ShopFile; text: string };
  try {
    read = await ShopFile.open(path, backupsOf(places, path));
  } catch (error) {
    return { findings: [fileFinding(path, error)] };
  }
  const { file, text } = read;
  const { shop, findings } = readShop(text);
  if (!shop) return { findings };
  const { orphans, isOpenElsewhere } = await journalsOf(places, path).look();
  const notes = [
    ...(findings.length > 0 ? [await keepAsItWas(places, path, text)] : []),
    ...((await file.isReadOnly()) ? [readOnlyNote(path)] : []),
    ...(isOpenElsewhere ? [elsewhereNote(path)] : []),
  ];
  return { shop, file, findings, notes, found: await foundIn(orphans, file, places) };
}

/** What could not be read would be missing from the next save. */
async function keepAsItWas(places: Places, path: string, text: string): Promise<string> {
  const kept = await backupsOf(places, path)
    .keep(Buffer.from(text), true)
    .then(
      () => "the file as it was is among its backups",
      () => "it could not be copied to the backups, so save under another name",
    );
  return `Some entries of ${basename(path)} could not be read and are left out here: ${kept}.`;
}

function readOnlyNote(path: string): string {
  return `${basename(path)} may only be read. Edits are kept in the journal; save under another name to keep them for good.`;
}

function elsewhereNote(path: string): string {
  return `${basename(path)} is open in another window of the program. What is saved there is noticed here and never written over unasked.`;
}

/** Journals with nothing in them that the file does not have are done with. */
async function foundIn(
  orphans: readonly FoundJournal[],
  file: ShopFile,
  places: Places,
): Promise<Found | null> {
  const withEdits: { readonly journal: FoundJournal; readonly edits: UnsavedEdits }[] = [];
  for (const journal of orphans) {
    const edits = unsavedEdits(journal.entries, file.revision);
    if (edits) withEdits.push({ journal, edits });
    else await journalsOf(places, file.path).setAside(journal.path);
  }
  const last = withEdits.at(-1);
  if (!last) return null;
  const edits: UnsavedEdits = {
    changes: withEdits.flatMap((found) => [...found.edits.changes]),
    lastAt: last.edits.lastAt,
    followsOn: withEdits.length === 1 && last.edits.followsOn,
  };
  return { edits, journals: withEdits.map(({ journal }) => journal) };
}

function fileFinding(path: string, error: unknown): Finding {
  const name = basename(path);
  const { code = "" } = error as NodeJS.ErrnoException;
  const words = READ_TROUBLE[code] ?? troubleOf(error).words;
  return { severity: "error", code: "file", where: name, sentence: `${name} in ${dirname(path)}: ${words}.` };
}

const READ_TROUBLE: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file. It was moved, renamed or deleted: choose another",
  EISDIR: "this is a folder. Choose the shop file in it",
  EACCES: "the file may not be read. Ask for the right to read it",
};

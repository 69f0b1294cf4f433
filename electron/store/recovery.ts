import type { Change } from "../../core/shop/change.ts";
import { applyChange } from "../../core/shop/change.ts";
import { ENTRY_WORD, SHOP_LISTS } from "../../core/shop/shop-lists.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { JournalEntry } from "./journal-lines.ts";

/** Edits of a journal that are not in the file. */
export interface UnsavedEdits {
  readonly changes: readonly Change[];
  readonly lastAt: string;
  /** true: the file is in the very state that these edits follow on */
  readonly followsOn: boolean;
}

/**
 * Which edits of a journal the file does not have. The file's state is looked for among the states that the journal names; the
 * edits after it are missing. Where the file is in none of them, something else has written it: then every edit may be missing.
 * Null where nothing is. Example: begin on A, edit 1, saving B, edit 2, and the file is B: edit 2.
 */
export function unsavedEdits(entries: readonly JournalEntry[], fileRevision: string): UnsavedEdits | null {
  const known = entries.findLast(
    (entry) =>
      (entry.kind === "saving" && entry.sha === fileRevision) ||
      (entry.kind === "begin" && entry.base === fileRevision),
  );
  const inFile = known?.kind === "saving" ? known.version : 0;
  const missing = entries.filter((entry) => entry.kind === "edits").filter(({ version }) => version > inFile);
  const last = missing.at(-1);
  if (!last) return null;
  return {
    changes: missing.flatMap(({ changes }) => changes),
    lastAt: last.at,
    followsOn: known !== undefined,
  };
}

export interface PutBack {
  readonly changes: readonly Change[];
  /** how many found no place any more */
  readonly skipped: number;
}

/**
 * Edits made to fit a shop that has changed since: an entry that is there already is replaced rather than doubled, the
 * removal of what is gone is skipped.
 */
export function fitted(shop: Shop, changes: readonly Change[]): PutBack {
  const kept: Change[] = [];
  let current = shop;
  for (const change of changes) {
    const fit = fit1(current, change);
    if (!fit) continue;
    current = applyChange(current, fit).shop;
    kept.push(fit);
  }
  return { changes: kept, skipped: changes.length - kept.length };
}

function fit1(shop: Shop, change: Change): Change | null {
  if (change.kind === "settings") return change;
  const id = change.kind === "put" ? change.entry.id : change.id;
  const isThere = shop[change.list].some((entry) => entry.id === id);
  if (change.kind === "remove") return isThere ? { ...change, at: null } : null;
  return isThere ? { ...change, at: null } : change;
}

/** What is in the edits, one line a list. Example: "orders: 3 put, 1 removed". */
export function linesOf(changes: readonly Change[]): string[] {
  const lines = SHOP_LISTS.flatMap((list) => {
    const own = changes.filter((change) => change.kind !== "settings" && change.list === list);
    if (own.length === 0) return [];
    const put = own.filter(({ kind }) => kind === "put").length;
    const counts = [put > 0 ? `${put} put` : "", own.length > put ? `${own.length - put} removed` : ""];
    return [`${ENTRY_WORD[list]}s: ${counts.filter((count) => count !== "").join(", ")}`];
  });
  const hasSettings = changes.some(({ kind }) => kind === "settings");
  return hasSettings ? [...lines, "name, currency or money rules changed"] : lines;
}

import { type Accessor, createMemo, createSignal } from "solid-js";
import type { Change } from "../../core/shop/change.ts";
import type { Finding } from "../../core/shop/finding.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { Host } from "../../electron/contract.ts";
import type { Opened } from "../../electron/contract/shop-messages.ts";
import { createFindings } from "./findings.ts";
import { type Along, edit, type Edited, NO_HISTORY, redo, undo } from "./history.ts";
import { createSaving, type Saving } from "./saving.ts";

export interface ApplyOptions {
  /** edits with the same text, close in time, are undone at once: "O-17/note" while a note is typed */
  readonly typing?: string;
  /** what belongs to the same step outside of the shop document: done now, taken back with undo */
  readonly along?: Along;
}

/**
 * The open shop. It is a value that is never changed: `apply` puts another one in its place, remembers the way back and sends
 * the edit to the journal. Example: `shop.apply("new machine", [{ kind: "put", list: "machines", entry, at: null }])`.
 */
export interface ShopStore {
  readonly opened: Opened;
  readonly shop: Accessor<Shop>;
  /** what is wrong or doubtful, brought up to date shortly after each edit; those of unread entries first */
  readonly findings: Accessor<readonly Finding[]>;
  /** the same by "list/id", errors first: findingsAt("orders/O-17") */
  readonly findingsAt: (place: string) => readonly Finding[];
  readonly apply: (label: string, changes: readonly Change[], options?: ApplyOptions) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** what the next undo or redo takes, in words; null: nothing */
  readonly undoLabel: Accessor<string | null>;
  readonly redoLabel: Accessor<string | null>;
  readonly saving: Saving;
}

interface ShopStoreOptions {
  readonly host: Host;
  readonly opened: Opened;
  /** a clock, ms */
  readonly now: () => number;
  readonly onLost: (sentence: string) => void;
  /** said aloud and shown: "Undone: paste of 12 orders." */
  readonly tell: (sentence: string) => void;
}

/** The store of one open shop; belongs to the root that made it. */
export function createShopStore({ host, opened, now, onLost, tell }: ShopStoreOptions): ShopStore {
  const [shop, setShop] = createSignal<Shop>(opened.shop);
  const [history, setHistory] = createSignal(NO_HISTORY);
  const judged = createFindings(opened.shop, opened.findings);
  const saving = createSaving({
    host,
    handle: opened.handle,
    version: opened.version,
    stamp: opened.stamp,
    shop: opened.shop,
    onRebased: takeRebased,
    onLost,
  });

  function take(edited: Edited): void {
    setShop(edited.shop);
    setHistory(edited.history);
    if (edited.changes.length === 0) return;
    judged.edited(edited.changes);
    saving.push(edited.changes, edited.shop);
  }

  /** A way back that was made on another shop would do harm, so it is forgotten. */
  function takeRebased(rebased: Shop): void {
    setShop(rebased);
    judged.loaded(rebased);
    setHistory(NO_HISTORY);
    tell("Another window has changed this shop too. Both changes are kept; undo starts anew from here.");
  }

  return {
    opened,
    shop,
    findings: judged.findings,
    findingsAt: judged.findingsAt,
    saving,
    apply: (label, changes, options = {}) => {
      const { typing = null, along = null } = options;
      if (changes.length === 0 && along === null) return;
      take(edit(shop(), history(), { label, changes, typing, atMs: now(), along }));
      along?.again();
    },
    undo: () => {
      const step = history().done.at(-1);
      const edited = undo(shop(), history());
      if (!step || !edited) return tell("There is nothing to undo.");
      take(edited);
      step.along?.back();
      tell(`Undone: ${step.label}.`);
    },
    redo: () => {
      const step = history().undone.at(-1);
      const edited = redo(shop(), history());
      if (!step || !edited) return tell("There is nothing to do again.");
      take(edited);
      step.along?.again();
      tell(`Done again: ${step.label}.`);
    },
    undoLabel: createMemo(() => history().done.at(-1)?.label ?? null),
    redoLabel: createMemo(() => history().undone.at(-1)?.label ?? null),
  };
}

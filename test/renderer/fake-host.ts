import type { Host } from "../../electron/contract.ts";
import type { Opened } from "../../electron/contract/shop-messages.ts";
import { DEFAULT_PREFERENCES } from "../../electron/contract/preferences.ts";
import { applyChanges } from "../../core/shop/change-many.ts";
import type { Change } from "../../core/shop/change.ts";
import type { Shop } from "../../core/shop/shop.ts";

/** A host in memory: it keeps the shop as the real one would and remembers what it was asked. */
export interface FakeHost {
  readonly host: Host;
  readonly opened: Opened;
  readonly calls: { readonly name: string; readonly input: unknown }[];
  readonly shop: () => Shop;
  /** another window edits the shop */
  readonly editElsewhere: (changes: readonly Change[]) => void;
  /** answers of the next calls of a method, in place of the usual ones */
  readonly answerNext: (name: string, answer: unknown) => void;
}

export function fakeHost(shop: Shop): FakeHost {
  let current = shop;
  let version = 0;
  const log: Change[][] = [];
  const calls: { name: string; input: unknown }[] = [];
  const scripted = new Map<string, unknown[]>();
  const commit = (input: { baseVersion: number; changes: readonly Change[] }): unknown => {
    if (input.baseVersion < version) {
      return { status: "behind", version, changes: log.slice(input.baseVersion).flat() };
    }
    take(input.changes);
    return { status: "committed", version, warning: null };
  };
  const take = (changes: readonly Change[]): void => {
    current = applyChanges(current, changes).shop;
    version += 1;
    log.push([...changes]);
  };
  const usual: Readonly<Record<string, (input: never) => unknown>> = {
    commit,
    save: () => ({ status: "saved", version, savedAt: "2026-11-25T12:00:00Z" }),
    readPlan: () => ({ plan: null }),
    keepPlan: () => ({ status: "kept" }),
    listRecent: () => ({ recent: [] }),
    readPreferences: () => ({ preferences: DEFAULT_PREFERENCES }),
    writePreferences: () => ({ status: "kept" }),
    writeExport: () => ({ status: "not-here", sentence: "" }),
  };
  const call = async (name: string, input: unknown): Promise<unknown> => {
    calls.push({ name, input });
    const next = scripted.get(name)?.shift();
    if (next !== undefined) return next;
    // A watch waits for news that never come.
    if (name === "watch") return new Promise(() => undefined);
    const answer = usual[name];
    if (!answer) throw new Error(`the fake host knows no ${name}`);
    return { ok: true, value: structuredClone(answer(structuredClone(input) as never)) };
  };
  const opened: Opened = {
    status: "opened",
    handle: "h1",
    fileName: "test.shop.json",
    folder: "a folder",
    shop,
    findings: [],
    version: 0,
    stamp: 0,
    isDemo: false,
    notes: [],
    recovery: null,
  };
  return {
    host: { call } as Host,
    opened,
    calls,
    shop: () => current,
    editElsewhere: take,
    answerNext: (name, answer) => scripted.set(name, [...(scripted.get(name) ?? []), answer]),
  };
}

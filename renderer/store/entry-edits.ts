import { type Finding, stepsOf, whereOf } from "../../core/shop/finding.ts";
import type { Entry } from "../../core/shop/shop-lists.ts";
import type { GridEdit } from "../components/grid/grid-column.ts";
import { changesOfEntries, type ReferredList } from "./renames.ts";
import { useStores } from "./stores.ts";

/** Edits and findings of one list that other lists refer to. */
export interface EntryEdits<List extends ReferredList> {
  /** an edit of its grid; renamed entries are renamed wherever they are named */
  readonly edit: (edit: GridEdit<Entry<List>>) => void;
  /** one entry as it is to be; `before` is its id until now */
  readonly put: (before: string, entry: Entry<List>, what: string) => void;
  /** what stands at a cell of the grid; fields that the grid lacks are told at the column that `columnOf` names */
  readonly findingAt: (entry: Entry<List>, columnId: string) => Finding | undefined;
  /** what stands at a field of the panel, by its place in the entry: "needs/heatDeflectionC" */
  readonly findingAtField: (entry: Entry<List>, field: string) => Finding | undefined;
}

/**
 * Edits of a list through the store, each one step of undo. `columnOf` tells where a finding about a field is shown.
 * Example: `createEntryEdits("machines", columnOfField).put("P1", { ...machine, setUpMin: 20 }, "set-up of P1")`.
 */
export function createEntryEdits<List extends ReferredList>(
  list: List,
  columnOf: (field: string) => string = (field) => field,
): EntryEdits<List> {
  const { shop } = useStores();
  const edit = (made: GridEdit<Entry<List>>): void =>
    shop.apply(made.label, changesOfEntries(shop.shop(), list, made));
  return {
    edit,
    put: (before, entry, what) => {
      const entries: readonly Entry[] = shop.shop()[list];
      const place = entries.findIndex(({ id }) => id === before);
      if (place >= 0) edit({ label: what, replaced: [{ place, row: entry }], inserted: [], removed: [] });
    },
    findingAt: (entry, columnId) =>
      shop.findingsAt(whereOf(list, entry.id)).find((finding) => columnOf(fieldOf(finding)) === columnId),
    findingAtField: (entry, field) =>
      shop
        .findingsAt(whereOf(list, entry.id))
        .find((finding) => `${fieldOf(finding)}/`.startsWith(`${field}/`)),
  };
}

/** Field within its entry. Example: "parts/P/needs/heatDeflectionC" gives "needs/heatDeflectionC". */
function fieldOf({ where }: Finding): string {
  return stepsOf(where).slice(2).join("/");
}

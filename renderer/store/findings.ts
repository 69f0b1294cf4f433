import { type Accessor, createMemo, createSignal, onCleanup } from "solid-js";
import type { Change } from "../../core/shop/change.ts";
import { type Finding, stepsOf, whereOf } from "../../core/shop/finding.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { startChecking } from "../worker/check-client.ts";
import { groupBy } from "./group-by.ts";

export interface Findings {
  readonly findings: Accessor<readonly Finding[]>;
  readonly findingsAt: (place: string) => readonly Finding[];
  /** tells of an edit of the shop */
  readonly edited: (changes: readonly Change[]) => void;
  /** tells of another shop in its place */
  readonly loaded: (shop: Shop) => void;
}

const NONE: readonly Finding[] = [];

/** Findings of the shop, brought up to date shortly after each edit. `unread` are those of entries that could not be read. */
export function createFindings(shop: Shop, unread: readonly Finding[]): Findings {
  const [checked, setChecked] = createSignal<readonly Finding[]>(NONE);
  const checker = startChecking(setChecked);
  checker.load(shop);
  onCleanup(checker.end);
  const findings = createMemo(() => [...unread, ...checked()]);
  const byPlace = createMemo(() => groupBy(findings(), placeOf));
  return {
    findings,
    findingsAt: (place) => byPlace().get(place) ?? NONE,
    edited: checker.edit,
    loaded: checker.load,
  };
}

/** List and id of what a finding is about: "orders/O-17/dueAt" gives "orders/O-17". */
function placeOf({ where }: Finding): string {
  return whereOf(...stepsOf(where).slice(0, 2));
}

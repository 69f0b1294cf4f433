import { type Accessor, createMemo, createSignal } from "solid-js";
import { checkCase } from "../../../core/shop/check-case.ts";
import type { Change } from "../../../core/shop/change.ts";
import { type Finding, stepsOf } from "../../../core/shop/finding.ts";
import type { Candidate, PurchaseCase } from "../../../core/shop/purchase-case.ts";
import type { ShopStore } from "../../store/shop-store.ts";
import { useStores } from "../../store/stores.ts";

/** The case that is looked at, and its edits, each one step of undo. */
export interface PurchaseState {
  /** null: the shop has no case */
  readonly open: Accessor<PurchaseCase | null>;
  readonly choose: (caseId: string) => void;
  /** `what` stands after "Undo": "budget of the case" */
  readonly put: (next: PurchaseCase, what: string) => void;
  readonly putCandidate: (next: Candidate, what: string) => void;
  readonly add: (next: PurchaseCase, what: string) => void;
  readonly remove: () => void;
  readonly findings: Accessor<readonly Finding[]>;
  /** about one field of the case: "financing/taxPct" */
  readonly findingsAt: (field: string) => readonly Finding[];
}

/** Which case is looked at, by shop. */
const kept = new WeakMap<ShopStore, ReturnType<typeof createSignal<string | null>>>();

export function createPurchaseState(): PurchaseState {
  const { shop } = useStores();
  const signal = kept.get(shop) ?? createSignal<string | null>(null);
  kept.set(shop, signal);
  const [openId, choose] = signal;
  const open = createMemo(() => {
    const { cases } = shop.shop();
    return cases.find(({ id }) => id === openId()) ?? cases[0] ?? null;
  });
  const findings = createMemo(() => {
    const shown = open();
    return shown ? checkCase(shop.shop(), shown) : [];
  });
  const put = (next: PurchaseCase, what: string): void => shop.apply(what, [putChange(next)]);
  return {
    open,
    choose: (caseId) => void choose(caseId),
    put,
    putCandidate: (next, what) => {
      const before = open();
      if (!before) return;
      const candidates = before.candidates.map((one) => (one.id === next.id ? next : one));
      put({ ...before, candidates }, `${what} of ${next.name.slice(0, MOST_NAME_CHARS)}`);
    },
    add: (next, what) => {
      put(next, what);
      choose(next.id);
    },
    remove: () => {
      const before = open();
      if (before)
        shop.apply("removal of a case", [{ kind: "remove", list: "cases", id: before.id, at: null }]);
    },
    findings,
    findingsAt: (field) => findings().filter(({ where }) => `${fieldOf(where)}/`.startsWith(`${field}/`)),
  };
}

const MOST_NAME_CHARS = 40;

function putChange(entry: PurchaseCase): Change {
  return { kind: "put", list: "cases", entry, at: null };
}

/** Field within the case. Example: "cases/C-1/financing/taxPct" gives "financing/taxPct". */
function fieldOf(where: string): string {
  return stepsOf(where).slice(2).join("/");
}

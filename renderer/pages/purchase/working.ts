import { type Accessor, createSignal, type Setter } from "solid-js";
import type { PurchaseCase } from "../../../core/shop/purchase-case.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import type { ShopStore } from "../../store/shop-store.ts";
import { type PurchaseRun, startPurchase } from "../../worker/purchase-client.ts";
import type { PurchaseFound, PurchaseProgress } from "../../worker/purchase-messages.ts";

/** An answer and what it was asked of. */
export interface CaseAnswered {
  readonly shop: Shop;
  readonly purchaseCase: PurchaseCase;
  readonly found: PurchaseFound;
}

/** The run that is going on. */
interface Going {
  readonly caseId: string;
  readonly progress: PurchaseProgress;
  readonly isStopping: boolean;
}

/** Working out cases of one shop: it goes on while another page is looked at, and its answers stay until the shop is closed. */
export interface Working {
  readonly going: Accessor<Going | null>;
  readonly answerOf: (caseId: string) => CaseAnswered | null;
  /** why the last run gave no answer, by case */
  readonly troubleOf: (caseId: string) => string | null;
  readonly start: (shop: Shop, purchaseCase: PurchaseCase) => void;
  readonly stop: () => void;
}

const kept = new WeakMap<ShopStore, Working>();
let last: { readonly of: ShopStore; readonly working: Working } | null = null;

/** The runs of a shop; those of another that was open before are ended. */
export function workingOf(shop: ShopStore): Working {
  const working = kept.get(shop) ?? createWorking();
  kept.set(shop, working);
  if (last && last.of !== shop) last.working.stop();
  last = { of: shop, working };
  return working;
}

const STARTING: PurchaseProgress = { stage: "reading the demand", done: 0, all: 0 };

function createWorking(): Working {
  const [going, setGoing] = createSignal<Going | null>(null);
  const [answers, setAnswers] = createSignal<ReadonlyMap<string, CaseAnswered>>(new Map());
  const [troubles, setTroubles] = createSignal<ReadonlyMap<string, string | null>>(new Map());
  let run: PurchaseRun | null = null;
  return {
    going,
    answerOf: (caseId) => answers().get(caseId) ?? null,
    troubleOf: (caseId) => troubles().get(caseId) ?? null,
    start: (shop, purchaseCase) => {
      const caseId = purchaseCase.id;
      put(setTroubles, caseId, null);
      const started = startPurchase(shop, purchaseCase, {
        onProgress: (progress) => setGoing((before) => before && { ...before, progress }),
        onFound: (found) => put(setAnswers, caseId, { shop, purchaseCase, found }),
        onEnd: (sentence) => {
          put(setTroubles, caseId, sentence);
          if (run === started || going()?.caseId === caseId) setGoing(null);
        },
      });
      run = started;
      setGoing({ caseId, progress: STARTING, isStopping: false });
    },
    stop: () => {
      setGoing((before) => before && { ...before, isStopping: true });
      run?.stop();
    },
  };
}

function put<Value>(set: Setter<ReadonlyMap<string, Value>>, key: string, value: Value): void {
  set((before) => new Map([...before, [key, value]]));
}

const OF_SHOP = ["timeZone", "currency", "costing", "calendars", "machines", "feedstocks", "parts"] as const;
const SAYS_NOTHING: ReadonlySet<string> = new Set(["name", "note"]);

/** True: what an answer followed from has been edited since. Example: a case's note changes nothing, its budget does. */
export function isBefore(answered: CaseAnswered, shop: Shop, purchaseCase: PurchaseCase): boolean {
  const before = answered.purchaseCase;
  const keys = new Set([...Object.keys(before), ...Object.keys(purchaseCase)]) as Set<keyof PurchaseCase>;
  const isSameCase = [...keys].every((key) => SAYS_NOTHING.has(key) || before[key] === purchaseCase[key]);
  const ofOrders = purchaseCase.demand.kind === "orders" && answered.shop.orders !== shop.orders;
  return !isSameCase || ofOrders || OF_SHOP.some((key) => answered.shop[key] !== shop[key]);
}

/** What goes on, in words: "Planning the weeks, 12 of 60 jobs done". */
export function progressWords({ stage, done, all }: PurchaseProgress): string {
  const jobs = all === null ? `, ${done} jobs done` : all > 0 ? `, ${done} of ${all} jobs done` : "";
  return `${stage.charAt(0).toUpperCase()}${stage.slice(1)}${jobs}`;
}

/** The share that is done, 0 to 1; null: nobody knows. */
export function progressShare({ done, all }: PurchaseProgress): number | null {
  return all === null || all === 0 ? null : done / all;
}

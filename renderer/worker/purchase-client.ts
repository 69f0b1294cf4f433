import type { PurchaseCase } from "../../core/shop/purchase-case.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { PurchaseFound, PurchaseMessage, PurchaseNews, PurchaseProgress } from "./purchase-messages.ts";

/** Who hears of a run. After `onEnd` nothing more comes. */
export interface PurchaseListener {
  readonly onProgress: (progress: PurchaseProgress) => void;
  /** an answer, better each time; the first is rough */
  readonly onFound: (found: PurchaseFound) => void;
  /** null: worked out, or stopped by `stop`; else why no further answer comes, in a sentence */
  readonly onEnd: (sentence: string | null) => void;
}

export interface PurchaseRun {
  /** keeps what is done and answers from it; a second call ends at once */
  readonly stop: () => void;
}

/** More workers than this would hold more memory than they save time. */
const MOST_THREADS = 8;

let worker: Worker | null = null;
let runs = 0;
let leave: (() => void) | null = null;

/** Works out a case in workers; the shop is plain data. A run still going on is ended. */
export function startPurchase(
  shop: Shop,
  purchaseCase: PurchaseCase,
  listener: PurchaseListener,
): PurchaseRun {
  leave?.();
  const run = ++runs;
  const asked = (worker ??= started());
  const over = new AbortController();
  const { signal } = over;
  const end = (sentence: string | null): void => {
    if (signal.aborted) return;
    over.abort();
    leave = null;
    listener.onEnd(sentence);
  };
  leave = () => end("Another case is worked out now.");
  const hear = ({ data }: MessageEvent<PurchaseNews>): void => {
    if (data.run !== run) return;
    if (data.kind === "progress") listener.onProgress(data.progress);
    else if (data.kind === "found") listener.onFound(data.found);
    else end(data.kind === "end" ? null : data.sentence);
  };
  /** A worker that is ended has forgotten what it found; the next run starts another. */
  const quit = (sentence: string | null): void => {
    asked.terminate();
    if (worker === asked) worker = null;
    end(sentence);
  };
  asked.addEventListener("message", hear, { signal });
  asked.addEventListener("error", ({ message }) => quit(`The worker of purchase cases failed: ${message}`), {
    signal,
  });
  const orders = purchaseCase.demand.kind === "orders" ? shop.orders : [];
  const works: Shop = { ...shop, orders, builds: [], quotes: [], cases: [] };
  asked.postMessage({
    kind: "work",
    run,
    shop: works,
    purchaseCase,
    threads: threads(),
  } satisfies PurchaseMessage);
  let isStopping = false;
  return {
    stop: () => {
      if (signal.aborted) return;
      if (isStopping) return quit(null);
      isStopping = true;
      asked.postMessage({ kind: "stop", run } satisfies PurchaseMessage);
    },
  };
}

function started(): Worker {
  return new Worker(new URL("./purchase-worker.ts", import.meta.url), { type: "module" });
}

/** One core is left to the window. */
function threads(): number {
  return Math.max(1, Math.min(MOST_THREADS, (navigator.hardwareConcurrency || 2) - 1));
}

import type { Change } from "../../core/shop/change.ts";
import { applyChanges } from "../../core/shop/change-many.ts";
import { checkShop } from "../../core/shop/check-shop.ts";
import type { Finding } from "../../core/shop/finding.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { CheckMessage, CheckNews } from "./check-worker.ts";

/** Judges a shop while it is edited; findings come a moment after each edit. */
export interface Checker {
  readonly load: (shop: Shop) => void;
  readonly edit: (changes: readonly Change[]) => void;
  readonly end: () => void;
}

/** A checker in a worker of its own, so that judging thousands of orders never holds up the window. */
export function startChecking(onFindings: (findings: readonly Finding[]) => void): Checker {
  if (typeof Worker === "undefined") return checkHere(onFindings);
  const worker = new Worker(new URL("./check-worker.ts", import.meta.url), { type: "module" });
  let run = 0;
  worker.addEventListener("message", ({ data }: MessageEvent<CheckNews>) => {
    if (data.run === run) onFindings(data.findings);
  });
  const post = (message: CheckMessage): void => worker.postMessage(message);
  return {
    load: (shop) => post({ kind: "shop", run: ++run, shop }),
    edit: (changes) => post({ kind: "edits", run: ++run, changes }),
    end: () => worker.terminate(),
  };
}

/** Where there are no workers, as in tests: right here. */
function checkHere(onFindings: (findings: readonly Finding[]) => void): Checker {
  let shop: Shop | null = null;
  const take = (next: Shop): void => {
    shop = next;
    onFindings(checkShop(next));
  };
  return {
    load: take,
    edit: (changes) => shop && take(applyChanges(shop, changes).shop),
    end: () => undefined,
  };
}

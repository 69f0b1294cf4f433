import type { Change } from "../../core/shop/change.ts";
import { applyChanges } from "../../core/shop/change-many.ts";
import { checkShop } from "../../core/shop/check-shop.ts";
import type { Finding } from "../../core/shop/finding.ts";
import type { Shop } from "../../core/shop/shop.ts";

/** What the checking worker is told: a whole shop, or edits of the one it has. */
export type CheckMessage = { readonly run: number } & (
  | { readonly kind: "shop"; readonly shop: Shop }
  | { readonly kind: "edits"; readonly changes: readonly Change[] }
);

/** Findings of the shop as it was after the message of that run. */
export interface CheckNews {
  readonly run: number;
  readonly findings: readonly Finding[];
}

let shop: Shop | null = null;
let run = 0;
let timer: ReturnType<typeof setTimeout> | undefined;

/** Judges the shop off the window's thread. Messages that come close together are judged once. */
self.addEventListener("message", ({ data }: MessageEvent<CheckMessage>) => {
  run = data.run;
  if (data.kind === "shop") shop = data.shop;
  else if (shop) shop = applyChanges(shop, data.changes).shop;
  clearTimeout(timer);
  timer = setTimeout(answer, 0);
});

function answer(): void {
  if (shop) self.postMessage({ run, findings: checkShop(shop) } satisfies CheckNews);
}

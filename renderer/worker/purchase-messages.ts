import type { CaseStudy } from "../../core/purchase/case-study.ts";
import type { CaseProgress } from "../../core/purchase/evaluate.ts";
import type { SampleGap } from "../../core/purchase/sample-plans.ts";
import type { Finding } from "../../core/shop/finding.ts";
import type { PurchaseCase } from "../../core/shop/purchase-case.ts";
import type { Shop } from "../../core/shop/shop.ts";

/** What the worker of purchase cases is told. The shop is plain data; its quotes and cases play no part. */
export type PurchaseMessage =
  | {
      readonly kind: "work";
      readonly run: number;
      readonly shop: Shop;
      readonly purchaseCase: PurchaseCase;
      /** threads for the jobs, at least one */
      readonly threads: number;
    }
  /** what is done is kept and answered from */
  | { readonly kind: "stop"; readonly run: number };

/** Where the work is. `all` null: nobody knows how many there will be. */
export interface PurchaseProgress {
  readonly stage: CaseProgress["stage"] | "asking further";
  readonly done: number;
  readonly all: number | null;
}

/** A case answered as far as it is known. */
export interface PurchaseFound {
  /** the shop that was reckoned with: without what had to be set aside */
  readonly shop: Shop;
  readonly setAside: number;
  readonly study: CaseStudy;
  readonly gap: SampleGap | null;
  readonly findings: readonly Finding[];
}

/** What it answers. refused: the case cannot be worked out, in a sentence; fault: a fault of the program. */
export type PurchaseNews = { readonly run: number } & (
  | { readonly kind: "progress"; readonly progress: PurchaseProgress }
  | { readonly kind: "found"; readonly found: PurchaseFound }
  /** nothing more comes: worked out, or stopped */
  | { readonly kind: "end" }
  | { readonly kind: "refused"; readonly sentence: string }
  | { readonly kind: "fault"; readonly sentence: string }
);

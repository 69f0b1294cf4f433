import type { PlanDocument } from "../../core/plan/plan-document.ts";
import type { PlanProgress } from "../../core/plan/plan-week.ts";
import type { Shop } from "../../core/shop/shop.ts";

/** What to plan and how long to search. */
export interface PlanOptions {
  /** start, local or with an offset, such as "2026-11-30T06:00" */
  readonly from: string;
  readonly days: number;
  /** time to search, s */
  readonly seconds: number;
  /** a plan within so many % of the proven bound is good enough; 0: search to the end of the time */
  readonly gapPct: number;
  readonly seed: number;
}

/** What the planning worker is told. The shop is plain data, as the document has it. */
export interface PlanMessage {
  readonly run: number;
  readonly shop: Shop;
  readonly options: PlanOptions;
  /** one 32-bit cell, not 0: stop; null where the page may not share memory */
  readonly stop: SharedArrayBuffer | null;
}

/** What it answers. refused: the shop cannot be planned, in sentences; fault: a fault of the program. */
export type PlanNews = { readonly run: number } & (
  | { readonly kind: "progress"; readonly progress: PlanProgress }
  | { readonly kind: "plan"; readonly plan: PlanDocument }
  | { readonly kind: "refused"; readonly sentence: string }
  | { readonly kind: "fault"; readonly sentence: string }
);

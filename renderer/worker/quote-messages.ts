import type { PlanDocument } from "../../core/plan/plan-document.ts";
import type { QuoteAnswer, QuoteAsked } from "../../core/quote/quote-answer.ts";
import type { QuoteDeskRequest } from "../../core/quote/quote-desk.ts";
import type { Shop } from "../../core/shop/shop.ts";

/** What the worker of quotes is told. Of each kind the newest counts: what was asked before is let go. */
export type QuoteMessage =
  | {
      readonly kind: "desk";
      readonly desk: number;
      readonly shop: Shop;
      /** null: a quick plan is made first */
      readonly plan: PlanDocument | null;
      readonly request: QuoteDeskRequest;
      /** one 32-bit cell with the number of the newest question; null where the page may not share memory */
      readonly newest: SharedArrayBuffer | null;
    }
  | { readonly kind: "ask"; readonly desk: number; readonly run: number; readonly asked: QuoteAsked };

/** What it answers. refused: the shop cannot be planned, in a sentence; fault: a fault of the program. */
export type QuoteNews =
  | { readonly kind: "ready"; readonly desk: number; readonly setAside: number }
  | { readonly kind: "answer"; readonly run: number; readonly answer: QuoteAnswer }
  | { readonly kind: "refused"; readonly desk: number; readonly sentence: string }
  | { readonly kind: "fault"; readonly sentence: string };

import type { Quote } from "../../../core/shop/quote.ts";

/** States of a quote as shown. */
export const STATE_WORDS: Readonly<Record<Quote["state"], string>> = {
  draft: "Draft",
  sent: "Sent",
  accepted: "Accepted",
  declined: "Declined",
};

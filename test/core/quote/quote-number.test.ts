import { expect, test } from "vitest";
import { freeOrderId, nextQuoteId, quoteLineId } from "../../../core/quote/quote-number.ts";
import { aQuote } from "../../fixtures/a-quote.ts";
import { anOrder } from "../../fixtures/a-route.ts";

const numbered = (...ids: string[]) => ({ quotes: ids.map((id) => aQuote({ id })) });

test("numbers of a year go on from the highest, whatever else there is", () => {
  expect(nextQuoteId(numbered(), 2026)).toBe("Q-2026-0001");
  expect(nextQuoteId(numbered("Q-2026-0006", "Q-2026-0002", "Q-2025-0041", "Q-1", "Q-2026-x9"), 2026)).toBe(
    "Q-2026-0007",
  );
  expect(nextQuoteId(numbered("Q-2026-9999"), 2026)).toBe("Q-2026-10000");
});

test("a line's id is the number with its place, or a free one like it", () => {
  expect(quoteLineId("Q-2026-0007", 2, { orders: [] })).toBe("Q-2026-0007-2");
  const orders = [anOrder({ id: "Q-2026-0007-2" })];
  expect(quoteLineId("Q-2026-0007", 2, { orders })).toBe("Q-2026-0007-2-2");
  expect(freeOrderId("A", new Set(["A", "A-2"]))).toBe("A-3");
});

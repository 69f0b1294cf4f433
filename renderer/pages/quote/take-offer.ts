import type { AnswerLine } from "../../../core/quote/quote-answer.ts";
import type { RushOption } from "../../../core/quote/rush.ts";
import type { QuoteState } from "./quote-state.ts";
import { emptyLine } from "./request.ts";

/**
 * Takes an offer for a wanted date. What the request can say, it says, and is answered anew: the date must hold, a pin is taken
 * off, the copies are two lines. What the works must do for it (overtime, buying, another polymer) is kept with the line at the
 * offer's price. Example: 24 of 40 copies by Thursday: a line of 24 wanted then and one of 16 without a date.
 */
export function takeOffer(state: QuoteState, { asked }: AnswerLine, offer: RushOption): void {
  const key = state.read().lines.find((one) => one.asked.id === asked.id)?.key;
  const line = state.request().lines.find((one) => one.key === key);
  if (!line) return;
  const set = (part: Partial<typeof line>): void => state.setLine(line.key, { taken: null, ...part });
  if (offer.kind === "push-others") return set({ mustHold: true });
  if (offer.kind === "any-machine") return set({ machineId: "", mustHold: true });
  if (offer.kind === "any-feedstock" && line.feedstockId !== "")
    return set({ feedstockId: "", mustHold: true });
  if (offer.kind !== "split") return set({ taken: offer });
  const first = { ...line, quantity: String(offer.copiesInTime), mustHold: true, taken: null };
  const rest = asked.quantity - offer.copiesInTime;
  state.replaceLine(line.key, [
    first,
    {
      ...emptyLine(),
      part: line.part,
      quantity: String(rest),
      machineId: line.machineId,
      feedstockId: line.feedstockId,
    },
  ]);
}

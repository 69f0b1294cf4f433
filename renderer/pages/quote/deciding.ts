import { acceptQuote, declineQuote, type QuoteDecision } from "../../../core/quote/decide-quote.ts";
import type { QuoteAnswer } from "../../../core/quote/quote-answer.ts";
import type { Quote } from "../../../core/shop/quote.ts";
import { useStores } from "../../store/stores.ts";
import type { Asking } from "./asking.ts";
import { madeQuote } from "./made-quote.ts";
import type { QuoteState } from "./quote-state.ts";
import { atWorks } from "./works-clock.ts";

/** What can be done with a quote. All of it is one step of undo each. */
export interface Deciding {
  /** the quote as it would be saved now; null: nothing is asked for yet */
  readonly asItIs: () => Quote | null;
  /** why it cannot be saved, in a sentence; null: it can */
  readonly hindrance: () => string | null;
  /** true where it was done */
  readonly save: () => boolean;
  readonly send: () => void;
  /** `mustHold`: ids of the lines whose promise must hold */
  readonly accept: (mustHold: ReadonlySet<string>) => void;
  readonly decline: (reason: string) => void;
}

/** Saving, sending, accepting and declining the quote that is looked at. */
export function createDeciding(state: QuoteState, asking: Asking): Deciding {
  const stores = useStores();
  const { notes } = stores;
  const nowMin = (): number => atWorks(stores).nowMin;
  const { asItIs, fresh, hindrance } = createQuoteNow(state, asking);
  const keep = createKeeping(state, { asItIs, hindrance });
  const say = (isDone: boolean, sentence: string): boolean => {
    if (isDone) notes.tell(sentence);
    return isDone;
  };
  return {
    asItIs,
    hindrance,
    save: () => {
      const id = state.quoteId();
      const isDone = keep(`quote ${id}`, (quote) => putting(fresh() ?? quote));
      return say(isDone, `Saved as ${id}.`);
    },
    send: () => {
      const id = state.quoteId();
      const isDone = keep(`quote ${id} sent`, (quote) => putting({ ...quote, state: "sent" }));
      say(isDone, `${id} is marked as sent. It stays as it is; a new one can be made from it.`);
    },
    accept: (mustHold) => {
      const id = state.quoteId();
      const isDone = keep(`quote ${id} accepted`, (quote) => {
        const lines = quote.lines.map((line) => ({ ...line, allowLate: !mustHold.has(line.id) }));
        return acceptQuote(stores.shop.shop(), { ...quote, lines }, { atMin: nowMin() });
      });
      say(isDone, `${id} is accepted: its lines are orders now. Plan again to give them their places.`);
    },
    decline: (reason) => {
      const id = state.quoteId();
      const isDone = keep(`quote ${id} declined`, (quote) =>
        declineQuote(stores.shop.shop(), quote, { atMin: nowMin(), reason }),
      );
      say(isDone, `${id} is declined; why is kept with it.`);
    },
  };
}

function putting(entry: Quote): QuoteDecision {
  return { changes: [{ kind: "put", list: "quotes", entry, at: null }], findings: [] };
}

/** The quote as it is saved and as it is now. */
function createQuoteNow(state: QuoteState, asking: Asking) {
  const stores = useStores();
  const current = (): QuoteAnswer | null => (asking.isBehind() ? null : asking.answer());
  /** with the prices of now */
  const fresh = (): Quote | null => {
    const saved = state.quote();
    const made = madeQuote({
      shop: stores.shop.shop(),
      request: state.request(),
      read: state.read(),
      answer: current(),
      quoteId: state.quoteId(),
      askedMin: atWorks(stores).nowMin,
    });
    return made && saved ? { ...made, askedAt: saved.askedAt } : made;
  };
  const asItIs = (): Quote | null => {
    const saved = state.quote();
    return saved && !(state.canEdit() && state.isEdited()) ? saved : fresh();
  };
  const hindrance = (): string | null => {
    if (!state.canEdit()) return null;
    if (state.read().unready > 0)
      return "A line is not complete: give it a part and a quantity, or take it out.";
    if (state.read().lines.length === 0) return "Nothing is asked for yet: choose a part and a quantity.";
    return asking.trouble() === null && current() === null
      ? "The price is still being made: a moment."
      : null;
  };
  return { asItIs, fresh, hindrance };
}

/** Does something with the quote as one step of undo; gives true where it was done, and says why where not. */
function createKeeping(state: QuoteState, { asItIs, hindrance }: Pick<Deciding, "asItIs" | "hindrance">) {
  const { shop, notes } = useStores();
  return (label: string, decide: (quote: Quote) => QuoteDecision): boolean => {
    const quote = asItIs();
    const stopped = hindrance();
    if (stopped !== null) notes.alarm(stopped);
    if (stopped !== null || !quote) return false;
    const { changes, findings } = decide(quote);
    for (const { sentence } of findings) notes.alarm(sentence);
    if (findings.some(({ severity }) => severity === "error")) return false;
    const entry = changes.find((change) => change.kind === "put" && change.list === "quotes");
    const isTyped = state.canEdit() && (state.isEdited() || state.quote() === null);
    if (isTyped && entry?.kind === "put" && entry.list === "quotes") state.saved(entry.entry);
    shop.apply(label, changes);
    return true;
  };
}

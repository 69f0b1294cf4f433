import { type Accessor, createEffect, createMemo, createSignal, on, onCleanup, untrack } from "solid-js";
import type { QuoteAnswer, QuoteAsked } from "../../../core/quote/quote-answer.ts";
import { useStores } from "../../store/stores.ts";
import { askDesk, forgetQuestion, leaveDesk, openDesk } from "../../worker/quote-client.ts";
import { spokenAnswer } from "./answer-words.ts";
import type { QuoteState } from "./quote-state.ts";
import { askedOf } from "./request.ts";
import { atWorks } from "./works-clock.ts";

/** What is known of the request as it stands now. */
export interface Asking {
  /** the newest answer; of an older request while the new one has none yet (`isBehind`) */
  readonly answer: Accessor<QuoteAnswer | null>;
  readonly isBehind: Accessor<boolean>;
  /** opening: the desk is being made ready; quick: a plan is made for it first */
  readonly desk: Accessor<"opening" | "quick" | "ready">;
  /** why there is no answer, in a sentence; null: there is one, or it will come */
  readonly trouble: Accessor<string | null>;
  /** entries of the shop that cannot be planned */
  readonly setAside: Accessor<number>;
  /** read out by assistive technology, seldom */
  readonly spoken: Accessor<string>;
}

/** Typing goes on for less than this between two keys, ms. */
const TYPING_MS = 40;
/** A desk is opened again when edits of the shop have come to rest, ms. */
const EDITING_MS = 500;
/** A plan that is kept beside the shop is there by then, ms. */
const READING_MS = 200;
/** Nothing is read out until somebody has stopped typing for so long, ms. */
const SPOKEN_MS = 1200;

/** Asks the worker whatever the request says, and hears its answers. */
export function createAsking(state: QuoteState): Asking {
  const stores = useStores();
  const { shop, plan } = stores;
  const [answer, setAnswer] = createSignal<QuoteAnswer | null>(null);
  const [isBehind, setBehind] = createSignal(false);
  const [desk, setDesk] = createSignal<"opening" | "quick" | "ready">("opening");
  const [trouble, setTrouble] = createSignal<string | null>(null);
  const [setAside, setSetAside] = createSignal(0);
  const asked = createMemo<QuoteAsked | null>(
    () => (state.canEdit() ? askedOf(state.request(), state.read()) : null),
    null,
    {
      equals: (a, b) => JSON.stringify(a) === JSON.stringify(b),
    },
  );
  const listener = {
    onReady: (aside: number) => {
      setDesk("ready");
      setSetAside(aside);
    },
    onAnswer: (next: QuoteAnswer) => {
      setAnswer(next);
      setBehind(false);
    },
    onTrouble: (sentence: string) => {
      setTrouble(sentence);
      setAnswer(null);
    },
  };
  const open = (): void => {
    const { request } = atWorks(stores);
    setTrouble(null);
    const isOpening = openDesk({ shop: shop.shop(), plan: plan.plan(), request }, listener);
    if (isOpening) setDesk(plan.plan() ? "opening" : "quick");
    if (isOpening) setBehind(true);
  };
  if (plan.plan()) open();
  else later(READING_MS, open);
  createEffect(on([shop.shop, plan.plan], () => later(EDITING_MS, open), { defer: true }));
  createEffect(
    on(asked, (next) => {
      setBehind(true);
      const isOfAnother = !next?.lines.some(({ id }) =>
        answer()?.lines.some(({ asked: { id: before } }) => before === id),
      );
      if (isOfAnother) setAnswer(null);
      if (next) later(TYPING_MS, () => askDesk(next));
      else forgetQuestion();
    }),
  );
  onCleanup(leaveDesk);
  return { answer, isBehind, desk, trouble, setAside, spoken: createSpoken(answer, asked) };
}

/** Does something a little later, unless what it follows from changes before. */
function later(delayMs: number, act: () => void): void {
  const timer = setTimeout(act, delayMs);
  onCleanup(() => clearTimeout(timer));
}

/** One sentence for the first answer to a request and one for the whole, once typing has stopped. */
function createSpoken(
  answer: Accessor<QuoteAnswer | null>,
  asked: Accessor<QuoteAsked | null>,
): Accessor<string> {
  const { format } = useStores();
  const [spoken, setSpoken] = createSignal("");
  const isWhole = createMemo(() => answer()?.isRough === false);
  createEffect(
    on([asked, isWhole], () =>
      later(SPOKEN_MS, () => {
        const told = untrack(answer);
        if (told) setSpoken(spokenAnswer(told, untrack(format)));
      }),
    ),
  );
  return spoken;
}

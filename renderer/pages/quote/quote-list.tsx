import { createMemo, createSignal, createUniqueId, For, type JSX, Show } from "solid-js";
import { quoteValue } from "../../../core/quote/quote-value.ts";
import type { Quote } from "../../../core/shop/quote.ts";
import { NameText } from "../../components/name-text.tsx";
import { Select } from "../../components/select.tsx";
import { useStores } from "../../store/stores.ts";
import { HitRate } from "./hit-rate.tsx";
import type { QuoteState } from "./quote-state.ts";
import { STATE_WORDS } from "./state-words.ts";

/** More than anybody looks through by eye; a filter brings the others. */
const MOST_SHOWN = 300;

/** Quotes, the newest first: number, customer, value, date and state. Arrow keys move, Enter goes on to the request. */
export function QuoteList(props: { readonly state: QuoteState; readonly onEnter: () => void }): JSX.Element {
  const { shop } = useStores();
  const [only, setOnly] = createSignal("");
  const id = createUniqueId();
  const fitting = createMemo(() =>
    shop
      .shop()
      .quotes.filter(({ state }) => only() === "" || state === only())
      .toReversed(),
  );
  const shown = createMemo(() => fitting().slice(0, MOST_SHOWN));
  const at = (): number => shown().findIndex((quote) => quote.id === props.state.openId());
  const choices = createMemo(() => [
    { value: "", label: `All (${shop.shop().quotes.length})` },
    ...Object.entries(STATE_WORDS).map(([value, label]) => ({
      value,
      label: `${label} (${shop.shop().quotes.filter(({ state }) => state === value).length})`,
    })),
  ]);
  const goTo = (place: number): void => {
    const next = shown()[Math.max(0, Math.min(place, shown().length - 1))];
    if (next) props.state.open(next.id);
  };
  const onKey = (event: KeyboardEvent): void => {
    const steps: Readonly<Record<string, () => void>> = {
      ArrowDown: () => goTo(at() + 1),
      ArrowUp: () => goTo(at() - 1),
      Home: () => goTo(0),
      End: () => goTo(shown().length - 1),
      Enter: () => props.onEnter(),
    };
    const step = steps[event.key];
    if (!step || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    step();
  };
  return (
    <section class="quote-list" aria-label="Quotes that were made">
      <Select label="Show" choices={choices()} value={only()} onChange={setOnly} />
      <Show when={shown().length > 0} fallback={<NoQuotes isFiltered={only() !== ""} />}>
        <ul
          role="listbox"
          aria-label="Quotes"
          tabindex="0"
          aria-activedescendant={at() >= 0 ? `${id}-${at()}` : undefined}
          onKeyDown={onKey}
        >
          <For each={shown()}>
            {(quote, place) => (
              <li
                id={`${id}-${place()}`}
                role="option"
                aria-selected={quote.id === props.state.openId()}
                onClick={() => props.state.open(quote.id)}
              >
                <QuoteCard quote={quote} isUnsaved={props.state.hasUnsaved(quote)} />
              </li>
            )}
          </For>
        </ul>
      </Show>
      <Show when={fitting().length > MOST_SHOWN}>
        <p class="quiet">The newest {MOST_SHOWN} are shown; choose a state to see others.</p>
      </Show>
      <HitRate />
    </section>
  );
}

function QuoteCard(props: { readonly quote: Quote; readonly isUnsaved: boolean }): JSX.Element {
  const { format } = useStores();
  const total = (): string => {
    const value = quoteValue(props.quote, format().currency).total;
    return value === null ? "no price" : format().money(value);
  };
  return (
    <>
      <span class="quote-card-line">
        <NameText text={props.quote.id} most={40} />
        <span class="quote-state" data-state={props.quote.state}>
          {STATE_WORDS[props.quote.state]}
        </span>
      </span>
      <NameText text={props.quote.customer || "no customer named"} most={80} />
      <span class="quote-card-line quiet">
        <span>{total()}</span>
        <span>
          {format()
            .dateTime(props.quote.askedAt)
            .replace(/ \d\d:\d\d.*$/, "")}
        </span>
      </span>
      <Show when={props.isUnsaved}>
        <span class="quote-unsaved">changed, not saved</span>
      </Show>
    </>
  );
}

function NoQuotes(props: { readonly isFiltered: boolean }): JSX.Element {
  return (
    <p class="quiet">
      {props.isFiltered
        ? "No quote is in this state."
        : "No quote has been saved yet. Type a request beside this; what is saved then stands here."}
    </p>
  );
}

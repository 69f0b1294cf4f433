import { type JSX, Show } from "solid-js";
import type { Quote } from "../../../core/shop/quote.ts";
import { Button } from "../../components/button.tsx";
import type { Deciding } from "./deciding.ts";
import type { QuoteState } from "./quote-state.ts";
import { STATE_WORDS } from "./state-words.ts";

interface QuoteFootProps {
  readonly state: QuoteState;
  readonly deciding: Deciding;
  readonly onAccept: () => void;
  readonly onDecline: () => void;
  readonly onNewLike: (quote: Quote) => void;
}

/** What can be done with the quote that is looked at, by its state. */
export function QuoteFoot(props: QuoteFootProps): JSX.Element {
  const quoteState = () => props.state.quote()?.state ?? null;
  const isOpen = (): boolean => quoteState() !== "accepted" && quoteState() !== "declined";
  const words = (): string => {
    const state = quoteState();
    if (state === null) return `will be ${props.state.quoteId()}`;
    const changed = props.state.canEdit() && props.state.isEdited() ? ", changed since" : "";
    return `${props.state.quoteId()}, ${STATE_WORDS[state].toLowerCase()}${changed}`;
  };
  return (
    <div class="quote-foot" role="group" aria-label="What to do with it">
      <p class="quiet">
        <bdi>{words()}</bdi>
      </p>
      <Show when={props.state.canEdit()}>
        <Button look="main" onClick={() => props.deciding.save()}>
          Save draft
        </Button>
        <Button onClick={() => props.deciding.send()}>Mark as sent</Button>
      </Show>
      <Show when={isOpen()}>
        <Button onClick={() => props.onAccept()}>Accept</Button>
        <Button onClick={() => props.onDecline()}>Decline</Button>
      </Show>
      <Show when={!props.state.canEdit() && props.state.quote()}>
        {(quote) => (
          <Button icon="copy" onClick={() => props.onNewLike(quote())}>
            New one like it
          </Button>
        )}
      </Show>
    </div>
  );
}

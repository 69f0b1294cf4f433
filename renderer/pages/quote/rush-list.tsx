import { For, type JSX, Show } from "solid-js";
import type { AnswerLine } from "../../../core/quote/quote-answer.ts";
import type { RushOption } from "../../../core/quote/rush.ts";
import { Button } from "../../components/button.tsx";
import { useStores } from "../../store/stores.ts";
import { timeText } from "./answer-words.ts";
import type { QuoteState } from "./quote-state.ts";
import { Section } from "./section.tsx";
import { takeOffer } from "./take-offer.ts";

/** What would hold the wanted date, each with its price. Only where a date is wanted. */
export function RushList(props: { readonly line: AnswerLine; readonly state: QuoteState }): JSX.Element {
  const { format } = useStores();
  const isHeld = (): boolean => {
    const { promise, asked } = props.line;
    return promise !== null && asked.wantedMin !== null && promise.byMin <= asked.wantedMin;
  };
  return (
    <Show when={props.line.asked.wantedMin !== null}>
      <Section title="To hold the wanted date" isComing={props.line.rush === null && !isHeld()} isWide>
        <Show
          when={(props.line.rush?.length ?? 0) > 0}
          fallback={
            <p class="quiet">
              {isHeld()
                ? "Nothing is needed: the promise holds it."
                : "Nothing that was tried would hold it."}
            </p>
          }
        >
          <ul class="rush-list">
            <For each={props.line.rush}>
              {(offer) => (
                <li>
                  <div>
                    <p>
                      <bdi>{offer.sentence}</bdi>
                    </p>
                    <p class="quiet">
                      <OfferWords offer={offer} line={props.line} />
                    </p>
                  </div>
                  <p class="num">
                    <Show when={offer.price} fallback="no price">
                      {(price) => <b>{format().money(price().total)}</b>}
                    </Show>
                    <Show when={offer.dearerBy !== null}>
                      <br />
                      <span class="quiet">
                        {signed(offer.dearerBy ?? 0, (value) => format().amount(value))}
                      </span>
                    </Show>
                  </p>
                  <Button
                    aria-label={`Take this: ${offer.sentence}`}
                    disabled={!offer.price}
                    onClick={() => takeOffer(props.state, props.line, offer)}
                  >
                    Take this
                  </Button>
                </li>
              )}
            </For>
          </ul>
        </Show>
      </Section>
    </Show>
  );
}

function OfferWords(props: { readonly offer: RushOption; readonly line: AnswerLine }): JSX.Element {
  const { format } = useStores();
  const words = (): string => {
    const { copiesInTime, finishMin, restMin, laterOrders } = props.offer;
    const isAll = copiesInTime >= props.line.asked.quantity;
    const count = isAll ? "All copies" : `${copiesInTime} of ${props.line.asked.quantity} copies`;
    const rest = restMin === null ? "" : `, the others ${timeText(restMin, format())}`;
    const others =
      laterOrders === 0 ? "" : `; ${laterOrders} other ${laterOrders === 1 ? "order" : "orders"} later`;
    return `${count} ${timeText(finishMin, format())} by the plan${rest}${others}`;
  };
  return <>{words()}</>;
}

function signed(value: number, write: (value: number) => string): string {
  if (value === 0) return "no dearer";
  return value > 0 ? `${write(value)} dearer` : `${write(-value)} cheaper`;
}

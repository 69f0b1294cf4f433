import { createMemo, For, type JSX, Show } from "solid-js";
import { shortText } from "../../../core/report/plain-text.ts";
import type { Order } from "../../../core/shop/order.ts";
import { whereOf } from "../../../core/shop/finding.ts";
import { NameText } from "../../components/name-text.tsx";
import { sentenceInUnits } from "../../format/shown-units.ts";
import { useStores } from "../../store/stores.ts";
import { NOT_PLANNED, type Outcome, outcomeWords } from "./order-outcomes.ts";

const MOST_CHARS = 300;

/** The chosen order in words: what the plan makes of it, why, and what would help. */
export function OrderStory(props: { readonly outcomes: ReadonlyMap<string, Outcome> }): JSX.Element {
  const { shop, selection } = useStores();
  const order = createMemo(() => shop.shop().orders.find(({ id }) => id === selection.chosen().orderId));
  return (
    <section class="story" aria-label="The chosen order" tabindex="0">
      <Show when={order()} fallback={<p class="quiet">Choose an order to read what the plan makes of it.</p>}>
        {(chosen) => <Story order={chosen()} outcome={props.outcomes.get(chosen().id) ?? NOT_PLANNED} />}
      </Show>
    </section>
  );
}

function Story(props: { readonly order: Order; readonly outcome: Outcome }): JSX.Element {
  const { shop, format } = useStores();
  const sentences = createMemo(() => [
    ...shop.findingsAt(whereOf("orders", props.order.id)).map(({ sentence }) => sentence),
    ...props.outcome.reasons,
  ]);
  const part = (): string =>
    shop.shop().parts.find(({ id }) => id === props.order.partId)?.name ?? props.order.partId;
  const more = (): string => {
    const { finishedAt, cost } = props.outcome;
    const finished = finishedAt === null ? "" : `, finished ${format().dateTime(finishedAt)}`;
    return cost === null || cost === 0 ? finished : `${finished}, costs ${format().money(cost)}`;
  };
  return (
    <>
      <div class="story-head">
        <NameText text={props.order.id} most={64} />
        <NameText text={`${format().number(props.order.quantity, 0)} × ${part()}`} most={80} />
        <span>
          {outcomeWords(props.outcome, format().duration)}
          <span class="quiet">{more()}</span>
        </span>
      </div>
      <ul class="story-lines">
        <For each={sentences()}>
          {(sentence) => <li>{shortText(sentenceInUnits(sentence, format()), MOST_CHARS)}</li>}
        </For>
        <For each={props.outcome.help}>
          {(sentence) => (
            <li>
              <b>Would help:</b> {shortText(sentenceInUnits(sentence, format()), MOST_CHARS)}
            </li>
          )}
        </For>
      </ul>
    </>
  );
}

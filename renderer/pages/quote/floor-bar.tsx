import { createMemo, type JSX, Show } from "solid-js";
import type { Floor } from "../../../core/quote/floor.ts";
import type { QuoteAnswer } from "../../../core/quote/quote-answer.ts";
import { marginText } from "../../../core/report/quote-cost-words.ts";
import { useStores } from "../../store/stores.ts";
import { Section } from "./section.tsx";
import { shareScale } from "./share-scale.ts";

/** Where the price lies against the floor, below which the work displaces better work: a bar, and the same in words. */
export function FloorBar(props: { readonly answer: QuoteAnswer }): JSX.Element {
  return (
    <Section
      title="Floor of the price"
      isComing={props.answer.floor === null && props.answer.runs === 0 && props.answer.isRough}
    >
      <Show
        when={props.answer.floor}
        fallback={<p class="quiet">There is none: the lines have no place in the plan.</p>}
      >
        {(floor) => <Bar floor={floor()} answer={props.answer} />}
      </Show>
    </Section>
  );
}

function Bar(props: { readonly floor: Floor; readonly answer: QuoteAnswer }): JSX.Element {
  const { format } = useStores();
  const total = (): number | null => props.answer.total?.total ?? null;
  const scale = createMemo(() => shareScale([0, props.floor.lowest, props.floor.highest, total() ?? 0]));
  const place = (value: number): string => `${scale().pct(value)}%`;
  const isOne = (): boolean => format().amount(props.floor.lowest) === format().amount(props.floor.highest);
  const verdict = (): string => {
    const asked = total();
    if (asked === null) return "";
    if (asked < props.floor.lowest) return "The price lies below it.";
    return asked < props.floor.highest ? "The price lies within it." : "The price lies above it.";
  };
  return (
    <>
      <div class="floor-bar" aria-hidden="true">
        <i
          class="floor-below"
          style={{ left: place(0), width: `calc(${place(props.floor.lowest)} - ${place(0)})` }}
        />
        <i
          class="floor-range"
          style={{
            left: place(props.floor.lowest),
            width: `calc(${place(props.floor.highest)} - ${place(props.floor.lowest)})`,
          }}
        />
        <Show when={total()}>{(asked) => <i class="floor-price" style={{ left: place(asked()) }} />}</Show>
      </div>
      <p>
        <b>
          {isOne()
            ? format().money(props.floor.highest)
            : `${format().amount(props.floor.lowest)} to ${format().money(props.floor.highest)}`}
        </b>
        . {verdict()}
      </p>
      <p class="quiet">
        {isOne()
          ? "Sold for less, this work displaces better work."
          : "Sold for less than the lower figure it displaces better work, for more than the higher one it does not."}{" "}
        Priced with a {marginText(props.answer.rule)}.
      </p>
    </>
  );
}

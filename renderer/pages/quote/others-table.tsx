import { createSignal, For, type JSX, Show } from "solid-js";
import type { OtherOrder, QuoteAnswer } from "../../../core/quote/quote-answer.ts";
import { likelihoodText } from "../../../core/report/quote-facts.ts";
import { Button } from "../../components/button.tsx";
import { NameText } from "../../components/name-text.tsx";
import { useStores } from "../../store/stores.ts";
import { shiftText } from "./answer-words.ts";
import { Section } from "./section.tsx";

const FEW = 5;
const MOST = 100;

/** What the lines do to other orders: those whose due date suffers most first. */
export function OthersTable(props: { readonly answer: QuoteAnswer }): JSX.Element {
  const { format } = useStores();
  const [isAll, setAll] = createSignal(false);
  const others = (): readonly OtherOrder[] => props.answer.others ?? [];
  const shown = (): readonly OtherOrder[] => others().slice(0, isAll() ? MOST : FEW);
  const lateCost = (): number => others().reduce((sum, { moved }) => sum + (moved?.extraLateCost ?? 0), 0);
  return (
    <Section title="Other orders" isComing={props.answer.others === null}>
      <Show
        when={others().length > 0}
        fallback={
          <p class="quiet">
            {props.answer.runs > 0
              ? "None is finished at another time because of it."
              : "It has no place in the plan."}
          </p>
        }
      >
        <table class="quote-others">
          <caption class="unseen">Orders that finish at another time because of it</caption>
          <thead>
            <tr>
              <th scope="col">Order</th>
              <th scope="col">On average</th>
              <th scope="col" class="num">
                In time
              </th>
            </tr>
          </thead>
          <tbody>
            <For each={shown()}>
              {(order) => (
                <tr>
                  <th scope="row">
                    <NameText text={order.orderId} most={40} />
                  </th>
                  <td>{shiftText(order, format())}</td>
                  <td class="num">
                    {inTime(order.wasInTime)} → {inTime(order.isInTime)}
                  </td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
        <Show when={others().length > FEW}>
          <Button look="plain" onClick={() => setAll((before) => !before)}>
            {isAll()
              ? "Only those that suffer most"
              : `${Math.min(MOST, others().length) - FEW} more that suffer less`}
          </Button>
        </Show>
        <Show when={lateCost() >= LEAST_TOLD}>
          <p class="quiet">Their lateness costs {format().money(lateCost())} more; the price holds that.</p>
        </Show>
      </Show>
    </Section>
  );
}

const LEAST_TOLD = 0.01;

function inTime(share: number | null): string {
  return share === null ? "–" : likelihoodText(share * 100);
}

import { For, type JSX, Show } from "solid-js";
import type { AnswerLine } from "../../../core/quote/quote-answer.ts";
import { roundMoney } from "../../../core/units/money.ts";
import { useStores } from "../../store/stores.ts";

/** Price of one copy and of all at other quantities, the asked one among them. */
export function BreaksTable(props: { readonly line: AnswerLine }): JSX.Element {
  const { format } = useStores();
  const once = (): number => props.line.price?.oneOffPrice ?? 0;
  const isAsked = (quantity: number): boolean => quantity === props.line.asked.quantity;
  return (
    <Show
      when={props.line.breaks.length > 0}
      fallback={<p class="quiet">It has no price: the findings say why.</p>}
    >
      <table class="quote-breaks">
        <caption class="unseen">Price by quantity, {format().currency}</caption>
        <thead>
          <tr>
            <th scope="col" class="num">
              Copies
            </th>
            <th scope="col" class="num">
              Each, {format().currency}
            </th>
            <th scope="col" class="num">
              In all
            </th>
          </tr>
        </thead>
        <tbody>
          <For each={props.line.breaks}>
            {({ quantity, pricePerPiece }) => (
              <tr classList={{ "is-asked": isAsked(quantity) }}>
                <th scope="row" class="num">
                  {format().number(quantity, 0)}
                  <Show when={isAsked(quantity)}>
                    <span class="unseen"> asked for</span>
                  </Show>
                </th>
                <td class="num">{format().amount(pricePerPiece)}</td>
                <td class="num">
                  {format().amount(roundMoney(quantity * pricePerPiece + once(), format().currency))}
                </td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <Show when={once() > 0}>
        <p class="quiet">With {format().money(once())} once for tool paths and first set-up.</p>
      </Show>
      <Show when={props.line.toolPathsWith !== null}>
        <p class="quiet">Its tool paths are charged with an earlier line of the same part.</p>
      </Show>
    </Show>
  );
}

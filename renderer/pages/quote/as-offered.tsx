import { For, type JSX, Show } from "solid-js";
import { quoteValue } from "../../../core/quote/quote-value.ts";
import { shortText } from "../../../core/report/plain-text.ts";
import { likelihoodText } from "../../../core/report/quote-facts.ts";
import type { Quote } from "../../../core/shop/quote.ts";
import { KeyValues } from "../../components/key-values.tsx";
import { NameText } from "../../components/name-text.tsx";
import { useStores } from "../../store/stores.ts";
import { STATE_WORDS } from "./state-words.ts";

const MOST_CHARS = 400;

/** A quote as it was sent or decided; nothing of it changes any more. */
export function AsOffered(props: { readonly quote: Quote }): JSX.Element {
  const { shop, format } = useStores();
  const value = () => quoteValue(props.quote, format().currency);
  const name = (partId: string): string => shop.shop().parts.find(({ id }) => id === partId)?.name ?? partId;
  const pairs = () => {
    const { customer, askedAt, validUntil, state, decidedAt, reason, note, customerAddress } = props.quote;
    return [
      { name: "State", value: STATE_WORDS[state] },
      { name: "Customer", value: <NameText text={customer || "not named"} /> },
      ...(customerAddress === ""
        ? []
        : [{ name: "Address", value: <bdi>{shortText(customerAddress, MOST_CHARS)}</bdi> }]),
      { name: "Asked for on", value: format().dateTime(askedAt) },
      { name: "Holds until", value: format().dateTime(validUntil) },
      ...(decidedAt === undefined ? [] : [{ name: "Decided on", value: format().dateTime(decidedAt) }]),
      ...(state === "declined"
        ? [{ name: "Why", value: <bdi>{shortText(reason || "not said", MOST_CHARS)}</bdi> }]
        : []),
      ...(note === "" ? [] : [{ name: "Note", value: <bdi>{shortText(note, MOST_CHARS)}</bdi> }]),
    ];
  };
  return (
    <section class="quote-answer" aria-label="As it was offered" tabindex="0">
      <div class="quote-answer-flow">
        <div class="panel quote-headline">
          <p class="quote-figure">
            {value().total === null ? "No price for all of it" : format().money(value().total ?? 0)}
          </p>
          <KeyValues pairs={pairs()} />
        </div>
        <div class="table-box">
          <table class="table">
            <caption class="unseen">Lines as they were offered</caption>
            <thead>
              <tr>
                <th scope="col">Part</th>
                <th scope="col" class="num">
                  Copies
                </th>
                <th scope="col" class="num">
                  Each, {format().currency}
                </th>
                <th scope="col" class="num">
                  Once
                </th>
                <th scope="col" class="num">
                  In all
                </th>
                <th scope="col">Promised</th>
                <Show when={props.quote.state === "accepted"}>
                  <th scope="col">Order</th>
                </Show>
              </tr>
            </thead>
            <tbody>
              <For each={props.quote.lines}>
                {(line, at) => (
                  <tr>
                    <th scope="row">
                      <NameText text={name(line.partId)} most={60} />
                    </th>
                    <td class="num">{format().number(line.quantity, 0)}</td>
                    <td class="num">
                      {line.pricePerPiece === null ? "–" : format().amount(line.pricePerPiece)}
                    </td>
                    <td class="num">{format().amount(line.oneOffPrice)}</td>
                    <td class="num">{amount(value().lines[at()], (money) => format().amount(money))}</td>
                    <td>
                      {line.promisedAt === null ? "no date" : format().dateTime(line.promisedAt)}
                      <Show when={line.likelihoodPct !== null}>
                        <span class="quiet">, {likelihoodText(line.likelihoodPct ?? 0)}</span>
                      </Show>
                    </td>
                    <Show when={props.quote.state === "accepted"}>
                      <td>
                        <NameText text={line.orderId ?? ""} most={40} />
                      </td>
                    </Show>
                  </tr>
                )}
              </For>
            </tbody>
          </table>
        </div>
      </div>
    </section>
  );
}

function amount(value: number | null | undefined, write: (money: number) => string): string {
  return typeof value === "number" ? write(value) : "–";
}

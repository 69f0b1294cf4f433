import { createMemo, For, type JSX, Show } from "solid-js";
import { quoteRecord } from "../../../core/quote/hit-rate.ts";
import { NameText } from "../../components/name-text.tsx";
import { useStores } from "../../store/stores.ts";

const MOST_REASONS = 5;

/** How many quotes became orders, in all and by size, and why others did not. */
export function HitRate(): JSX.Element {
  const { shop, format } = useStores();
  const record = createMemo(() => quoteRecord(shop.shop().quotes, shop.shop().currency));
  const rate = (share: number | null): string =>
    share === null ? "–" : `${format().fixed(share * 100, 0)} %`;
  return (
    <Show when={record().hitRate !== null}>
      <details class="hit-rate">
        <summary>{rate(record().hitRate)} of the decided quotes became orders</summary>
        <p class="quiet">By their value: {rate(record().hitRateByValue)}</p>
        <table class="table">
          <caption class="unseen">Decided quotes by size</caption>
          <thead>
            <tr>
              <th scope="col">Size, {format().currency}</th>
              <th scope="col" class="num">
                Yes
              </th>
              <th scope="col" class="num">
                No
              </th>
              <th scope="col" class="num">
                Rate
              </th>
            </tr>
          </thead>
          <tbody>
            <For each={record().sizes}>
              {(size) => (
                <tr>
                  <th scope="row">
                    {format().number(size.from, 2)} to {format().number(size.to, 2)}
                  </th>
                  <td class="num">{size.accepted}</td>
                  <td class="num">{size.declined}</td>
                  <td class="num">{rate(size.hitRate)}</td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
        <Show when={record().reasons.length > 0}>
          <h2>Why not</h2>
          <ul class="reasons">
            <For each={record().reasons.slice(0, MOST_REASONS)}>
              {({ reason, count }) => (
                <li>
                  <NameText text={reason === "" ? "not said" : reason} most={80} />
                  <span class="quiet">{count}</span>
                </li>
              )}
            </For>
          </ul>
        </Show>
      </details>
    </Show>
  );
}

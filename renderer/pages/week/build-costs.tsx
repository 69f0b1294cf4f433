import { createMemo, For, type JSX, Show } from "solid-js";
import { roundToTotal } from "../../../core/units/money.ts";
import { KIND_WORDS } from "../../../core/report/words.ts";
import { inShownUnits } from "../../format/shown-units.ts";
import { useStores } from "../../store/stores.ts";
import type { WeekBuild } from "./week-picture.ts";

/** What the build costs, each line opened down to its formula and the numbers in it. */
export function BuildCosts(props: { readonly entry: WeekBuild }): JSX.Element {
  const { shop, format } = useStores();
  const lines = createMemo(() => {
    const { costLines } = props.entry.build;
    const shown = roundToTotal(
      costLines.map(({ amount }) => amount),
      shop.shop().currency,
    );
    return costLines.map((line, at) => ({ line, shown: shown[at] ?? 0 }));
  });
  const total = (): number => lines().reduce((sum, { line }) => sum + line.amount, 0);
  const isMixed = (): boolean => props.entry.build.items.length > 1;
  const none = (): string =>
    props.entry.isMoved
      ? "It was moved by hand: its costs come with the next plan."
      : "Committed before this plan was made, so its costs are spent or promised already.";
  return (
    <section>
      <h3>What it costs</h3>
      <Show when={lines().length > 0} fallback={<p class="quiet">{none()}</p>}>
        <p>
          <b>{format().money(total())}</b>, without tool paths and lateness, which belong to the order.
        </p>
        <For each={lines()}>
          {({ line, shown }) => (
            <details class="week-cost">
              <summary>
                <span>
                  {KIND_WORDS[line.kind]}
                  <Show when={isMixed()}> of {line.orderId}</Show>
                </span>
                <span class="num">{format().money(shown)}</span>
              </summary>
              <p>{line.formula}</p>
              <dl class="pairs">
                <For each={line.inputs}>
                  {(input) => (
                    <>
                      <dt>{input.name}</dt>
                      <dd>
                        {format().number(inShownUnits(input, format()).value, 4)}{" "}
                        {inShownUnits(input, format()).unit}
                      </dd>
                    </>
                  )}
                </For>
              </dl>
            </details>
          )}
        </For>
      </Show>
    </section>
  );
}

import { createMemo, For, type JSX, Show } from "solid-js";
import type { FeedstockNeed } from "../../../core/plan/write/feedstock-needs.ts";
import { minuteOf } from "../../../core/shop/instants.ts";
import { createFamilyMarks, FamilyMark } from "../../components/family-mark.tsx";
import { useStores } from "../../store/stores.ts";

/** What the plan asks to buy, the most urgent first. */
export function Purchases(): JSX.Element {
  const { shop, plan, format, selection } = useStores();
  const marks = createFamilyMarks();
  const buys = createMemo(() => {
    const { timeZone } = shop.shop();
    const minute = ({ orderBy }: FeedstockNeed): number => (orderBy ? minuteOf(orderBy, timeZone) : Infinity);
    return (plan.plan()?.feedstockNeeds ?? [])
      .filter(({ packs }) => packs > 0)
      .toSorted((a, b) => minute(a) - minute(b));
  });
  const gradeOf = (id: string) => shop.shop().feedstocks.find((feedstock) => feedstock.id === id);
  return (
    <section class="purchases panel" aria-label="To buy for this plan" tabindex="0">
      <Show
        when={plan.plan()}
        fallback={
          <p class="quiet">
            When the week is planned, what it needs of each grade and what to buy by when stands here.
          </p>
        }
      >
        <Show when={buys().length > 0} fallback={<p>Stock is enough for everything that is planned.</p>}>
          <table class="table">
            <caption class="unseen">To buy for this plan, the most urgent first</caption>
            <thead>
              <tr>
                <th scope="col">To buy for this plan</th>
                <th scope="col" class="num">
                  Packs
                </th>
                <th scope="col" class="num">
                  {format().mass}
                </th>
                <th scope="col">Order by</th>
                <th scope="col">What to know</th>
              </tr>
            </thead>
            <tbody>
              <For each={buys()}>
                {(need) => (
                  <tr>
                    <th scope="row">
                      <button
                        type="button"
                        class="link"
                        onClick={() => selection.choose({ feedstockId: need.feedstockId })}
                      >
                        <FamilyMark
                          mark={marks().get(gradeOf(need.feedstockId)?.family ?? "")}
                          name={gradeOf(need.feedstockId)?.name ?? need.feedstockId}
                        />
                      </button>
                    </th>
                    <td class="num">{format().number(need.packs, 0)}</td>
                    <td class="num">{format().massNumber(need.buyKg)}</td>
                    <td classList={{ bad: need.tooEarly !== undefined }}>
                      {need.orderBy ? format().dateTime(need.orderBy) : ""}
                      {need.tooEarly ? " (past: comes too late)" : ""}
                    </td>
                    <td>
                      <bdi>{need.note}</bdi>
                    </td>
                  </tr>
                )}
              </For>
            </tbody>
          </table>
        </Show>
      </Show>
    </section>
  );
}

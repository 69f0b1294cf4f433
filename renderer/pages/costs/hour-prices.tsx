import { createMemo, For, type JSX, Show } from "solid-js";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { isInstant, minuteOf } from "../../../core/shop/instants.ts";
import { dayAndMonth, localTime, weekdayName } from "../../../core/shop/local-time.ts";
import { useStores } from "../../store/stores.ts";
import { groupBy } from "../../store/group-by.ts";

/** One staffed stretch of a machine or of a calendar's operators, with what an hour more or less is worth. */
interface PriceTile {
  readonly row: string;
  readonly day: string;
  readonly span: string;
  readonly fromMin: number;
  readonly moreSavesPerH: number;
  readonly lessCostsPerH: number;
}

/** Steps of shading; the numbers say the same. */
const STEPS = 5;

/** The price of an hour by machine and shift as a strip of days: numbers in every tile, shaded by the larger one. */
export function HourPrices(props: { readonly plan: PlanDocument }): JSX.Element {
  const { shop, format } = useStores();
  const tiles = createMemo(() => tilesOf(props.plan, nameOfMachines, nameOfCalendar));
  const days = createMemo(() => {
    const first = new Map<string, number>();
    for (const { day, fromMin } of tiles()) first.set(day, Math.min(fromMin, first.get(day) ?? Infinity));
    return [...first].toSorted((a, b) => a[1] - b[1]).map(([day]) => day);
  });
  const rows = createMemo(() => [...groupBy(tiles(), ({ row }) => row)]);
  const most = createMemo(() => Math.max(...tiles().map(worth), 0));
  function nameOfMachines(ids: readonly string[]): string {
    const names = ids.map((id) => shop.shop().machines.find((machine) => machine.id === id)?.name ?? id);
    return names.join(", ");
  }
  function nameOfCalendar(id: string): string {
    return `Operators, ${shop.shop().calendars.find((calendar) => calendar.id === id)?.name ?? id}`;
  }
  const step = (tile: PriceTile): number =>
    most() <= 0 || worth(tile) <= 0 ? 0 : Math.max(1, Math.ceil((STEPS * worth(tile)) / most()));
  return (
    <div class="price-box">
      <h2 class="unseen">Price of an hour</h2>
      <p>
        What one more hour in a shift would save (+1) and one hour less would cost (−1), in{" "}
        {format().currency}. It holds for about one hour, one at a time; the amounts do not add up. Deeper
        shading: worth more.
      </p>
      <Show
        when={tiles().length > 0}
        fallback={
          <p>
            This plan has no prices of hours: no hour of a machine or an operator is short, or there was no
            time to reckon them. Planning longer may find some.
          </p>
        }
      >
        <div class="table-box" tabindex="0" role="region" aria-label="Price of an hour by machine and shift">
          <table class="table price-table">
            <caption class="unseen">Price of an hour by machine, day and shift</caption>
            <thead>
              <tr>
                <th scope="col">Machine or operators</th>
                <For each={days()}>{(day) => <th scope="col">{day}</th>}</For>
              </tr>
            </thead>
            <tbody>
              <For each={rows()}>
                {([name, own]) => (
                  <tr>
                    <th scope="row">
                      <bdi>{name}</bdi>
                    </th>
                    <For each={days()}>
                      {(day) => (
                        <td>
                          <For each={own.filter((tile) => tile.day === day)}>
                            {(tile) => (
                              <div class="price-tile" data-step={step(tile)}>
                                <span class="price-span">{tile.span}</span>
                                <Show when={worth(tile) > 0} fallback={<span>0</span>}>
                                  <span class="price-pair">
                                    <span>
                                      <b>+1</b> {format().amount(tile.moreSavesPerH)}
                                    </span>
                                    <span>
                                      <b>−1</b> {format().amount(tile.lessCostsPerH)}
                                    </span>
                                  </span>
                                </Show>
                              </div>
                            )}
                          </For>
                        </td>
                      )}
                    </For>
                  </tr>
                )}
              </For>
            </tbody>
          </table>
        </div>
      </Show>
    </div>
  );
}

function worth({ moreSavesPerH, lessCostsPerH }: PriceTile): number {
  return Math.max(moreSavesPerH, lessCostsPerH);
}

function tilesOf(
  { prices, timeZone }: PlanDocument,
  nameOfMachines: (ids: readonly string[]) => string,
  nameOfCalendar: (id: string) => string,
): PriceTile[] {
  const tile = (
    row: string,
    price: { from: string; to: string; moreSavesPerH: number; lessCostsPerH: number },
  ): PriceTile[] => {
    if (!isInstant(price.from) || !isInstant(price.to)) return [];
    const fromMin = minuteOf(price.from, timeZone);
    const from = localTime(fromMin, timeZone);
    const to = localTime(minuteOf(price.to, timeZone), timeZone);
    const day = dayWords(from.date);
    const { moreSavesPerH, lessCostsPerH } = price;
    return [{ row, day, span: `${from.clock}–${to.clock}`, fromMin, moreSavesPerH, lessCostsPerH }];
  };
  return [
    ...prices.machineHour.flatMap((price) => tile(nameOfMachines(price.machineIds), price)),
    ...prices.operatorHour.flatMap((price) => tile(nameOfCalendar(price.calendarId), price)),
  ].toSorted((a, b) => a.fromMin - b.fromMin);
}

function dayWords(date: string): string {
  return `${weekdayName(date).slice(0, 3)} ${dayAndMonth(date)}`;
}

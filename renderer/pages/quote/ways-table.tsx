import { createMemo, createSignal, For, type JSX, Show } from "solid-js";
import type { LineWay } from "../../../core/quote/line-ways.ts";
import type { AnswerLine } from "../../../core/quote/quote-answer.ts";
import { shortText } from "../../../core/report/plain-text.ts";
import { Button } from "../../components/button.tsx";
import { createFamilyMarks, FamilyMark } from "../../components/family-mark.tsx";
import { sentenceInUnits } from "../../format/shown-units.ts";
import { useStores } from "../../store/stores.ts";

const FEW = 6;
const MOST_REASONS = 6;

/** Every way to make the part with the cost of a copy by quantity, the cheapest for the asked quantity first; buying beside them. */
export function WaysTable(props: { readonly line: AnswerLine }): JSX.Element {
  const { format } = useStores();
  const [isAll, setAll] = createSignal(false);
  const askedAt = () => props.line.ways.quantities.indexOf(props.line.asked.quantity);
  const cost = ({ costs }: LineWay): number => costs[askedAt()]?.costPerCopy ?? Number.MAX_VALUE;
  const sorted = createMemo(() => {
    return props.line.ways.ways.toSorted(
      (a, b) => Number(b.isAllowed) - Number(a.isAllowed) || cost(a) - cost(b),
    );
  });
  const shown = (): readonly LineWay[] => (isAll() ? sorted() : sorted().slice(0, FEW));
  const buyOut = () => props.line.ways.buyOut;
  return (
    <>
      <Show when={sorted().length > 0 || buyOut()}>
        <div
          class="table-box quote-ways"
          tabindex="0"
          role="region"
          aria-label="Cost of one copy by way and quantity"
        >
          <table class="table">
            <caption class="unseen">Cost of one copy by way and quantity, {format().currency}</caption>
            <thead>
              <tr>
                <th scope="col">Cost of one copy, {format().currency}</th>
                <For each={props.line.ways.quantities}>
                  {(quantity, at) => (
                    <th scope="col" class="num" classList={{ "is-asked": at() === askedAt() }}>
                      {format().number(quantity, 0)}
                    </th>
                  )}
                </For>
                <th scope="col" class="num">
                  Tool paths
                </th>
                <th scope="col" class="num">
                  First loading
                </th>
                <th scope="col" class="num">
                  A copy, {format().mass}
                </th>
              </tr>
            </thead>
            <tbody>
              <For each={shown()}>{(way) => <WayRow way={way} askedAt={askedAt()} />}</For>
              <Show when={buyOut()}>
                {(bought) => (
                  <tr>
                    <th scope="row">Bought, in {format().number(bought().leadTimeDays, 1)} d</th>
                    <For each={props.line.ways.quantities}>
                      {(_, at) => (
                        <td class="num" classList={{ "is-asked": at() === askedAt() }}>
                          {format().amount(bought().pricePerPiece)}
                        </td>
                      )}
                    </For>
                    <td colSpan="3" />
                  </tr>
                )}
              </Show>
            </tbody>
          </table>
        </div>
      </Show>
      <Show when={sorted().length > FEW}>
        <Button look="plain" onClick={() => setAll((before) => !before)}>
          {isAll() ? "Only the cheapest" : `${sorted().length - FEW} dearer ones too`}
        </Button>
      </Show>
      <Refused line={props.line} />
    </>
  );
}

function WayRow(props: { readonly way: LineWay; readonly askedAt: number }): JSX.Element {
  const { shop, format } = useStores();
  const marks = createFamilyMarks();
  const grade = () => shop.shop().feedstocks.find(({ id }) => id === props.way.feedstockId);
  const machines = (): string => {
    const [first = "", ...more] = props.way.machineIds;
    const name = shop.shop().machines.find(({ id }) => id === first)?.name ?? first;
    return more.length === 0 ? name : `${name} and ${more.length} alike`;
  };
  return (
    <tr classList={{ "is-shut": !props.way.isAllowed }}>
      <th scope="row">
        <span class="way-name">
          <bdi>{shortText(machines(), 60)}</bdi>, nozzle <bdi>{shortText(props.way.nozzleId, 20)}</bdi>
          <Show when={!props.way.isAllowed}>
            <span class="quiet"> (not as asked)</span>
          </Show>
        </span>
        <FamilyMark mark={marks().get(grade()?.family ?? "")} name={grade()?.name ?? props.way.feedstockId} />
      </th>
      <For each={props.way.costs}>
        {(cost, at) => (
          <td class="num" classList={{ "is-asked": at() === props.askedAt }}>
            {cost ? format().amount(cost.costPerCopy) : "–"}
          </td>
        )}
      </For>
      <td class="num">{format().amount(props.way.first.engineering)}</td>
      <td class="num">{format().amount(props.way.first.setUp)}</td>
      <td class="num">{format().massNumber(props.way.massKgPerCopy)}</td>
    </tr>
  );
}

/** Ways that do not exist, their reasons by how many they close. */
function Refused(props: { readonly line: AnswerLine }): JSX.Element {
  const { format } = useStores();
  const reasons = createMemo(() => {
    const counts = new Map<string, number>();
    for (const { reasons: why } of props.line.ways.refused)
      for (const { sentence } of why) counts.set(sentence, (counts.get(sentence) ?? 0) + 1);
    return [...counts].toSorted(([, a], [, b]) => b - a).slice(0, MOST_REASONS);
  });
  return (
    <Show when={reasons().length > 0}>
      <details open={props.line.ways.ways.length === 0}>
        <summary>{props.line.ways.refused.length} other pairs of nozzle and feedstock cannot</summary>
        <ul class="made-list">
          <For each={reasons()}>
            {([sentence, count]) => (
              <li>
                <bdi>{shortText(sentenceInUnits(sentence, format()), 300)}</bdi>{" "}
                <span class="quiet">({count})</span>
              </li>
            )}
          </For>
        </ul>
      </details>
    </Show>
  );
}

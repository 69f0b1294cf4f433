import { createMemo, For, type JSX, Show } from "solid-js";
import { amountUnit, plainScale } from "../../../core/report/plain-scale.ts";
import { useStores } from "../../store/stores.ts";
import type { AnswerView } from "./answer-view.ts";
import { AnswerSection } from "./answer-section.tsx";
import { pct } from "./figures.ts";

const STEPS = 4;

/** Net present value over scenarios of demand: the middle 8 of 10 as a bar for each candidate, the middle one as a mark. */
export function SpreadSection(props: { readonly view: AnswerView; readonly chosenId: string }): JSX.Element {
  const { format } = useStores();
  const ends = createMemo(() =>
    props.view.candidates.flatMap(({ answer: { distribution } }) => [distribution.p10, distribution.p90]),
  );
  const scale = createMemo(() => plainScale(ends(), STEPS));
  const unit = createMemo(() => amountUnit(ends(), format().currency));
  const at = (amount: number): number => 100 * scale().at(amount);
  const count = (): number => props.view.candidates[0]?.answer.distribution.count ?? 0;
  return (
    <AnswerSection title="How sure is it">
      <table class="bars">
        <caption class="unseen">
          Net present value over {count()} scenarios of demand: a tenth of them lies below the first figure, a
          tenth above the second.
        </caption>
        <thead class="unseen">
          <tr>
            <th scope="col">Candidate</th>
            <th scope="col">Middle 8 of 10 scenarios, {format().currency}</th>
            <th scope="col">Loses in</th>
          </tr>
        </thead>
        <tbody>
          <For each={props.view.candidates}>
            {({ letter, candidate, answer: { distribution } }) => (
              <tr classList={{ "is-chosen": candidate.id === props.chosenId }}>
                <th scope="row">
                  <span class="letter-mark">{letter}</span>
                </th>
                <td class="bars-words">
                  {props.view.amount(distribution.p10)} to {props.view.amount(distribution.p90)}, middle{" "}
                  {props.view.amount(distribution.p50)}
                </td>
                <td class="num bars-end">loses in {pct(format(), distribution.lossChance, 0)}</td>
                <td class="bars-track" aria-hidden="true">
                  <i
                    class="bars-span"
                    style={{
                      left: `${at(distribution.p10)}%`,
                      width: `${at(distribution.p90) - at(distribution.p10)}%`,
                    }}
                  />
                  <i class="bars-middle" style={{ left: `${at(distribution.p50)}%` }} />
                  <i class="bars-zero" style={{ left: `${at(0)}%` }} />
                </td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <div class="bars-axis" aria-hidden="true">
        <For each={scale().ticks}>
          {(tick) => (
            <span style={{ left: `${at(tick)}%` }}>{format().number(tick / unit().divisor, 1)}</span>
          )}
        </For>
      </div>
      <p class="quiet">
        Net present value, {unit().words}; bars hold the middle 8 of 10 of {count()}{" "}
        {count() === 1 ? "scenario" : "scenarios"}, the mark is the middle one, the line is 0.
        <Show when={count() < FEW}> So few say little about chance.</Show>
      </p>
    </AnswerSection>
  );
}

const FEW = 10;

import { createMemo, For, type JSX, Show } from "solid-js";
import type { LetteredStudy } from "../../../core/report/case-view.ts";
import { endText, INPUT_WORDS } from "../../../core/report/case-words.ts";
import { plainScale } from "../../../core/report/plain-scale.ts";
import { useStores } from "../../store/stores.ts";
import { AnswerSection } from "./answer-section.tsx";

const STEPS = 5;
const MOST_BARS = 8;

/** What the value of one candidate depends on: each input alone at its low and its high end, the widest first. */
export function SwingSection(props: {
  readonly own: LetteredStudy;
  readonly hasAsked: boolean;
}): JSX.Element {
  const { format } = useStores();
  const bars = () => props.own.tornado.slice(0, MOST_BARS);
  const base = (): number => props.own.answer.answer.netPresentValue;
  const scale = createMemo(() =>
    plainScale([base(), ...bars().flatMap(({ low, high }) => [low.value, high.value])], STEPS),
  );
  const at = (value: number): number => 100 * scale().at(value);
  const piece = (value: number) => ({
    left: `${Math.min(at(value), at(base()))}%`,
    width: `${Math.abs(at(value) - at(base()))}%`,
  });
  const text = (value: number): string => format().number(value, 0);
  return (
    <AnswerSection title={`What the value of ${props.own.letter} depends on`}>
      <Show when={bars().length > 0} fallback={<p class="quiet">Nothing that was moved changes it.</p>}>
        <table class="bars">
          <caption class="unseen">
            Net present value of {props.own.letter} in {format().currency} where one input alone is lower or
            higher; as it is {text(base())}.
          </caption>
          <thead class="unseen">
            <tr>
              <th scope="col">Input</th>
              <th scope="col">Lower, and the value then</th>
              <th scope="col">Higher, and the value then</th>
            </tr>
          </thead>
          <tbody>
            <For each={bars()}>
              {({ input, low, high, unit }) => (
                <tr>
                  <th scope="row">{INPUT_WORDS[input]}</th>
                  <td class="bars-words">
                    <span class="quiet">{endText(low.at, unit)}:</span> {text(low.value)}
                  </td>
                  <td class="num bars-end">
                    <span class="quiet">{endText(high.at, unit)}:</span> {text(high.value)}
                  </td>
                  <td class="bars-track" aria-hidden="true">
                    <i class="bars-span swing-low" style={piece(low.value)} />
                    <i class="bars-span" style={piece(high.value)} />
                    <i class="bars-zero" style={{ left: `${at(0)}%` }} />
                    <i class="bars-middle" style={{ left: `${at(base())}%` }} />
                  </td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
        <p class="quiet">
          Net present value in {format().currency} with one input changed and the others as they are: hatched
          at its first end, full at its second. The thick mark is the case as it is, the line is 0.
          <Show when={!props.hasAsked}> Other demands are not worked out yet.</Show>
        </p>
      </Show>
    </AnswerSection>
  );
}

import { For, type JSX, Show } from "solid-js";
import { assumptionsOf, NOT_CONSIDERED } from "../../../core/purchase/purchase-words.ts";
import { gapSentence } from "../../../core/report/case-text.ts";
import { CASE_CAUTIONS } from "../../../core/report/case-words.ts";
import { FindingList } from "../../components/finding-list.tsx";
import type { AnswerView } from "./answer-view.ts";
import { AnswerSection } from "./answer-section.tsx";

/** What the figures rest on: assumptions, what was found odd, what nobody looked at, cautions. */
export function BasisSection(props: { readonly view: AnswerView; readonly setAside: number }): JSX.Element {
  return (
    <AnswerSection title="What it rests on">
      <Show when={props.view.findings.length > 0}>
        <FindingList findings={props.view.findings} />
      </Show>
      <Show when={props.setAside > 0}>
        <p class="bad">
          Left out because of their errors: {props.setAside} {props.setAside === 1 ? "entry" : "entries"} of
          the shop.
        </p>
      </Show>
      <div class="basis">
        <div>
          <Sentences heading="Taken to be so" sentences={assumptionsOf(props.view.purchaseCase)} />
        </div>
        <div>
          <Sentences heading="Not considered" sentences={NOT_CONSIDERED} />
          <Sentences heading="Cautions" sentences={CASE_CAUTIONS} />
        </div>
      </div>
    </AnswerSection>
  );
}

/** How far the figures are from weeks planned in full. */
export function GapSection(props: { readonly view: AnswerView }): JSX.Element {
  return (
    <AnswerSection title="How far from planned weeks">
      <p>{gapSentence(props.view)}</p>
    </AnswerSection>
  );
}

function Sentences(props: { readonly heading: string; readonly sentences: readonly string[] }): JSX.Element {
  return (
    <section>
      <h4>{props.heading}</h4>
      <ul class="basis-list">
        <For each={props.sentences}>
          {(sentence) => (
            <li>
              <bdi>{sentence}</bdi>
            </li>
          )}
        </For>
      </ul>
    </section>
  );
}

import { createMemo, For, type JSX, Show } from "solid-js";
import type { BestBundle } from "../../../core/purchase/bundle.ts";
import { useStores } from "../../store/stores.ts";
import type { AnswerView } from "./answer-view.ts";
import { AnswerSection } from "./answer-section.tsx";

const MOST_SHOWN = 8;

/** Candidates taken together within the budget, those worth most first. */
export function BundleSection(props: { readonly view: AnswerView }): JSX.Element {
  return (
    <AnswerSection title="Taken together">
      <Show
        when={props.view.study.bundle}
        fallback={<p class="quiet">Which of them are best together is asked once every week is planned.</p>}
      >
        {(bundle) => <Bundles view={props.view} bundle={bundle()} />}
      </Show>
    </AnswerSection>
  );
}

function Bundles(props: { readonly view: AnswerView; readonly bundle: BestBundle }): JSX.Element {
  const { format } = useStores();
  const shown = createMemo(() =>
    props.bundle.worked.toSorted((a, b) => b.value - a.value).slice(0, MOST_SHOWN),
  );
  const lettersOf = (ids: readonly string[]): string =>
    props.view.candidates
      .filter(({ candidate }) => ids.includes(candidate.id))
      .map(({ letter }) => letter)
      .join(" + ");
  const isBest = (ids: readonly string[]): boolean =>
    ids.length > 0 && ids.join("\n") === props.bundle.best.candidateIds.join("\n");
  return (
    <>
      <p>
        <Show
          when={props.bundle.best.candidateIds.length > 0}
          fallback={<b>Within the budget nothing is worth taking.</b>}
        >
          <b>Best: {lettersOf(props.bundle.best.candidateIds)}</b>, worth{" "}
          {props.view.money(props.bundle.best.value)} a year for {props.view.money(props.bundle.best.outlay)}{" "}
          at the start.
        </Show>
      </p>
      <table class="table running">
        <thead>
          <tr>
            <th scope="col">Together</th>
            <th scope="col" class="num">
              Worth a year, {format().currency}
            </th>
            <th scope="col" class="num">
              At the start, {format().currency}
            </th>
          </tr>
        </thead>
        <tbody>
          <For each={shown()}>
            {({ candidateIds, value, outlay }) => (
              <tr classList={{ "is-chosen": isBest(candidateIds) }}>
                <th scope="row">{lettersOf(candidateIds)}</th>
                <td class="num">{props.view.amount(value)}</td>
                <td class="num">{props.view.amount(outlay)}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <p class="quiet">
        <Show when={props.bundle.proof === "heuristic"}>
          <b>A guess, not proved. </b>
        </Show>
        {props.bundle.sentence}
      </p>
    </>
  );
}

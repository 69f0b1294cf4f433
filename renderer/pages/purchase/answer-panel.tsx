import { createMemo, createSignal, For, type JSX, Show } from "solid-js";
import { statusSentence } from "../../../core/report/case-text.ts";
import type { LetteredStudy } from "../../../core/report/case-view.ts";
import type { PurchaseCase } from "../../../core/shop/purchase-case.ts";
import { useStores } from "../../store/stores.ts";
import { type AnswerView, answerView, sentenceOf } from "./answer-view.ts";
import { BasisSection, GapSection } from "./basis-section.tsx";
import { BundleSection } from "./bundle-section.tsx";
import { CashSection } from "./cash-section.tsx";
import { CrossoverSection } from "./crossover-section.tsx";
import { FiguresTable } from "./figures-table.tsx";
import { RunningSection, UseSection } from "./running-section.tsx";
import { SpreadSection } from "./spread-section.tsx";
import { SwingSection } from "./swing-section.tsx";
import { type CaseAnswered, isBefore, type Working } from "./working.ts";

interface AnswerPanelProps {
  readonly purchaseCase: PurchaseCase;
  readonly working: Working;
}

/** The answer to the case: what to do first, then what it rests on. */
export function AnswerPanel(props: AnswerPanelProps): JSX.Element {
  const { format } = useStores();
  const answered = (): CaseAnswered | null => props.working.answerOf(props.purchaseCase.id);
  const view = createMemo(() => {
    const shown = answered();
    return shown && answerView(shown, format());
  });
  const isGoing = (): boolean => props.working.going()?.caseId === props.purchaseCase.id;
  return (
    <section class="purchase-answer" aria-label="Answer" tabindex="0" aria-busy={isGoing()}>
      <Show when={view()} fallback={<NoAnswer {...props} isGoing={isGoing()} />}>
        {(shown) => (
          <div class="answer-flow">
            <h2 class="unseen">Answer</h2>
            <Headline {...props} view={shown()} isGoing={isGoing()} />
            <Show when={shown().candidates.length > 0}>
              <Details view={shown()} setAside={answered()?.found.setAside ?? 0} />
            </Show>
          </div>
        )}
      </Show>
    </section>
  );
}

function NoAnswer(props: AnswerPanelProps & { readonly isGoing: boolean }): JSX.Element {
  const words = (): string => {
    const trouble = props.working.troubleOf(props.purchaseCase.id);
    if (trouble !== null) return trouble;
    if (props.isGoing) return "A first rough answer comes in a few seconds; you can go on working meanwhile.";
    if (props.purchaseCase.candidates.length === 0)
      return "Add what could be bought or done, say where the demand comes from, then press Work it out.";
    return "Press Work it out: every week of every scenario is planned without and with each candidate.";
  };
  return (
    <div class="answer-empty">
      <h2>{props.isGoing ? "Being worked out" : "No answer yet"}</h2>
      <p class="quiet">
        <bdi>{words()}</bdi>
      </p>
    </div>
  );
}

/** What to do and on what condition, and how far the answer is. */
function Headline(
  props: AnswerPanelProps & { readonly view: AnswerView; readonly isGoing: boolean },
): JSX.Element {
  const { shop } = useStores();
  const isOld = (): boolean => {
    const answered = props.working.answerOf(props.purchaseCase.id);
    return answered !== null && isBefore(answered, shop.shop(), props.purchaseCase);
  };
  const stage = (): string => {
    const { status } = props.view.study;
    if (status !== "complete") return status === "rough" ? "Rough" : "Stopped";
    return props.view.isFurther ? "Whole" : "All weeks planned";
  };
  const words = (): string => {
    const { status } = props.view.study;
    if (status === "rough" && props.isGoing)
      return "A first answer from few scenarios and weeks; the whole one is being worked out.";
    const said = statusSentence(status);
    if (said !== null) return said;
    if (props.view.isFurther) return "";
    return props.isGoing
      ? "Other demands, feedstock prices and bundles are still being asked."
      : "Other demands, feedstock prices and bundles were not asked: it was stopped before.";
  };
  const trouble = (): string | null => props.working.troubleOf(props.purchaseCase.id);
  return (
    <div class="panel answer-headline">
      <p class="answer-sentence">
        <bdi>{props.view.headline}</bdi>
      </p>
      <p class="answer-status">
        <span class="answer-stage" data-rough={stage() === "Whole" ? undefined : ""}>
          {stage()}
        </span>
        <Show when={isOld()}>
          <span class="answer-stage" data-rough="">
            Before the last edits
          </span>
        </Show>
        <span class="quiet">
          {words()} <Show when={isOld()}>The case or the shop was edited since: work it out again.</Show>
        </span>
      </p>
      <Show when={trouble()}>
        {(sentence) => (
          <p class="bad">
            <bdi>{sentence()}</bdi>
          </p>
        )}
      </Show>
    </div>
  );
}

/** The table of all candidates, then the chosen one opened. */
function Details(props: { readonly view: AnswerView; readonly setAside: number }): JSX.Element {
  const [chosenId, setChosenId] = createSignal<string | null>(null);
  const chosen = (): LetteredStudy | undefined =>
    props.view.candidates.find(({ candidate }) => candidate.id === chosenId()) ??
    props.view.leading[0] ??
    props.view.candidates[0];
  return (
    <div class="answer-sections">
      <FiguresTable view={props.view} chosenId={chosen()?.candidate.id ?? ""} onChoose={setChosenId} />
      <Show when={chosen()}>
        {(own) => (
          <>
            <section class="panel answer-section chosen-words" aria-label="The candidate that is opened">
              <Choices view={props.view} chosenId={own().candidate.id} onChoose={setChosenId} />
              <p>
                <bdi>{sentenceOf(props.view, own())}</bdi>
              </p>
            </section>
            <CashSection own={own()} />
            <div class="answer-columns">
              <SpreadSection view={props.view} chosenId={own().candidate.id} />
              <RunningSection view={props.view} own={own()} />
              <BundleSection view={props.view} />
              <SwingSection own={own()} hasAsked={props.view.isFurther} />
              <UseSection view={props.view} own={own()} />
              <CrossoverSection view={props.view} />
              <GapSection view={props.view} />
            </div>
          </>
        )}
      </Show>
      <BasisSection view={props.view} setAside={props.setAside} />
    </div>
  );
}

interface ChoicesProps {
  readonly view: AnswerView;
  readonly chosenId: string;
  readonly onChoose: (candidateId: string) => void;
}

/** Which candidate is opened below. */
function Choices(props: ChoicesProps): JSX.Element {
  return (
    <div class="purchase-buttons" role="group" aria-label="Open a candidate">
      <For each={props.view.candidates}>
        {({ letter, candidate }) => (
          <button
            type="button"
            class="button choice"
            aria-pressed={candidate.id === props.chosenId}
            title={candidate.name.slice(0, 120)}
            onClick={() => props.onChoose(candidate.id)}
          >
            {letter}
          </button>
        )}
      </For>
    </div>
  );
}

import { createMemo, type JSX, Show } from "solid-js";
import type { QuoteAnswer } from "../../../core/quote/quote-answer.ts";
import { likelihoodText } from "../../../core/report/quote-facts.ts";
import { FindingList } from "../../components/finding-list.tsx";
import { sentenceInUnits } from "../../format/shown-units.ts";
import { useStores } from "../../store/stores.ts";
import { stillComing, timeText } from "./answer-words.ts";
import { AnswerLines } from "./answer-lines.tsx";
import type { Asking } from "./asking.ts";
import { FloorBar } from "./floor-bar.tsx";
import { LineDetails } from "./line-details.tsx";
import { OthersTable } from "./others-table.tsx";
import { type OfferedLine, offeredOf } from "./offered.ts";
import type { QuoteState } from "./quote-state.ts";
import { RushList } from "./rush-list.tsx";

interface AnswerPanelProps {
  readonly state: QuoteState;
  readonly asking: Asking;
}

/** The answer to the request as it stands: price and date first, then what they rest on. */
export function AnswerPanel(props: AnswerPanelProps): JSX.Element {
  return (
    <section class="quote-answer" aria-label="Answer" tabindex="0" aria-busy={props.asking.isBehind()}>
      <Show when={props.asking.answer()} fallback={<NoAnswer {...props} />}>
        {(answer) => (
          <div class="quote-answer-flow" data-behind={props.asking.isBehind() ? "" : undefined}>
            <Headline answer={answer()} asking={props.asking} state={props.state} />
            <Sections answer={answer()} state={props.state} />
          </div>
        )}
      </Show>
      <p class="unseen" role="status">
        {props.asking.spoken()}
      </p>
    </section>
  );
}

function NoAnswer(props: AnswerPanelProps): JSX.Element {
  const words = (): string => {
    const { trouble, desk } = props.asking;
    const said = trouble();
    if (said !== null) return said;
    if (props.state.read().lines.length === 0) {
      const first = "Choose a part and a quantity: price and date then stand here.";
      return desk() === "quick" ? `${first} ${DESK_WORDS.quick}` : first;
    }
    return desk() === "ready" ? "The price is being made." : DESK_WORDS[desk()];
  };
  return (
    <div class="quote-empty">
      <h2>{props.asking.trouble() === null ? "No price yet" : "No price can be made"}</h2>
      <p class="quiet">
        <bdi>{words()}</bdi>
      </p>
    </div>
  );
}

const DESK_WORDS = {
  opening: "The work in the shop is being made ready; this takes a moment.",
  quick: "No plan has been accepted yet: a quick one is made first, for quotes alone.",
  ready: "",
} as const;

/** Price and date of all lines together, and how far the answer is. */
function Headline(props: AnswerPanelProps & { readonly answer: QuoteAnswer }): JSX.Element {
  const { format } = useStores();
  const offered = createMemo(() => offeredOf(props.answer, props.state.request(), props.state.read()));
  const only = (): OfferedLine | null => (offered().lines.length === 1 ? (offered().lines[0] ?? null) : null);
  const lastText = (): string => {
    const dates = offered().lines.map(({ byMin }) => byMin);
    return dates.every((date) => date !== null)
      ? timeText(Math.max(...dates), format())
      : "No date for all of it";
  };
  const chance = (): string => {
    const { promised } = props.answer.together;
    if (offered().lines.some(({ taken }) => taken)) return ", as in the offer that was taken";
    if (promised?.status !== "known") return "";
    const all = offered().lines.length > 1 ? "all dates together " : "";
    return `, ${all}kept with ${likelihoodText(promised.likelihood * 100)}`;
  };
  return (
    <div class="panel quote-headline">
      <div>
        <p class="quote-figure">
          {offered().total ? format().money(offered().total?.total ?? 0) : "No price for all of it"}
        </p>
        <p class="quiet">
          <Show when={only()?.price}>
            {(price) => (
              <>
                {format().number(price().quantity, 0)} at {format().money(price().pricePerPiece)} each
                <Show when={price().oneOffPrice > 0}>, {format().money(price().oneOffPrice)} once</Show>
              </>
            )}
          </Show>
          <Show when={!only()}>{props.answer.lines.length} lines together</Show>
          <Show when={(offered().total?.minimumSurcharge ?? 0) > 0}>
            , {format().money(offered().total?.minimumSurcharge ?? 0)} of it to reach the smallest order
          </Show>
        </p>
      </div>
      <div>
        <p class="quote-figure">{lastText()}</p>
        <p class="quiet">date to promise{chance()}</p>
      </div>
      <Progress {...props} />
    </div>
  );
}

/** How far the answer is, and what it stands on. */
function Progress(props: AnswerPanelProps & { readonly answer: QuoteAnswer }): JSX.Element {
  const { plan, format } = useStores();
  const coming = (): string[] => stillComing(props.answer);
  const stands = (): string => {
    const aside = props.asking.setAside();
    return [
      props.answer.runs === 0
        ? "It has no place in the plan, so nothing could be simulated."
        : `The plan with it was lived through ${format().number(props.answer.runs, 0)} times.`,
      plan.plan() === null ? "No plan has been accepted: a quick one stands in for it." : "",
      aside > 0
        ? `Left out because of their errors: ${aside} ${aside === 1 ? "entry" : "entries"} of the shop.`
        : "",
    ].join(" ");
  };
  return (
    <p class="quote-progress">
      <span class="quote-stage" data-rough={props.answer.isRough ? "" : undefined}>
        {props.answer.isRough ? "Rough" : "Whole"}
      </span>
      <span class="quiet">
        <Show when={coming().length > 0} fallback={stands()}>
          Still being worked out: {listed(coming())}.
        </Show>
        <Show when={props.asking.isBehind()}>
          <span class="quote-behind"> This still answers what was asked before.</span>
        </Show>
      </span>
    </p>
  );
}

function Sections(props: { readonly answer: QuoteAnswer; readonly state: QuoteState }): JSX.Element {
  const { format } = useStores();
  const line = createMemo(() => {
    const id = props.state.read().lines.find(({ key }) => key === props.state.lineKey())?.asked.id;
    return props.answer.lines.find(({ asked }) => asked.id === id) ?? props.answer.lines[0];
  });
  const findings = () =>
    props.answer.findings.map((one) => ({ ...one, sentence: sentenceInUnits(one.sentence, format()) }));
  return (
    <>
      <Show when={props.answer.findings.length > 0}>
        <FindingList findings={findings()} />
      </Show>
      <Show when={props.answer.lines.length > 1}>
        <AnswerLines
          offered={offeredOf(props.answer, props.state.request(), props.state.read())}
          state={props.state}
          chosenId={line()?.asked.id ?? ""}
        />
      </Show>
      <Show when={line()}>
        {(one) => (
          <div class="quote-sections">
            <LineDetails
              line={one()}
              fromMin={props.answer.fromMin}
              promisePct={props.state.request().promisePct}
            >
              <>
                <RushList line={one()} state={props.state} />
                <FloorBar answer={props.answer} />
                <OthersTable answer={props.answer} />
              </>
            </LineDetails>
          </div>
        )}
      </Show>
    </>
  );
}

/** "a, b and c" */
function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

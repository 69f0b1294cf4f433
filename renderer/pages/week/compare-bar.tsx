import { createMemo, For, type JSX, Show } from "solid-js";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { itemsText } from "../../../core/report/week-facts.ts";
import { shortText } from "../../../core/report/plain-text.ts";
import { Button } from "../../components/button.tsx";
import { useStores } from "../../store/stores.ts";
import { comparePlans, type PlanComparison } from "./compare-plans.ts";
import { movingSentence } from "./moving-words.ts";
import type { WeekState } from "./week-state.ts";

const MOST_SHOWN = 200;
const MOST_CHARS = 60;

/** A new plan beside the accepted one: what it moves, what it saves, and the decision. */
export function CompareBar(props: { readonly week: WeekState }): JSX.Element {
  const { plan } = useStores();
  const comparison = createMemo(() => {
    const [before, after] = [plan.plan(), plan.proposal()];
    return before && after ? comparePlans(before, after) : null;
  });
  return (
    <Show when={comparison()}>
      {(found) => (
        <section class="week-compare" aria-label="The new plan beside the old one">
          <Headline comparison={found()} />
          <Moving plan={plan.proposal()} />
          <div class="week-compare-choice">
            <Button aria-pressed={props.week.isNew()} onClick={() => props.week.showNew(!props.week.isNew())}>
              {props.week.isNew() ? "Look at the old plan" : "Look at the new plan"}
            </Button>
            <Button onClick={() => plan.drop()}>Keep the old plan</Button>
            <Button look="main" icon="tick" onClick={() => plan.accept()}>
              Accept the new plan
            </Button>
          </div>
          <Differences comparison={found()} />
        </section>
      )}
    </Show>
  );
}

function Headline(props: { readonly comparison: PlanComparison }): JSX.Element {
  const { format } = useStores();
  const cost = (): string => {
    const { costDifference } = props.comparison;
    if (Math.abs(costDifference) < 0.005) return "costs the same";
    return costDifference < 0
      ? `saves ${format().money(-costDifference)}`
      : `costs ${format().money(costDifference)} more`;
  };
  const builds = (): string => {
    const { moved, added, dropped } = props.comparison;
    if (moved.length + added.length + dropped.length === 0) return "every build stays where it is";
    return `${moved.length} moved, ${added.length} new, ${dropped.length} dropped, ${props.comparison.sameBuilds} the same`;
  };
  const late = (): string => `late orders ${from(props.comparison.lateOrders)}`;
  const without = (): string => {
    const { before, after } = props.comparison.withoutPlace;
    return before + after === 0 ? "" : `, copies without a place ${from(props.comparison.withoutPlace)}`;
  };
  return (
    <p>
      <b>A new plan {cost()}</b>: {builds()}; {late()}
      {without()}.
    </p>
  );
}

/** What became of the accepted plan's builds and what moving them costs, as the new plan counts it. */
function Moving(props: { readonly plan: PlanDocument | null }): JSX.Element {
  const { format } = useStores();
  const words = (): string | null => props.plan && movingSentence(props.plan, format());
  return <Show when={words()}>{(sentence) => <p>{sentence()}</p>}</Show>;
}

function from({ before, after }: { readonly before: number; readonly after: number }): string {
  return before === after ? `${after} as before` : `${before} → ${after}`;
}

function Differences(props: { readonly comparison: PlanComparison }): JSX.Element {
  const { format } = useStores();
  const lines = createMemo(() => {
    const { moved, added, dropped } = props.comparison;
    return [
      ...moved.map(
        ({ from: old, to }) =>
          `Moved: ${shortText(itemsText(to), MOST_CHARS)}, ${old.machineId} ${format().dateTime(old.setUpStart)} → ${to.machineId} ${format().dateTime(to.setUpStart)}`,
      ),
      ...added.map(
        (build) =>
          `New: ${shortText(itemsText(build), MOST_CHARS)} on ${build.machineId}, ${format().dateTime(build.setUpStart)}`,
      ),
      ...dropped.map(
        (build) =>
          `Dropped: ${shortText(itemsText(build), MOST_CHARS)} on ${build.machineId}, ${format().dateTime(build.setUpStart)}`,
      ),
    ];
  });
  return (
    <Show when={lines().length > 0}>
      <details>
        <summary>Build by build</summary>
        <ul tabindex="0" aria-label="Differences build by build">
          <For each={lines().slice(0, MOST_SHOWN)}>{(line) => <li>{line}</li>}</For>
          <Show when={lines().length > MOST_SHOWN}>
            <li>and {lines().length - MOST_SHOWN} more</li>
          </Show>
        </ul>
      </details>
    </Show>
  );
}

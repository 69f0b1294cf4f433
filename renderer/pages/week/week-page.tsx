import { createEffect, createSignal, type JSX, on, onCleanup, Show } from "solid-js";
import { EmptyState } from "../../components/empty-state.tsx";
import { Button } from "../../components/button.tsx";
import { PageFrame } from "../../components/page-frame.tsx";
import { PlanDialog } from "../../components/frame/plan-dialog.tsx";
import { SplitPane } from "../../components/split-pane.tsx";
import { useStores } from "../../store/stores.ts";
import "../../styles/week.css";
import type { PageEntry } from "../page-list.ts";
import { BuildPanel } from "./build-panel.tsx";
import { CompareBar } from "./compare-bar.tsx";
import { createMoveHand } from "./move-hand.ts";
import { Timeline } from "./timeline.tsx";
import { createWeekActions } from "./week-actions.ts";
import { pressWeekKey, WEEK_KEYS } from "./week-keys.ts";
import { Legend } from "./legend.tsx";
import { createWeekState } from "./week-state.ts";
import { WeekTools } from "./week-tools.tsx";
import { type TreeHandle, WeekTree } from "./week-tree.tsx";
import { createWeekView } from "./week-view.ts";
import { buildSentence } from "./week-words.ts";

/** Root font size at which the sizes of the picture are as written. */
const USUAL_ROOT_PX = 15;

/** Who makes what, when: the week as a picture and as a list, and the chosen build beside them. */
export default function WeekPage(props: { readonly page: PageEntry }): JSX.Element {
  const { shortcuts, format, plan } = useStores();
  const week = createWeekState();
  const sizeFactor = createSizeFactor();
  const view = createWeekView(week.picture, sizeFactor);
  const actions = createWeekActions(week);
  const hand = createMoveHand(week, actions.put, view.reveal);
  const [tree, setTree] = createSignal<TreeHandle | null>(null);
  const [isAsking, setIsAsking] = createSignal(false);
  const parts = { week, view, hand, actions };
  shortcuts.add(WEEK_KEYS.map(([keys, label]) => ({ keys, label, group: "Week" })));
  createEffect(on(week.chosen, (chosen) => chosen && view.widthPx() > 0 && view.reveal(chosen)));
  return (
    <PageFrame
      page={props.page}
      fills
      facts={<WeekFacts builds={week.picture().byId.size} />}
      tools={<WeekTools view={view} plan={week.plan()} />}
    >
      <Show
        when={week.picture().byId.size > 0}
        fallback={<NoPlan isPlanning={plan.planning() !== null} onPlan={() => setIsAsking(true)} />}
      >
        <SplitPane
          name="the chosen build"
          sideLabel="The chosen build"
          main={
            <div class="week">
              <Show when={week.plan()} fallback={<OnlyFixed onPlan={() => setIsAsking(true)} />}>
                <CompareBar week={week} />
              </Show>
              <Timeline
                week={week}
                view={view}
                hand={hand}
                sizeFactor={sizeFactor()}
                onChosen={() => tree()?.focus()}
              />
              <Legend week={week} />
              <WeekTree
                week={week}
                sizeFactor={sizeFactor()}
                handle={setTree}
                onKey={(event) => pressWeekKey(parts, event)}
              />
              <p class="unseen" role="status">
                {week.chosen() ? `Chosen: ${buildSentence(week.chosen()!, format())}` : ""}
              </p>
            </div>
          }
          side={<BuildPanel week={week} actions={actions} hand={hand} onFocus={() => tree()?.focus()} />}
        />
      </Show>
      <PlanDialog isOpen={isAsking()} onClose={() => setIsAsking(false)} />
    </PageFrame>
  );
}

function createSizeFactor(): () => number {
  const [factor, setFactor] = createSignal(readSizeFactor());
  const onResize = (): void => void setFactor(readSizeFactor());
  window.addEventListener("resize", onResize);
  onCleanup(() => window.removeEventListener("resize", onResize));
  return factor;
}

function readSizeFactor(): number {
  const rootPx = parseFloat(getComputedStyle(document.documentElement).fontSize);
  return (rootPx || USUAL_ROOT_PX) / USUAL_ROOT_PX;
}

function WeekFacts(props: { readonly builds: number }): JSX.Element {
  const { plan, format } = useStores();
  const words = (): string => {
    const made = plan.plan();
    const builds = `${format().number(props.builds, 0)} ${props.builds === 1 ? "build" : "builds"}`;
    if (!made) return builds;
    const gap =
      made.bound.value > 0 ? `, at most ${format().percentAtMost(made.bound.gapPct, 1)} to gain` : "";
    return `${builds}, ${made.horizonDays} days from ${format().dateTime(made.plannedFrom)}${gap}`;
  };
  return <>{words()}</>;
}

/** There is no plan, but the shop has builds that are committed or running. */
function OnlyFixed(props: { readonly onPlan: () => void }): JSX.Element {
  const { plan } = useStores();
  return (
    <section class="week-compare" aria-label="No plan yet">
      <p>
        <b>No plan yet:</b> only what is committed or running stands here.
      </p>
      <Button look="main" icon="start" disabled={plan.planning() !== null} onClick={() => props.onPlan()}>
        Plan the week
      </Button>
    </section>
  );
}

function NoPlan(props: { readonly isPlanning: boolean; readonly onPlan: () => void }): JSX.Element {
  return (
    <EmptyState
      title={props.isPlanning ? "The first plan is being made" : "No plan yet"}
      actions={
        <Button look="main" icon="start" disabled={props.isPlanning} onClick={() => props.onPlan()}>
          Plan the week
        </Button>
      }
    >
      A plan says which machine makes which copies when, what that costs, and how much could be gained at
      most. Its builds stand here as bars, with set-up, changeover and unloading to scale.
    </EmptyState>
  );
}

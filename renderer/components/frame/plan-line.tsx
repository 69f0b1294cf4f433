import { type JSX, Match, Show, Switch } from "solid-js";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { lateOrders, unplannedCopies } from "../../../core/report/week-facts.ts";
import type { PlanningState } from "../../store/plan-store.ts";
import { useStores } from "../../store/stores.ts";
import { Button } from "../button.tsx";

/** The plan in one line: what it costs and what is late, or how far planning is, with its button. */
export function PlanLine(props: { readonly onPlan: () => void }): JSX.Element {
  const { plan } = useStores();
  return (
    <div class="band-plan">
      <Switch>
        <Match when={plan.planning()}>{(state) => <Going state={state()} />}</Match>
        <Match when={plan.plan()}>
          {(made) => (
            <>
              <Facts plan={made()} />
              <Button look={plan.isOld() ? "main" : undefined} icon="start" onClick={() => props.onPlan()}>
                Plan again
              </Button>
            </>
          )}
        </Match>
        <Match when={true}>
          <Button look="main" icon="start" onClick={() => props.onPlan()}>
            Plan the week
          </Button>
        </Match>
      </Switch>
    </div>
  );
}

function Facts(props: { readonly plan: PlanDocument }): JSX.Element {
  const { format, plan } = useStores();
  const late = (): number => lateOrders(props.plan).length;
  const without = (): number => unplannedCopies(props.plan);
  const withoutWords = (): string =>
    without() === 1 ? "1 copy without a place" : `${format().number(without(), 0)} copies without a place`;
  return (
    <p>
      <b>{format().money(props.plan.cost.total)}</b>{" "}
      <span classList={{ bad: late() > 0, well: late() === 0 }}>
        {late() > 0 ? `${late()} late` : "none late"}
      </span>
      <Show when={without() > 0}>
        , <span class="bad">{withoutWords()}</span>
      </Show>
      <Show when={plan.isOld()}>
        <span class="quiet">, made before the last edits</span>
      </Show>
    </p>
  );
}

function Going(props: { readonly state: PlanningState }): JSX.Element {
  const { format, plan } = useStores();
  const share = (): number =>
    Math.min(1, (props.state.progress?.elapsedS ?? 0) / Math.max(1, props.state.seconds));
  const words = (): string => {
    const { progress } = props.state;
    if (!progress) return "starting";
    const cost = progress.cost === null ? "" : `, ${format().money(progress.cost)}`;
    const gain =
      progress.toGainPct === null ? "" : `, at most ${format().percentAtMost(progress.toGainPct, 1)} to gain`;
    return `${progress.stage}${cost}${gain}`;
  };
  return (
    <>
      <progress value={share()} max={1} aria-label="Planning" />
      <p>{words()}</p>
      <Button icon="stop" disabled={props.state.isStopping} onClick={() => plan.stop()}>
        {props.state.isStopping ? "Stopping" : "Stop"}
      </Button>
    </>
  );
}

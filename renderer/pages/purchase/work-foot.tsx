import { createMemo, type JSX, Show } from "solid-js";
import type { PurchaseCase } from "../../../core/shop/purchase-case.ts";
import { Button } from "../../components/button.tsx";
import type { PurchaseState } from "./purchase-state.ts";
import { progressShare, progressWords, type Working } from "./working.ts";

interface FootProps {
  readonly state: PurchaseState;
  readonly purchaseCase: PurchaseCase;
  readonly working: Working;
  readonly onWork: () => void;
}

/** Starts working the case out, tells how far it is, and stops it. */
export function WorkFoot(props: FootProps): JSX.Element {
  const going = () => props.working.going();
  const isOther = (): boolean => going() !== null && going()?.caseId !== props.purchaseCase.id;
  const errors = createMemo(
    () => props.state.findings().filter(({ severity }) => severity === "error").length,
  );
  const stageOnly = (): string => going()?.progress.stage ?? "";
  return (
    <div class="work-foot">
      <Show
        when={going()}
        fallback={
          <>
            <Button look="main" icon="start" disabled={errors() > 0} onClick={() => props.onWork()}>
              Work it out <kbd>W</kbd>
            </Button>
            <span class="quiet work-words">
              {errors() > 0
                ? `${errors()} ${errors() === 1 ? "thing has" : "things have"} to be corrected first.`
                : extentWords(props.purchaseCase)}
            </span>
          </>
        }
      >
        {(now) => (
          <>
            <Button icon="stop" onClick={() => props.working.stop()}>
              {now().isStopping ? "End at once" : "Stop and keep"}
            </Button>
            <span class="work-words">
              {isOther() ? "Another case: " : ""}
              {progressWords(now().progress)}
            </span>
            <progress
              class="work-bar"
              aria-label="Jobs done"
              {...(progressShare(now().progress) === null
                ? {}
                : { value: progressShare(now().progress) ?? 0 })}
            />
          </>
        )}
      </Show>
      <p class="unseen" role="status">
        {stageOnly()}
      </p>
    </div>
  );
}

function extentWords({ scenarios, weeks, candidates }: PurchaseCase): string {
  const runs = candidates.length + 1;
  return `${scenarios} ${scenarios === 1 ? "scenario" : "scenarios"} of ${weeks} ${weeks === 1 ? "week" : "weeks"}, planned ${runs} times.`;
}

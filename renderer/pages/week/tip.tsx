import { createMemo, type JSX, Show } from "solid-js";
import { itemsText } from "../../../core/report/week-facts.ts";
import { shortText } from "../../../core/report/plain-text.ts";
import { useStores } from "../../store/stores.ts";
import type { MoveHand } from "./move-hand.ts";
import type { TipPlace } from "./pointer.ts";
import { verdictSentence } from "./verdict-words.ts";
import { lateWords, stateWords } from "./week-words.ts";

const WIDTH_PX = 290;
const MOST_CHARS = 90;

/** Beside the pointer: what the build is, or, while it is carried, what would become of it there. */
export function Tip(props: { readonly tip: TipPlace; readonly hand: MoveHand }): JSX.Element {
  const { format } = useStores();
  const left = createMemo(() => Math.max(4, Math.min(props.tip.xPx + 16, props.tip.widthPx - WIDTH_PX)));
  const carried = (): ReturnType<MoveHand["carried"]> => props.hand.carried();
  return (
    <div
      class="week-tip"
      aria-hidden="true"
      classList={{ refused: (carried()?.refusals.length ?? 0) > 0 }}
      style={{ left: `${left()}px`, top: `${props.tip.yPx + 18}px` }}
    >
      <b>{shortText(itemsText(props.tip.build.build), MOST_CHARS)}</b>
      <Show
        when={carried()}
        fallback={
          <>
            <span>
              {props.tip.build.build.feedstockId}, {stateWords(props.tip.build)}
            </span>
            <span>
              {format().dateTime(props.tip.build.build.setUpStart)} to{" "}
              {format().dateTime(props.tip.build.build.unloadEnd)}
            </span>
            <span classList={{ bad: props.tip.build.lateMin > 0 }}>
              {lateWords(props.tip.build, format())}
            </span>
          </>
        }
      >
        {(now) => (
          <span classList={{ bad: now().refusals.length > 0 }}>{verdictSentence(now(), format())}</span>
        )}
      </Show>
    </div>
  );
}

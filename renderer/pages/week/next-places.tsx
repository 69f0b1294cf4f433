import { createEffect, createSignal, For, type JSX, on, onCleanup, Show } from "solid-js";
import { NameText } from "../../components/name-text.tsx";
import { sentenceInUnits } from "../../format/shown-units.ts";
import { useStores } from "../../store/stores.ts";
import { Button } from "../../components/button.tsx";
import { shopBuild } from "../../../core/plan/replan/with-earlier-plan.ts";
import { shortText } from "../../../core/report/plain-text.ts";
import { findPlaces, type OtherPlace } from "./find-places.ts";
import { costWords } from "./verdict-words.ts";
import type { WeekActions } from "./week-actions.ts";
import type { WeekBuild } from "./week-picture.ts";
import type { WeekState } from "./week-state.ts";

const SHOWN = 6;
const MOST_CHARS = 140;

interface NextPlacesProps {
  readonly entry: WeekBuild;
  readonly week: WeekState;
  readonly actions: WeekActions;
}

/** Where else the build could stand, the cheapest first, and the machines that cannot make it, with the reason. */
export function NextPlaces(props: NextPlacesProps): JSX.Element {
  const { shop, format } = useStores();
  const [places, setPlaces] = createSignal<readonly OtherPlace[] | null>(null);
  const [isOpen, setIsOpen] = createSignal(false);
  let timer: ReturnType<typeof setTimeout> | undefined;
  onCleanup(() => clearTimeout(timer));
  createEffect(
    on([() => props.entry.build.id, isOpen, shop.shop, props.week.plan], ([, open, now, plan]) => {
      clearTimeout(timer);
      setPlaces(null);
      if (!open || !plan) return;
      const standing = [...props.week.picture().byId.values()].map(({ build }) => build);
      const search = findPlaces(now, plan, standing, props.entry.build.id);
      // One machine at a time, so that typing and looking about go on meanwhile.
      const step = (): void => {
        const { value, done } = search.next();
        if (value) setPlaces(value);
        if (!done) timer = setTimeout(step, 0);
      };
      timer = setTimeout(step, 0);
    }),
  );
  const possible = () => places()?.filter(({ verdict }) => verdict !== null) ?? [];
  const refused = () => places()?.filter(({ verdict }) => verdict === null) ?? [];
  return (
    <details class="week-places" onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary>
        <h3>The next best places</h3>
      </summary>
      <Show when={places()} fallback={<p class="quiet">Looking for them…</p>}>
        <p class="quiet">
          The first time that is free on each machine with all other builds where they are. Costs are against
          where it stands now, lateness and changeovers included, tool paths not.
        </p>
        <ul>
          <For each={possible().slice(0, SHOWN)}>
            {({ machineId, feedstockId, verdict }) => (
              <li>
                <NameText text={`${machineId}, ${feedstockId}`} />
                <span>{format().dateTime(verdict?.build.setUpStart ?? "")}</span>
                <span classList={{ bad: (verdict?.lateMin ?? 0) > 0 }}>
                  {(verdict?.lateMin ?? 0) > 0
                    ? `${format().duration(verdict?.lateMin ?? 0)} late`
                    : "in time"}
                </span>
                <b>{costWords(verdict?.extraCost ?? 0, format())}</b>
                <Button
                  look="plain"
                  disabled={!props.week.canEdit() || props.entry.build.state === "running"}
                  aria-label={`Commit there: ${machineId} with ${feedstockId}`}
                  onClick={() => verdict && props.actions.put(shopBuild(verdict.build, "committed"))}
                >
                  Commit there
                </Button>
              </li>
            )}
          </For>
          <For each={refused()}>
            {({ machineId, reasons }) => (
              <li class="quiet">
                <NameText text={machineId} />{" "}
                {shortText(
                  sentenceInUnits(reasons[0] ?? "no time free for it in sight", format()),
                  MOST_CHARS,
                )}
              </li>
            )}
          </For>
        </ul>
      </Show>
    </details>
  );
}

import { createMemo, For, type JSX, Show } from "solid-js";
import { reasonsAndHelp } from "../../../core/report/week-facts.ts";
import { keepsItsPlace } from "../../../core/shop/build-copies.ts";
import { Button } from "../../components/button.tsx";
import { FamilyMark } from "../../components/family-mark.tsx";
import { KeyValues } from "../../components/key-values.tsx";
import { NameText } from "../../components/name-text.tsx";
import { sentenceInUnits } from "../../format/shown-units.ts";
import { useStores } from "../../store/stores.ts";
import { BuildCosts } from "./build-costs.tsx";
import type { MoveHand } from "./move-hand.ts";
import { HandPanel } from "./hand-panel.tsx";
import { NextPlaces } from "./next-places.tsx";
import { PinChoice } from "./pin-choice.tsx";
import type { WeekActions } from "./week-actions.ts";
import type { WeekBuild } from "./week-picture.ts";
import type { WeekState } from "./week-state.ts";
import { lateWords, stateWords } from "./week-words.ts";

interface BuildPanelProps {
  readonly week: WeekState;
  readonly actions: WeekActions;
  readonly hand: MoveHand;
  /** the focus goes back to the list, where the keys are */
  readonly onFocus: () => void;
}

/** The chosen build: what, for whom, when, at what cost, why there, and what else could be done. */
export function BuildPanel(props: BuildPanelProps): JSX.Element {
  return (
    <Show
      when={props.week.chosen()}
      fallback={<p class="quiet">Choose a build in the picture or in the list to read why it is there.</p>}
    >
      {(entry) => (
        <>
          <HandPanel hand={props.hand} onDone={props.onFocus} />
          <Facts entry={entry()} />
          <Decisions entry={entry()} {...props} />
          <Orders entry={entry()} week={props.week} />
          <BuildCosts entry={entry()} />
          <NextPlaces entry={entry()} week={props.week} actions={props.actions} />
        </>
      )}
    </Show>
  );
}

function nameOf(list: readonly { readonly id: string; readonly name: string }[], id: string): string {
  return list.find((candidate) => candidate.id === id)?.name ?? id;
}

function Facts(props: { readonly entry: WeekBuild }): JSX.Element {
  const { shop, format } = useStores();
  const pairs = createMemo(() => {
    const { entry } = props;
    const { build } = entry;
    const set = format().duration(entry.printMin - entry.setUpMin);
    const change =
      build.changeoverMin > 0 ? `, ${format().duration(build.changeoverMin)} of it changeover` : "";
    const wait = entry.unloadMin - entry.doneMin;
    return [
      {
        name: "Machine",
        value: <NameText text={`${build.machineId} ${nameOf(shop.shop().machines, build.machineId)}`} />,
      },
      {
        name: "Feedstock",
        value: (
          <>
            <FamilyMark mark={entry.mark} name={nameOf(shop.shop().feedstocks, build.feedstockId)} />
          </>
        ),
      },
      { name: "Set-up", value: `${format().dateTime(build.setUpStart)}, ${set}${change}` },
      {
        name: "Print",
        value: `${format().dateTime(build.printStart)}, ${format().duration(entry.doneMin - entry.printMin)}`,
      },
      {
        name: "Off by",
        value: `${format().dateTime(build.unloadEnd)}${wait > 0 ? `, after waiting ${format().duration(wait)}` : ""}`,
      },
      ...(build.massKg > 0 ? [{ name: "Mass", value: format().massText(build.massKg) }] : []),
      { name: "State", value: stateWords(entry) },
    ];
  });
  return (
    <section>
      <h2>
        <NameText text={props.entry.build.id} />
      </h2>
      <p classList={{ bad: props.entry.lateMin > 0, well: props.entry.lateMin <= 0 }}>
        {lateWords(props.entry, format())}
      </p>
      <KeyValues pairs={pairs()} />
    </section>
  );
}

function Decisions(props: BuildPanelProps & { readonly entry: WeekBuild }): JSX.Element {
  const isFixed = (): boolean => keepsItsPlace(props.entry.build);
  const isRunning = (): boolean => props.entry.build.state === "running";
  return (
    <section class="week-decisions" aria-label="Decide about this build">
      <Button
        icon={isFixed() ? "undo" : "tick"}
        disabled={isRunning() || !props.week.canEdit()}
        onClick={() => props.actions.commitOrLetGo(props.entry)}
      >
        {isFixed() ? "Let it go" : "Commit"}
      </Button>
      <Button disabled={!props.week.canEdit()} onClick={() => props.actions.commitUpTo(props.entry)}>
        Commit up to here
      </Button>
      <Button
        disabled={isRunning() || !props.week.canEdit() || props.hand.carried() !== null}
        onClick={() => {
          if (props.hand.take(props.entry)) props.onFocus();
        }}
      >
        Move to…
      </Button>
      <PinChoice entry={props.entry} actions={props.actions} disabled={!props.week.canEdit()} />
    </section>
  );
}

function Orders(props: { readonly entry: WeekBuild; readonly week: WeekState }): JSX.Element {
  return (
    <section>
      <h3>Makes</h3>
      <For each={props.entry.build.items}>
        {(item) => <OrderLines orderId={item.orderId} copies={item.copies} week={props.week} />}
      </For>
    </section>
  );
}

interface OrderLinesProps {
  readonly orderId: string;
  readonly copies: number;
  readonly week: WeekState;
}

/** One order of the build: for whom, due when, and where it is late why and what would help. */
function OrderLines(props: OrderLinesProps): JSX.Element {
  const { shop, format } = useStores();
  const order = createMemo(() => shop.shop().orders.find(({ id }) => id === props.orderId));
  const part = (): string => shop.shop().parts.find(({ id }) => id === order()?.partId)?.name ?? "";
  const outcome = createMemo(() =>
    props.week.plan()?.orders.find(({ orderId }) => orderId === props.orderId),
  );
  const words = createMemo(() => reasonsAndHelp(outcome()?.why ?? []));
  return (
    <div class="week-order">
      <NameText text={`${props.orderId}: ${props.copies} of ${order()?.quantity ?? "?"} × ${part()}`} />
      <NameText text={order()?.customer ?? ""} />
      <Show when={order()}>{(found) => <span>due {format().dateTime(found().dueAt)}</span>}</Show>
      <Show when={words().reasons.length + words().help.length > 0}>
        <ul>
          <For each={words().reasons}>{(sentence) => <li>{sentenceInUnits(sentence, format())}</li>}</For>
          <For each={words().help}>
            {(sentence) => (
              <li>
                <b>Would help:</b> {sentenceInUnits(sentence, format())}
              </li>
            )}
          </For>
        </ul>
      </Show>
    </div>
  );
}

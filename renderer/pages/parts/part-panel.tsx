import { createEffect, createMemo, createResource, createSignal, type JSX, on, Show } from "solid-js";
import { whereOf } from "../../../core/shop/finding.ts";
import type { Part } from "../../../core/shop/part.ts";
import type { Shop } from "../../../core/shop/shop.ts";
import { EntryGroups } from "../../components/entry/entry-fields.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { NameText } from "../../components/name-text.tsx";
import { Tabs } from "../../components/tabs.tsx";
import type { EntryEdits } from "../../store/entry-edits.ts";
import { useStores } from "../../store/stores.ts";
import { askBodies } from "../../worker/body-client.ts";
import type { Way } from "../../worker/body-messages.ts";
import { BodyPanel } from "./body-panel.tsx";
import { LayerPlot } from "./layer-plot.tsx";
import type { PartColumns } from "./part-columns.ts";
import { WayDetails } from "./way-details.tsx";
import { type ChosenWay, WaysTable } from "./ways-table.tsx";

/** Puts the chosen part as it is to be; `what` stands after "Undo". */
export type PutPart = (next: Part, what: string) => void;

interface PartPanelProps {
  readonly part: Part;
  readonly wanted: number;
  readonly columns: PartColumns;
  readonly edits: EntryEdits<"parts">;
}

/** Finding ways takes the worker a moment: it waits until edits rest. */
const REST_MS = 150;

/** Everything of the chosen part: the ways to make it, its body, its layers, its needs. */
export function PartPanel(props: PartPanelProps): JSX.Element {
  const { shop, selection, notes } = useStores();
  const [ways] = createResource(createAsked(), async ({ shop: of, partId, wanted }) => {
    try {
      return (await askBodies({ kind: "ways", shop: withPartAlone(of, partId), partId, wanted })).ways;
    } catch (fault) {
      notes.alarm(fault instanceof Error ? fault.message : String(fault));
      return [];
    }
  });
  const [picked, setPicked] = createSignal<{ readonly key: string; readonly orientation: string } | null>(
    null,
  );
  const chosen = createMemo((): ChosenWay | null => {
    const now = ways.latest ?? [];
    const way = now.find((one) => keyOf(one) === picked()?.key && one.routes.length > 0) ?? now[0];
    const route =
      way?.routes.find(({ route: one }) => one.orientation === picked()?.orientation) ?? way?.routes[0];
    return way && route && route.route.partId === props.part.id ? { way, route } : null;
  });
  const choose = ({ way, route }: ChosenWay): void =>
    void setPicked({ key: keyOf(way), orientation: route.route.orientation });
  const put: PutPart = (next, what) => {
    const before = props.part.id;
    props.edits.put(before, next, what);
    if (next.id !== before) selection.choose({ partId: next.id });
  };
  const findings = () => shop.findingsAt(whereOf("parts", props.part.id));
  const shownWays = (): readonly Way[] => ways.latest ?? [];
  return (
    <>
      <h2 class="side-title">
        <NameText text={props.part.name} most={60} />
      </h2>
      <Show when={findings().length > 0}>
        <FindingList findings={findings()} />
      </Show>
      <Tabs
        label="About the part"
        tabs={[
          {
            id: "ways",
            title: "Ways to make it",
            content: () => (
              <div class="side-stack" aria-busy={ways.loading}>
                <Show
                  when={shownWays().length > 0}
                  fallback={
                    <p class="quiet">
                      {ways.loading
                        ? "Ways are looked for."
                        : "The shop has no machine and feedstock to try."}
                    </p>
                  }
                >
                  <WaysTable ways={shownWays()} wanted={props.wanted} chosen={chosen()} onChoose={choose} />
                </Show>
                <Show when={chosen()}>{(now) => <WayDetails chosen={now()} onChoose={choose} />}</Show>
              </div>
            ),
          },
          {
            id: "body",
            title: "Body",
            content: () => (
              <div class="side-stack">
                <BodyPanel
                  part={props.part}
                  chosen={chosen()}
                  columns={props.columns}
                  onPut={put}
                  findingAt={(field) => props.edits.findingAtField(props.part, field)}
                />
              </div>
            ),
          },
          {
            id: "layers",
            title: "Layers",
            content: () => (
              <div class="side-stack">
                <Show
                  when={chosen()}
                  fallback={<p class="quiet">There is no way to make it, so no layers.</p>}
                >
                  {(now) => <LayerPlot part={props.part} chosen={now()} />}
                </Show>
              </div>
            ),
          },
          {
            id: "needs",
            title: "Needs",
            content: () => (
              <div class="side-stack">
                <EntryGroups
                  row={props.part}
                  groups={props.columns.groups}
                  onPut={put}
                  findingAt={props.edits.findingAtField}
                />
              </div>
            ),
          },
        ]}
      />
    </>
  );

  /** What is asked of the worker, once edits rest. Orders and builds do not change the ways. */
  function createAsked() {
    const asked = createMemo(
      () => ({ shop: shop.shop(), partId: props.part.id, wanted: props.wanted }),
      undefined,
      {
        equals: (a, b) => a.partId === b.partId && a.wanted === b.wanted && sameWays(a.shop, b.shop),
      },
    );
    const [rested, setRested] = createSignal(asked());
    let timer: ReturnType<typeof setTimeout> | undefined;
    createEffect(
      on(
        asked,
        (now) => {
          clearTimeout(timer);
          timer = setTimeout(() => setRested(now), REST_MS);
        },
        { defer: true },
      ),
    );
    return rested;
  }
}

function sameWays(a: Shop, b: Shop): boolean {
  return (
    a.parts === b.parts &&
    a.machines === b.machines &&
    a.feedstocks === b.feedstocks &&
    a.costing === b.costing
  );
}

function keyOf({ machineIds, nozzleId, feedstockId }: Way): string {
  return JSON.stringify([machineIds[0], nozzleId, feedstockId]);
}

/** What the worker needs of a shop, so that thousands of orders are not sent along. */
function withPartAlone(shop: Shop, partId: string): Shop {
  return { ...shop, parts: shop.parts.filter(({ id }) => id === partId), orders: [], builds: [] };
}

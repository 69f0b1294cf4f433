import { createEffect, createMemo, createSignal, Index, type JSX, on, Show } from "solid-js";
import type { PlanDocument } from "../../../core/plan/plan-document.ts";
import { NameText } from "../../components/name-text.tsx";
import { useStores } from "../../store/stores.ts";
import { type CostNode, type CostView, costTree, openedRows, type ShownNode } from "./cost-tree.ts";

interface CostTreegridProps {
  readonly plan: PlanDocument;
  readonly view: CostView;
  readonly nameOf: (node: CostNode) => string;
  readonly onActive: (node: CostNode | null) => void;
}

/** The total opened like a tree; keys by the W3C treegrid pattern: arrows, Home, End, Enter opens and closes. */
export function CostTreegrid(props: CostTreegridProps): JSX.Element {
  const { format } = useStores();
  const [open, setOpen] = createSignal<ReadonlySet<string>>(new Set());
  const [active, setActive] = createSignal(0);
  const tree = createMemo(() => costTree(props.plan, props.view));
  const rows = createMemo(() => openedRows(tree(), (key) => open().has(key)));
  const largest = createMemo(() => Math.max(...tree().map(({ amount }) => amount), 0));
  const at = createMemo(() => Math.min(active(), Math.max(0, rows().length - 1)));
  let box: HTMLDivElement | undefined;
  createEffect(
    on(
      () => props.view,
      () => {
        setOpen(new Set<string>());
        setActive(0);
      },
    ),
  );
  createEffect(() => props.onActive(rows()[at()]?.node ?? null));
  const toggle = (row: ShownNode | undefined, wanted: boolean): void => {
    if (!row || row.node.by === "line") return;
    setOpen((before) => {
      const next = new Set(before);
      if (wanted) next.add(row.node.key);
      else next.delete(row.node.key);
      return next;
    });
  };
  const goTo = (index: number): void => {
    setActive(Math.max(0, Math.min(index, rows().length - 1)));
    box?.querySelector<HTMLElement>(`[data-at="${at()}"]`)?.focus();
  };
  const onKey = (event: KeyboardEvent): void => {
    const row = rows()[at()];
    const isOpen = row !== undefined && open().has(row.node.key);
    const steps: Readonly<Record<string, () => void>> = {
      ArrowDown: () => goTo(at() + 1),
      ArrowUp: () => goTo(at() - 1),
      Home: () => goTo(0),
      End: () => goTo(rows().length - 1),
      PageDown: () => goTo(at() + PAGE_ROWS),
      PageUp: () => goTo(at() - PAGE_ROWS),
      ArrowRight: () => (isOpen ? goTo(at() + 1) : toggle(row, true)),
      ArrowLeft: () => (isOpen ? toggle(row, false) : row && row.parent >= 0 && goTo(row.parent)),
      Enter: () => toggle(row, !isOpen),
      " ": () => toggle(row, !isOpen),
    };
    const step = steps[event.key];
    if (!step || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    step();
  };
  return (
    <div class="table-box cost-tree-box">
      <div
        ref={box}
        role="treegrid"
        aria-label="The total opened"
        aria-rowcount={rows().length + 2}
        onKeyDown={onKey}
      >
        <div role="row" class="cost-row cost-head" aria-rowindex={1}>
          <span role="columnheader">What</span>
          <span role="columnheader" class="num">
            {format().currency}
          </span>
          <span role="columnheader" class="num">
            Share
          </span>
          <span role="columnheader">Against the largest</span>
        </div>
        <Index each={rows()}>
          {(row, index) => (
            <div
              role="row"
              class="cost-row"
              data-at={index}
              data-active={index === at() ? "" : undefined}
              tabindex={index === at() ? 0 : -1}
              aria-level={row().level}
              aria-posinset={row().place}
              aria-setsize={row().siblings}
              aria-rowindex={index + 2}
              aria-expanded={row().node.by === "line" ? undefined : open().has(row().node.key)}
              onClick={() => {
                goTo(index);
                toggle(row(), !open().has(row().node.key));
              }}
              onFocus={() => setActive(index)}
            >
              <span role="gridcell" class="cost-name" style={{ "--level": row().level - 1 }}>
                <span class="cost-sign" aria-hidden="true">
                  {row().node.by === "line" ? "·" : open().has(row().node.key) ? "▾" : "▸"}
                </span>
                <NameText text={props.nameOf(row().node)} most={90} />
              </span>
              <span role="gridcell" class="num">
                {format().amount(row().node.shown)}
              </span>
              <span role="gridcell" class="num">
                {share(row().node.amount, props.plan.cost.total, (value) => format().fixed(value, 1))}
              </span>
              <span role="gridcell" class="cost-bar" aria-hidden="true">
                <i style={{ width: `${barPct(row().node.amount, largest())}%` }} data-level={row().level} />
              </span>
            </div>
          )}
        </Index>
        <Show when={rows().length > 0}>
          <div role="row" class="cost-row cost-total" aria-rowindex={rows().length + 2}>
            <span role="gridcell">Total</span>
            <span role="gridcell" class="num">
              {format().amount(props.plan.cost.total)}
            </span>
            <span role="gridcell" class="num" />
            <span role="gridcell" />
          </div>
        </Show>
      </div>
    </div>
  );
}

const PAGE_ROWS = 15;

function share(amount: number, total: number, write: (pct: number) => string): string {
  return total > 0 ? `${write((100 * amount) / total)} %` : "";
}

function barPct(amount: number, largest: number): number {
  return largest > 0 ? Math.max(0, Math.min(100, (100 * amount) / largest)) : 0;
}

import {
  createEffect,
  createMemo,
  createSignal,
  For,
  type JSX,
  on,
  onCleanup,
  onMount,
  Show,
} from "solid-js";
import { itemsText } from "../../../core/report/week-facts.ts";
import { NameText } from "../../components/name-text.tsx";
import { useStores } from "../../store/stores.ts";
import { buildKey, machineKey, type TreeRow, treeRows, treeStep } from "./tree-rows.ts";
import type { WeekState } from "./week-state.ts";
import { lateWords, stateWords } from "./week-words.ts";

export interface TreeHandle {
  readonly focus: () => void;
}

interface WeekTreeProps {
  readonly week: WeekState;
  readonly sizeFactor: number;
  readonly handle: (handle: TreeHandle) => void;
  /** true: the key was for something else than going about */
  readonly onKey: (event: KeyboardEvent) => boolean;
}

const ROW_PX = 28;
/** More builds than this are not all opened at first. */
const MOST_OPEN = 600;
const AROUND = 4;

/** The week as a list, equal to the picture: machines with their builds below, by the pattern of tree grids. */
export function WeekTree(props: WeekTreeProps): JSX.Element {
  const { selection } = useStores();
  let box!: HTMLDivElement;
  const [shut, setShut] = createSignal<ReadonlySet<string>>(new Set());
  const isAllShut = createMemo(() => props.week.picture().byId.size > MOST_OPEN);
  const isOpen = (machineId: string): boolean => shut().has(machineId) === isAllShut();
  const rows = createMemo(() => treeRows(props.week.picture(), isOpen));
  const activeKey = createMemo(() => {
    const { buildId, machineId } = selection.chosen();
    if (buildId !== null && props.week.picture().byId.has(buildId)) return buildKey(buildId);
    return machineId === null ? "" : machineKey(machineId);
  });
  const active = createMemo(() =>
    Math.max(
      0,
      rows().findIndex(({ id }) => id === activeKey()),
    ),
  );
  const rowPx = (): number => Math.round(ROW_PX * props.sizeFactor);
  const [sight, setSight] = createSignal({ topPx: 0, heightPx: 300 });
  const places = createMemo(() => {
    const first = Math.max(0, Math.floor(sight().topPx / rowPx()) - AROUND);
    const end = Math.min(rows().length, Math.ceil((sight().topPx + sight().heightPx) / rowPx()) + AROUND);
    const seen = Array.from({ length: Math.max(0, end - first) }, (_, at) => first + at);
    return active() < first || active() >= end ? [...seen, active()].toSorted((a, b) => a - b) : seen;
  });
  const toggle = (machineId: string): void =>
    void setShut((before) => {
      const next = new Set(before);
      if (!next.delete(machineId)) next.add(machineId);
      return next;
    });
  const choose = (row: TreeRow | undefined): void => {
    if (row?.level === 1) props.week.chooseMachine(row.row.machineId);
    if (row?.level === 2) props.week.choose(row.build);
  };
  const reveal = (): void => {
    const top = active() * rowPx();
    const room = box.clientHeight - rowPx();
    if (top < box.scrollTop) box.scrollTop = top;
    else if (top + rowPx() > box.scrollTop + room) box.scrollTop = top + rowPx() - room;
  };
  const focusActive = (): void =>
    box.querySelector<HTMLElement>('[tabindex="0"]')?.focus({ preventScroll: true });
  const onKeyDown = (event: KeyboardEvent): void => {
    if (props.onKey(event)) return event.preventDefault();
    if (event.altKey || event.shiftKey || (event.ctrlKey && !["Home", "End"].includes(event.key))) return;
    const pageRows = Math.max(1, Math.floor(box.clientHeight / rowPx()) - 2);
    const step = treeStep(rows(), active(), event.key, isOpen, pageRows);
    if (!step) return;
    event.preventDefault();
    if ("to" in step) choose(rows()[step.to]);
    else toggle("open" in step ? step.open : step.shut);
    queueMicrotask(focusActive);
  };
  // A build chosen elsewhere, in the picture or on another page, is brought into sight, its machine opened.
  createEffect(
    on(props.week.chosen, (chosen) => {
      if (chosen && !isOpen(chosen.build.machineId)) toggle(chosen.build.machineId);
      queueMicrotask(reveal);
    }),
  );
  onMount(() => {
    const watch = new ResizeObserver(() => setSight({ topPx: box.scrollTop, heightPx: box.clientHeight }));
    watch.observe(box);
    onCleanup(() => watch.disconnect());
    props.handle({ focus: () => queueMicrotask(focusActive) });
  });
  return (
    <div
      class="week-tree"
      ref={box}
      role="treegrid"
      aria-label="Builds by machine"
      aria-rowcount={rows().length + 1}
      onScroll={() => setSight({ topPx: box.scrollTop, heightPx: box.clientHeight })}
      onKeyDown={onKeyDown}
    >
      <div class="tree-head" role="row" aria-rowindex={1}>
        <For each={HEADS}>{(head) => <span role="columnheader">{head}</span>}</For>
      </div>
      <div class="tree-body" role="rowgroup" style={{ height: `${rows().length * rowPx()}px` }}>
        <For each={places()}>
          {(place) => (
            <Show when={rows()[place]}>
              {(row) => (
                <Row
                  row={row()}
                  place={place}
                  rowPx={rowPx()}
                  isActive={place === active()}
                  isChosen={row().id === activeKey()}
                  isOpen={isOpen}
                  onChoose={() => {
                    choose(row());
                    queueMicrotask(focusActive);
                  }}
                  onToggle={toggle}
                />
              )}
            </Show>
          )}
        </For>
      </div>
    </div>
  );
}

const HEADS = ["Machine or build", "Makes", "Set-up from", "Off by", "Feedstock", "State", "Due"];

interface RowProps {
  readonly row: TreeRow;
  readonly place: number;
  readonly rowPx: number;
  readonly isActive: boolean;
  readonly isChosen: boolean;
  readonly isOpen: (machineId: string) => boolean;
  readonly onChoose: () => void;
  readonly onToggle: (machineId: string) => void;
}

function Row(props: RowProps): JSX.Element {
  const isExpanded = (): boolean | undefined => {
    const { row } = props;
    return row.level === 1 && row.row.builds.length > 0 ? props.isOpen(row.row.machineId) : undefined;
  };
  return (
    <div
      class="tree-row"
      role="row"
      data-level={props.row.level}
      aria-level={props.row.level}
      aria-rowindex={props.place + 2}
      aria-expanded={isExpanded()}
      aria-selected={props.isChosen}
      tabindex={props.isActive ? 0 : -1}
      style={{ top: `${props.place * props.rowPx}px`, height: `${props.rowPx}px` }}
      onClick={() => props.onChoose()}
      onDblClick={() => props.row.level === 1 && props.onToggle(props.row.row.machineId)}
    >
      <Show
        when={props.row.level === 2 && props.row.build}
        fallback={<MachineCells {...props} isExpanded={isExpanded()} />}
      >
        {(entry) => <BuildCells entry={entry()} />}
      </Show>
    </div>
  );
}

function MachineCells(props: RowProps & { readonly isExpanded: boolean | undefined }): JSX.Element {
  const row = () => (props.row.level === 1 ? props.row.row : null);
  const late = (): number => row()?.builds.filter(({ lateMin }) => lateMin > 0).length ?? 0;
  const count = (): string => {
    const builds = row()?.builds.length ?? 0;
    return builds === 0 ? "free" : `${builds} ${builds === 1 ? "build" : "builds"}`;
  };
  return (
    <>
      <span role="gridcell" class="tree-machine">
        <span
          class="tree-fold"
          aria-hidden="true"
          onClick={(event) => {
            event.stopPropagation();
            props.onToggle(row()?.machineId ?? "");
          }}
        >
          {props.isExpanded === undefined ? "" : props.isExpanded ? "▾" : "▸"}
        </span>
        <NameText text={`${row()?.machineId ?? ""} ${row()?.name ?? ""}`} />
      </span>
      <span role="gridcell">{count()}</span>
      <span role="gridcell" />
      <span role="gridcell" />
      <span role="gridcell" />
      <span role="gridcell" />
      <span role="gridcell" classList={{ bad: late() > 0 }}>
        {late() > 0 ? `▼ ${late()} late` : ""}
      </span>
    </>
  );
}

function BuildCells(props: { readonly entry: Extract<TreeRow, { level: 2 }>["build"] }): JSX.Element {
  const { format } = useStores();
  return (
    <>
      <span role="gridcell" class="tree-build">
        <NameText text={props.entry.build.id} />
      </span>
      <span role="gridcell">
        <NameText text={itemsText(props.entry.build)} />
      </span>
      <span role="gridcell">{format().dateTime(props.entry.build.setUpStart)}</span>
      <span role="gridcell">{format().dateTime(props.entry.build.unloadEnd)}</span>
      <span role="gridcell">
        <NameText text={`${props.entry.mark.letter} ${props.entry.build.feedstockId}`} />
      </span>
      <span role="gridcell">{stateWords(props.entry)}</span>
      <span role="gridcell" classList={{ bad: props.entry.lateMin > 0 }}>
        {lateWords(props.entry, format())}
      </span>
    </>
  );
}

import { createSignal, type JSX, Show } from "solid-js";
import type { GridActions } from "./grid-actions.ts";
import type { GridLayout } from "./grid-layout.ts";
import { placeOf } from "./grid-pointer.ts";
import type { GridState } from "./grid-state.ts";
import type { CellRange } from "./ranges.ts";

interface FillHandleProps<Row> {
  readonly state: GridState<Row>;
  readonly layout: GridLayout;
  readonly actions: GridActions;
}

/** The corner of the selection: pulled up or down it fills the cells on its way. Ctrl+D does the same by keyboard. */
export function FillHandle<Row>(props: FillHandleProps<Row>): JSX.Element {
  const [target, setTarget] = createSignal<CellRange | null>(null);
  const source = (): CellRange | undefined => props.state.ranges().at(-1);
  const canFill = (): boolean => {
    const range = source();
    return (
      range !== undefined && props.state.columns.slice(range.left, range.right + 1).some(({ put }) => put)
    );
  };
  const corner = () => {
    const range = source();
    const box = props.layout.boxOf({ row: range?.bottom ?? 0, col: range?.right ?? 0 });
    return { left: `${box.leftPx + box.widthPx}px`, top: `${box.topPx + box.heightPx}px` };
  };
  const move = (event: PointerEvent & { currentTarget: HTMLElement }): void => {
    const range = source();
    if (!range || !event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const below = document
      .elementsFromPoint(event.clientX, event.clientY)
      .map(placeOf)
      .find((place) => place !== null);
    if (!below) return;
    setTarget({ ...range, top: Math.min(range.top, below.row), bottom: Math.max(range.bottom, below.row) });
  };
  const end = (): void => {
    const range = target();
    setTarget(null);
    if (!range) return;
    props.actions.fillTo(range);
    props.state.select(range);
  };
  return (
    <>
      <Show when={canFill() && !props.state.editing()}>
        <div
          class="grid-handle"
          aria-hidden="true"
          style={corner()}
          onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
          onPointerMove={move}
          onPointerUp={end}
        />
      </Show>
      <Show when={target()}>
        {(range) => <div class="grid-fill" style={frameOf(range(), props.layout)} />}
      </Show>
    </>
  );
}

function frameOf(range: CellRange, layout: GridLayout): JSX.CSSProperties {
  const first = layout.boxOf({ row: range.top, col: range.left });
  const last = layout.boxOf({ row: range.bottom, col: range.right });
  return {
    left: `${first.leftPx}px`,
    top: `${first.topPx}px`,
    width: `${last.leftPx + last.widthPx - first.leftPx}px`,
    height: `${last.topPx + last.heightPx - first.topPx}px`,
  };
}

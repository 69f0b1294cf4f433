import { type JSX, onMount } from "solid-js";
import { Button } from "../button.tsx";
import { Field } from "../field.tsx";
import type { GridLayout } from "./grid-layout.ts";
import { type GridState, HEAD_ROW } from "./grid-state.ts";

interface SifterProps<Row> {
  readonly columnId: string;
  readonly state: GridState<Row>;
  readonly layout: GridLayout;
  readonly onDone: () => void;
}

/** Asks what a column must hold for a row to be shown. */
export function Sifter<Row>(props: SifterProps<Row>): JSX.Element {
  const col = (): number => props.state.columns.findIndex(({ id }) => id === props.columnId);
  const column = () => props.state.columns[col()];
  let box: HTMLDivElement | undefined;
  onMount(() => box?.querySelector("input")?.focus({ preventScroll: true }));
  const place = () => {
    const { leftPx, heightPx } = props.layout.boxOf({ row: HEAD_ROW, col: col() });
    const top = (box?.closest(".grid-scroll")?.scrollTop ?? 0) + heightPx;
    return { left: `${leftPx}px`, top: `${top}px` };
  };
  return (
    <div
      ref={box}
      class="grid-sifter"
      role="group"
      aria-label={`Sift by ${column()?.title ?? ""}`}
      style={place()}
      onKeyDown={(event) => {
        if (event.key !== "Escape" && event.key !== "Enter") return;
        event.preventDefault();
        event.stopPropagation();
        props.onDone();
      }}
    >
      <Field
        label={`Only where ${column()?.title.toLowerCase() ?? ""} holds`}
        hint={column()?.amount ? "A text, or a number as > 5, < 5, 5..10" : undefined}
        value={props.state.sifts()[props.columnId] ?? ""}
        onInput={(event) => props.state.sift(props.columnId, event.currentTarget.value)}
      />
      <div class="empty-actions">
        <Button
          onClick={() => {
            props.state.sift(props.columnId, "");
            props.onDone();
          }}
        >
          Show all
        </Button>
        <Button look="main" onClick={() => props.onDone()}>
          Done
        </Button>
      </div>
    </div>
  );
}

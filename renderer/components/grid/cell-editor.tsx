import { createMemo, createSignal, createUniqueId, type JSX, onMount, Show } from "solid-js";
import { ChoiceList, fittingChoices } from "./choice-list.tsx";
import type { GridActions } from "./grid-actions.ts";
import type { GridLayout } from "./grid-layout.ts";
import type { Editing, GridState } from "./grid-state.ts";
import type { CellPlace } from "./ranges.ts";

interface CellEditorProps<Row> {
  readonly editing: Editing;
  readonly state: GridState<Row>;
  readonly layout: GridLayout;
  readonly actions: GridActions;
  /** the focus goes back to the grid */
  readonly onDone: () => void;
}

/** A field over the cell being edited, with what may be chosen below it. Enter and Tab take it, Escape leaves it. */
export function CellEditor<Row>(props: CellEditorProps<Row>): JSX.Element {
  const id = createUniqueId();
  const column = () => props.state.columns[props.editing.col];
  const edit = createEditor(props);
  let field: HTMLInputElement | undefined;
  onMount(() => {
    field?.focus({ preventScroll: true });
    if (!props.editing.isTyped) field?.select();
  });
  const box = () => {
    const { leftPx, topPx, widthPx, heightPx } = props.layout.boxOf(props.editing);
    return { left: `${leftPx}px`, top: `${topPx}px`, width: `${widthPx}px`, height: `${heightPx}px` };
  };
  const hasChoices = (): boolean => column()?.choices !== undefined;
  return (
    <div class="grid-editor" style={box()}>
      <input
        ref={field}
        role={hasChoices() ? "combobox" : undefined}
        aria-expanded={hasChoices() ? edit.choices().length > 0 : undefined}
        aria-controls={hasChoices() ? id : undefined}
        aria-activedescendant={edit.marked() >= 0 ? `${id}-${edit.marked()}` : undefined}
        aria-label={column()?.title}
        autocomplete="off"
        spellcheck={false}
        dir="auto"
        value={edit.text()}
        onInput={(event) => edit.type(event.currentTarget.value)}
        onKeyDown={edit.onKey}
        onBlur={() => edit.leave(null, edit.taken())}
      />
      <Show when={edit.choices().length > 0}>
        <ChoiceList
          id={id}
          label={column()?.title ?? ""}
          choices={edit.choices()}
          marked={edit.marked()}
          onChoose={(value) => edit.leave(null, value)}
        />
      </Show>
    </div>
  );
}

/** What is typed, which choice is marked, and how the editor is left. */
function createEditor<Row>({ editing, state, actions, onDone }: CellEditorProps<Row>) {
  const [text, setText] = createSignal(editing.text);
  const [marked, setMarked] = createSignal(-1);
  let isLeft = false;
  const choices = createMemo(() => {
    // A cell that was only opened shows all that may be chosen.
    const typed = text() === editing.text && !editing.isTyped ? "" : text();
    return fittingChoices(state.columns[editing.col]?.choices?.() ?? [], typed);
  });
  const taken = (): string => choices()[marked()]?.value ?? text();
  const leave = (step: CellPlace | null, put: string | null): void => {
    if (isLeft) return;
    isLeft = true;
    state.setEditing(null);
    if (put !== null) actions.put(editing.row, editing.col, put);
    if (step) state.goTo({ row: editing.row + step.row, col: editing.col + step.col });
    onDone();
  };
  const onKey = (event: KeyboardEvent): void => {
    // Keys of the editor are not keys of the grid or the page.
    event.stopPropagation();
    if (event.isComposing) return;
    const side = event.shiftKey ? -1 : 1;
    const last = choices().length - 1;
    if (event.key === "Escape") leave(null, null);
    else if (event.key === "Enter") leave({ row: side, col: 0 }, taken());
    else if (event.key === "Tab") leave({ row: 0, col: side }, taken());
    else if (event.key === "ArrowDown" && last >= 0) setMarked((now) => Math.min(now + 1, last));
    else if (event.key === "ArrowUp" && last >= 0) setMarked((now) => Math.max(now - 1, -1));
    else return;
    event.preventDefault();
  };
  const type = (typed: string): void => {
    setText(typed);
    setMarked(-1);
  };
  return { text, marked, choices, taken, leave, onKey, type };
}

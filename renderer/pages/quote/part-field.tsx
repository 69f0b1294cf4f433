import { createMemo, createSignal, createUniqueId, type JSX, Show } from "solid-js";
import { shortText } from "../../../core/report/plain-text.ts";
import { ChoiceList, fittingChoices } from "../../components/grid/choice-list.tsx";
import { useStores } from "../../store/stores.ts";

interface PartFieldProps {
  readonly value: string;
  readonly fault: string | null;
  readonly onInput: (text: string) => void;
  /** text of several cells was pasted; true: it was taken as lines */
  readonly onPasteTable: (text: string) => boolean;
}

/** Which part: typed, with the shop's parts that fit below it. Arrow keys mark one, Enter or Tab takes it. */
export function PartField(props: PartFieldProps): JSX.Element {
  const { shop } = useStores();
  const id = createUniqueId();
  const [isOpen, setOpen] = createSignal(false);
  const [marked, setMarked] = createSignal(-1);
  const all = createMemo(() => shop.shop().parts.map(({ id: value, name }) => ({ value, label: name })));
  const choices = createMemo(() => (isOpen() ? fittingChoices(all(), props.value) : []));
  const name = (): string => shop.shop().parts.find((part) => part.id === props.value.trim())?.name ?? "";
  /** While something is still offered it may become right. */
  const fault = (): string | null => (choices().length > 0 ? null : props.fault);
  const take = (value: string | undefined): void => {
    if (value !== undefined) props.onInput(value);
    setOpen(false);
    setMarked(-1);
  };
  const mark = (step: number): void => {
    setOpen(true);
    setMarked((now) => Math.max(0, Math.min(now + step, choices().length - 1)));
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.isComposing) return;
    if (event.key === "ArrowDown") mark(1);
    else if (event.key === "ArrowUp") mark(-1);
    else if (event.key === "Enter" && isOpen()) take(choices()[Math.max(0, marked())]?.value);
    else if (event.key === "Escape" && isOpen()) take(undefined);
    else if (event.key === "Tab" && marked() >= 0) return take(choices()[marked()]?.value);
    else return;
    event.preventDefault();
  };
  return (
    <div class="field part-field">
      <label for={`${id}-field`}>Part</label>
      <input
        id={`${id}-field`}
        class="input"
        role="combobox"
        aria-autocomplete="list"
        aria-expanded={choices().length > 0}
        aria-controls={id}
        aria-activedescendant={marked() >= 0 && choices().length > 0 ? `${id}-${marked()}` : undefined}
        aria-invalid={fault() ? true : undefined}
        aria-describedby={`${id}-more`}
        autocomplete="off"
        spellcheck={false}
        dir="auto"
        placeholder="id or name"
        value={props.value}
        onInput={(event) => {
          setOpen(true);
          setMarked(-1);
          props.onInput(event.currentTarget.value);
        }}
        onKeyDown={onKey}
        onBlur={() => take(undefined)}
        onPaste={(event) => {
          if (props.onPasteTable(event.clipboardData?.getData("text/plain") ?? "")) event.preventDefault();
        }}
      />
      <Show when={choices().length > 0}>
        <ChoiceList id={id} label="Part" choices={choices()} marked={marked()} onChoose={take} />
      </Show>
      <span id={`${id}-more`} class={fault() ? "field-fault" : "field-hint"}>
        <bdi>{fault() ?? (name() === props.value ? "" : shortText(name(), 120))}</bdi>
      </span>
    </div>
  );
}

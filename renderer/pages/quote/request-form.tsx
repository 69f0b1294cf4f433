import { For, type JSX, Show } from "solid-js";
import { Button } from "../../components/button.tsx";
import { Check, Field } from "../../components/field.tsx";
import { Menu } from "../../components/menu.tsx";
import { Select } from "../../components/select.tsx";
import { chooseFile } from "../../store/download.ts";
import { useStores } from "../../store/stores.ts";
import { LineForm } from "./line-form.tsx";
import { isTable, linesOfText } from "./lines-in.ts";
import type { QuoteState } from "./quote-state.ts";
import { TextLines } from "./text-lines.tsx";

interface RequestFormProps {
  readonly state: QuoteState;
  /** gives the page the first field */
  readonly first: (field: HTMLInputElement) => void;
  /** what can be done with the quote */
  readonly foot: JSX.Element;
}

const PROMISES = [50, 80, 90, 95, 99];

/** The request as it is typed: for whom, what, how many, by when. */
export function RequestForm(props: RequestFormProps): JSX.Element {
  const lines = createLinesIn(props);
  const head = () => props.state.request();
  return (
    <form
      class="quote-request"
      aria-label={`Request of ${props.state.quoteId()}`}
      onSubmit={(event) => event.preventDefault()}
    >
      <div
        class="quote-request-fields"
        // Fields that cannot be edited take no focus, and what scrolls must be within reach.
        {...(props.state.canEdit() ? {} : { tabindex: 0, role: "group", "aria-label": "What was asked for" })}
      >
        <fieldset disabled={!props.state.canEdit()}>
          <Field
            label="Customer"
            autocomplete="off"
            dir="auto"
            ref={props.first}
            value={head().customer}
            onInput={(event) => props.state.setHead({ customer: event.currentTarget.value })}
          />
          <For each={head().lines.map(({ key }) => key)}>
            {(key, place) => (
              <Show when={head().lines.find((line) => line.key === key)}>
                {(line) => (
                  <LineForm
                    state={props.state}
                    line={line()}
                    place={place()}
                    onPasteTable={lines.pasteOver(key)}
                  />
                )}
              </Show>
            )}
          </For>
          <Show when={props.state.canEdit()}>
            <div class="quote-line-tools">
              <Button icon="add" onClick={lines.add}>
                Another line
              </Button>
              <Menu
                label="From a table"
                icon="take"
                entries={[
                  { label: "Paste lines", onSelect: () => void lines.paste() },
                  { label: "Take in a CSV file", onSelect: () => void lines.choose() },
                ]}
              />
            </div>
          </Show>
          <HowItIsQuoted state={props.state} />
        </fieldset>
      </div>
      {props.foot}
    </form>
  );
}

/** How it is charged and promised, and what is printed with it. */
function HowItIsQuoted(props: { readonly state: QuoteState }): JSX.Element {
  const head = () => props.state.request();
  return (
    <div class="quote-how">
      <Select
        label="Promise a date kept with"
        choices={PROMISES.map((pct) => ({ value: String(pct), label: `${pct} % likelihood` }))}
        value={String(head().promisePct)}
        onChange={(value) => props.state.setHead({ promisePct: Number(value) })}
      />
      <Check
        label="Tool paths and first set-up apart"
        checked={head().isApart}
        onChange={(isApart) => props.state.setHead({ isApart })}
      />
      <TextLines
        label="Address"
        value={head().customerAddress}
        onInput={(customerAddress) => props.state.setHead({ customerAddress })}
      />
      <TextLines
        label="Note, printed"
        value={head().note}
        onInput={(note) => props.state.setHead({ note })}
      />
    </div>
  );
}

/** Lines that are added one by one or come from a table. */
function createLinesIn(props: RequestFormProps) {
  const { notes } = useStores();
  /** True where at least one line came of it. */
  const take = (text: string, over: number | null): boolean => {
    const { lines, faults } = linesOfText(text);
    for (const sentence of faults.slice(0, MOST_FAULTS)) notes.alarm(sentence);
    if (lines.length === 0) return false;
    if (over === null) props.state.addLines(lines);
    else props.state.replaceLine(over, lines);
    notes.tell(lines.length === 1 ? "One line was taken in." : `${lines.length} lines were taken in.`);
    return true;
  };
  return {
    add: () => {
      props.state.addLine();
      focusLast();
    },
    pasteOver:
      (key: number) =>
      (text: string): boolean =>
        isTable(text) && take(text, key),
    paste: async (): Promise<void> => {
      try {
        take(await navigator.clipboard.readText(), null);
      } catch {
        notes.alarm(
          "The browser does not let this page read the clipboard: press Ctrl+V in a line's part instead.",
        );
      }
    },
    choose: async (): Promise<void> => {
      const file = await chooseFile(".csv,.tsv,.txt");
      if (file) take(await file.text(), null);
    },
  };
}

const MOST_FAULTS = 3;

/** The new line's first field, once it is drawn. */
function focusLast(): void {
  queueMicrotask(() => {
    const fields = document.querySelectorAll<HTMLInputElement>(".quote-line [role=combobox]");
    fields.item(fields.length - 1)?.focus();
  });
}

import { createMemo, type JSX, Show } from "solid-js";
import { Button } from "../../components/button.tsx";
import { Check, Field } from "../../components/field.tsx";
import { Select } from "../../components/select.tsx";
import { useStores } from "../../store/stores.ts";
import { PartField } from "./part-field.tsx";
import type { QuoteState } from "./quote-state.ts";
import type { RequestLine } from "./request.ts";

interface LineFormProps {
  readonly state: QuoteState;
  readonly line: RequestLine;
  readonly place: number;
  readonly onPasteTable: (text: string) => boolean;
}

/** One line of a request: part, quantity, date, and what it may be made on and of. */
export function LineForm(props: LineFormProps): JSX.Element {
  const { shop, format } = useStores();
  const set = (part: Partial<RequestLine>): void =>
    props.state.setLine(props.line.key, { taken: null, ...part });
  const faults = () => props.state.read().faults.get(props.line.key);
  const isOnly = (): boolean => props.state.request().lines.length === 1;
  const machines = createMemo(() => [
    { value: "", label: "Any that can" },
    ...shop.shop().machines.map(({ id, name }) => ({ value: id, label: `${id} · ${name}` })),
  ]);
  const feedstocks = createMemo(() => [
    { value: "", label: "Any that fits" },
    ...shop.shop().feedstocks.map(({ id, name }) => ({ value: id, label: `${name} (${id})` })),
  ]);
  const wantedHint = (): string | undefined => {
    const at = props.line.wanted.trim() === "" ? null : format().readInstant(props.line.wanted, "16:00");
    return at === null ? undefined : format().dateTime(at);
  };
  return (
    <fieldset class="quote-line" onFocusIn={() => props.state.setLineKey(props.line.key)}>
      <legend>Line {props.place + 1}</legend>
      <Show when={!isOnly() && props.state.canEdit()}>
        <Button
          class="quote-line-remove"
          look="plain"
          icon="remove"
          aria-label={`Take out line ${props.place + 1}`}
          onClick={() => props.state.removeLine(props.line.key)}
        />
      </Show>
      <PartField
        value={props.line.part}
        fault={faults()?.part ?? null}
        onInput={(part) => set({ part })}
        onPasteTable={props.onPasteTable}
      />
      <Field
        label="Quantity"
        inputMode="numeric"
        autocomplete="off"
        value={props.line.quantity}
        fault={faults()?.quantity}
        onInput={(event) => set({ quantity: event.currentTarget.value })}
      />
      <Field
        label="Wanted by"
        placeholder="no date"
        autocomplete="off"
        value={props.line.wanted}
        hint={wantedHint()}
        fault={faults()?.wanted}
        onInput={(event) => set({ wanted: event.currentTarget.value })}
      />
      <Select
        label="Feedstock"
        choices={feedstocks()}
        value={props.line.feedstockId}
        onChange={(feedstockId) => set({ feedstockId })}
      />
      <Select
        label="Machine"
        choices={machines()}
        value={props.line.machineId}
        onChange={(machineId) => set({ machineId })}
      />
      <Check
        label="A later date is of no use"
        checked={props.line.mustHold}
        onChange={(mustHold) => set({ mustHold })}
      />
      <Show when={props.line.taken}>
        {(offer) => (
          <p class="quote-taken">
            <b>Taken:</b> {offer().sentence}{" "}
            <button type="button" class="link" onClick={() => set({ taken: null })}>
              Give it back
            </button>
          </p>
        )}
      </Show>
    </fieldset>
  );
}

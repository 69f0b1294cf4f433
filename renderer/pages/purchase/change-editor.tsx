import { For, type JSX, Match, Show, Switch } from "solid-js";
import type { PurchaseCase } from "../../../core/shop/purchase-case.ts";
import type { PurchaseChange } from "../../../core/shop/purchase-change.ts";
import { Button } from "../../components/button.tsx";
import { EntryFields } from "../../components/entry/entry-fields.tsx";
import { DAY_NAMES } from "../machines/calendar-week.ts";
import { type AddShift, type ChangeOf, createChangeFields } from "./change-fields.ts";
import { CHANGE_WORDS } from "./new-candidate.ts";
import { NewMachine } from "./new-machine.tsx";
import { UnattendedCaution } from "./unattended-caution.tsx";

interface ChangeProps {
  readonly change: PurchaseChange;
  /** another key: another change, whose texts are shown afresh */
  readonly rowKey: string;
  readonly purchaseCase: PurchaseCase;
  readonly onPut: (next: PurchaseChange, what: string) => void;
  /** absent: it is the only one */
  readonly onRemove: (() => void) | undefined;
}

/** One thing that a candidate changes in the works. */
export function ChangeEditor(props: ChangeProps): JSX.Element {
  const fields = createChangeFields();
  const as = <Kind extends PurchaseChange["kind"]>(kind: Kind): ChangeOf<Kind> | false =>
    props.change.kind === kind && (props.change as ChangeOf<Kind>);
  const common = () => ({ rowKey: props.rowKey, onPut: props.onPut });
  return (
    <div class="change" role="group" aria-label={CHANGE_WORDS[props.change.kind]}>
      <div class="change-head">
        <h4>{CHANGE_WORDS[props.change.kind]}</h4>
        <Show when={props.onRemove}>
          {(remove) => (
            <Button look="plain" icon="remove" onClick={() => remove()()}>
              Take out
            </Button>
          )}
        </Show>
      </div>
      <Switch>
        <Match when={as("add-alike")}>
          {(change) => <Put {...common()} change={change()} columns={fields.alike} />}
        </Match>
        <Match when={as("add-machine")}>
          {(change) => (
            <NewMachine
              machine={change().machine}
              purchaseCase={props.purchaseCase}
              rowKey={props.rowKey}
              onPut={(machine, what) => props.onPut({ ...change(), machine }, what)}
            />
          )}
        </Match>
        <Match when={as("sell-machine")}>
          {(change) => <Put {...common()} change={change()} columns={fields.sell} />}
        </Match>
        <Match when={as("add-shift")}>
          {(change) => (
            <>
              <ShiftDays change={change()} onPut={props.onPut} />
              <Put {...common()} change={change()} columns={fields.shift} />
            </>
          )}
        </Match>
        <Match when={as("approve-unattended")}>
          {(change) => (
            <>
              <Put {...common()} change={change()} columns={fields.approve} />
              <UnattendedCaution />
            </>
          )}
        </Match>
        <Match when={as("buy-out")}>
          {(change) => <Put {...common()} change={change()} columns={fields.buyOut} />}
        </Match>
      </Switch>
    </div>
  );
}

interface PutProps<Change extends PurchaseChange> {
  readonly change: Change;
  readonly rowKey: string;
  readonly columns: Parameters<typeof EntryFields<Change>>[0]["columns"];
  readonly onPut: ChangeProps["onPut"];
}

function Put<Change extends PurchaseChange>(props: PutProps<Change>): JSX.Element {
  return (
    <EntryFields
      row={props.change}
      rowKey={`${props.rowKey}/${props.change.kind}`}
      columns={props.columns}
      onPut={(next, column) => props.onPut(next, column.title.toLowerCase())}
    />
  );
}

function ShiftDays(props: { readonly change: AddShift; readonly onPut: ChangeProps["onPut"] }): JSX.Element {
  const toggle = (day: number): void => {
    const { shift } = props.change;
    const days = shift.days.includes(day)
      ? shift.days.filter((one) => one !== day)
      : [...shift.days, day].toSorted((a, b) => a - b);
    if (days.length > 0) props.onPut({ ...props.change, shift: { ...shift, days } }, "days of the shift");
  };
  return (
    <div class="day-row" role="group" aria-label="Days on which the shift starts">
      <For each={DAY_NAMES}>
        {(name, index) => (
          <button
            type="button"
            class="button day-button"
            aria-pressed={props.change.shift.days.includes(index() + 1)}
            onClick={() => toggle(index() + 1)}
          >
            {name}
          </button>
        )}
      </For>
    </div>
  );
}

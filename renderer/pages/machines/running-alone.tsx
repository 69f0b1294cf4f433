import { createSignal, type JSX, Show } from "solid-js";
import type { Machine } from "../../../core/shop/machine.ts";
import { Button } from "../../components/button.tsx";
import { Dialog } from "../../components/dialog.tsx";
import { EntryFields, FieldGroup } from "../../components/entry/entry-fields.tsx";
import { valueColumns } from "../../components/entry/value-columns.ts";
import { Check } from "../../components/field.tsx";
import { useStores } from "../../store/stores.ts";
import type { PutMachine } from "./machine-panel.tsx";

/** Whether a machine may run with nobody there: off until the person responsible approves it, which takes a second answer. */
export function RunningAlone(props: { readonly machine: Machine; readonly onPut: PutMachine }): JSX.Element {
  const { format } = useStores();
  const [isAsking, setAsking] = createSignal(false);
  const longest = valueColumns<Machine>(format).number({
    id: "unattendedMaxH",
    title: "Longest stretch alone",
    unit: "h, empty: any",
    above: 0,
    get: (row) => row.unattendedMaxH,
    set: (row, value) => ({ ...row, unattendedMaxH: value }),
    clear: ({ unattendedMaxH: _, ...row }) => row,
  });
  const approve = (): void => {
    setAsking(false);
    props.onPut({ ...props.machine, unattended: true }, `approval of ${props.machine.id} to run alone`);
  };
  const withdraw = (): void => {
    const { unattendedMaxH: _, ...machine } = props.machine;
    props.onPut({ ...machine, unattended: false }, `approval of ${props.machine.id} withdrawn`);
  };
  return (
    <FieldGroup title="Running with nobody there">
      {/* The box follows the shop, not the click: an approval that was not given leaves it empty. */}
      <Show
        when={props.machine.unattended}
        keyed
        fallback={<Tick isOn={false} onChange={() => setAsking(true)} isAsking={isAsking()} />}
      >
        <Tick isOn={true} onChange={withdraw} isAsking={false} />
      </Show>
      <Caution />
      <Show when={props.machine.unattended}>
        <EntryFields
          row={props.machine}
          rowKey={props.machine.id}
          columns={[longest]}
          onPut={(next) => props.onPut(next, `longest stretch alone of ${next.id}`)}
        />
      </Show>
      <Dialog
        title={`May ${props.machine.name.slice(0, 60)} run with nobody there?`}
        isOpen={isAsking()}
        onClose={() => setAsking(false)}
        foot={
          <>
            <Button onClick={() => setAsking(false)}>Leave it attended</Button>
            <Button look="main" onClick={approve}>
              I answer for it: approve
            </Button>
          </>
        }
      >
        <Caution />
        <p>With the approval, plans let its builds run on through hours and nights without an operator.</p>
      </Dialog>
    </FieldGroup>
  );
}

interface TickProps {
  readonly isOn: boolean;
  readonly isAsking: boolean;
  readonly onChange: () => void;
}

function Tick(props: TickProps): JSX.Element {
  return (
    <Show when={!props.isAsking} fallback={<p class="quiet">Not approved</p>}>
      <Check label="Approved to run with nobody there" checked={props.isOn} onChange={props.onChange} />
    </Show>
  );
}

function Caution(): JSX.Element {
  return (
    <p class="caution">
      This is your decision, machine by machine; nothing here judges it. Before you approve it, go by the
      maker's instructions, the local fire and building rules and the terms of your insurer, and have a
      qualified person look at the machine, its place and what it runs on. Until then it stays off.
    </p>
  );
}

import { type JSX, Show } from "solid-js";
import { whereOf } from "../../../core/shop/finding.ts";
import type { Machine } from "../../../core/shop/machine.ts";
import { EntryGroups } from "../../components/entry/entry-fields.tsx";
import { FindingList } from "../../components/finding-list.tsx";
import { NameText } from "../../components/name-text.tsx";
import { Tabs } from "../../components/tabs.tsx";
import type { EntryEdits } from "../../store/entry-edits.ts";
import { useStores } from "../../store/stores.ts";
import { CalendarEditor } from "./calendar-editor.tsx";
import { HourRate } from "./hour-rate.tsx";
import type { MachineColumns } from "./machine-columns.ts";
import { LoadedNow, OutOfService } from "./machine-state.tsx";
import { NozzleList } from "./nozzle-list.tsx";
import { RunningAlone } from "./running-alone.tsx";

/** Puts the chosen machine as it is to be; `what` stands after "Undo". */
export type PutMachine = (next: Machine, what: string) => void;

interface MachinePanelProps {
  readonly machine: Machine | undefined;
  readonly columns: MachineColumns;
  readonly edits: EntryEdits<"machines">;
}

/** Everything of the chosen machine, and the calendars. */
export function MachinePanel(props: MachinePanelProps): JSX.Element {
  const { shop, selection } = useStores();
  const put: PutMachine = (next, what) => {
    const before = props.machine;
    if (!before) return;
    props.edits.put(before.id, next, what);
    if (next.id !== before.id) selection.choose({ machineId: next.id });
  };
  const findings = () => (props.machine ? shop.findingsAt(whereOf("machines", props.machine.id)) : []);
  const ofMachine = (draw: (machine: () => Machine) => JSX.Element) => () => (
    <div class="side-stack">
      <Show when={props.machine} fallback={<p class="quiet">Choose a machine.</p>}>
        {(machine) => draw(machine)}
      </Show>
    </div>
  );
  return (
    <>
      <h2 class="side-title">
        <Show when={props.machine} fallback="No machine chosen">
          {(machine) => <NameText text={machine().name} most={60} />}
        </Show>
      </h2>
      <Show when={findings().length > 0}>
        <FindingList findings={findings()} />
      </Show>
      <Tabs
        label="About the machine"
        tabs={[
          {
            id: "now",
            title: "Now",
            content: ofMachine((machine) => (
              <>
                <LoadedNow machine={machine()} onPut={put} />
                <OutOfService machine={machine()} onPut={put} />
                <RunningAlone machine={machine()} onPut={put} />
              </>
            )),
          },
          {
            id: "facts",
            title: "Facts",
            content: ofMachine((machine) => (
              <EntryGroups
                row={machine()}
                groups={props.columns.groups}
                onPut={put}
                findingAt={props.edits.findingAtField}
              />
            )),
          },
          {
            id: "nozzles",
            title: "Nozzles",
            content: ofMachine((machine) => <NozzleList machine={machine()} onPut={put} />),
          },
          {
            id: "rate",
            title: "Hour rate",
            content: ofMachine((machine) => <HourRate machine={machine()} onPut={put} />),
          },
          {
            id: "calendar",
            title: "Calendar",
            content: () => (
              <div class="side-stack">
                <CalendarEditor />
              </div>
            ),
          },
        ]}
      />
    </>
  );
}

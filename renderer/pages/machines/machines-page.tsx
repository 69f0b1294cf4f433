import { createMemo, createSignal, type JSX, Show, untrack } from "solid-js";
import type { Change } from "../../../core/shop/change.ts";
import type { Machine } from "../../../core/shop/machine.ts";
import { Button } from "../../components/button.tsx";
import { EmptyState } from "../../components/empty-state.tsx";
import { followChosen } from "../../components/grid/follow-chosen.ts";
import { Grid, type GridHandle } from "../../components/grid/grid.tsx";
import { RowTools } from "../../components/grid/row-tools.tsx";
import { PageFrame } from "../../components/page-frame.tsx";
import { SplitPane } from "../../components/split-pane.tsx";
import { createEntryEdits } from "../../store/entry-edits.ts";
import { createGridWidths } from "../../store/grid-widths.ts";
import { useStores } from "../../store/stores.ts";
import "../../styles/entry.css";
import "../../styles/machines.css";
import type { PageEntry } from "../page-list.ts";
import { createMachineColumns, machineColumnOf } from "./machine-columns.ts";
import { MachinePanel } from "./machine-panel.tsx";
import { copyMachine, idsOf, newCalendar, newMachine } from "./machine-rows.ts";

/** What do we have: the machines as a grid, the chosen one beside it with its hour rate and its calendar. */
export default function MachinesPage(props: { readonly page: PageEntry }): JSX.Element {
  const { shop, selection, format } = useStores();
  const widths = createGridWidths("machines");
  const [grid, setGrid] = createSignal<GridHandle<Machine> | null>(null);
  const columns = createMachineColumns();
  const edits = createEntryEdits("machines", machineColumnOf);
  const machines = () => shop.shop().machines;
  const machine = createMemo(
    () => machines().find(({ id }) => id === selection.chosen().machineId) ?? machines()[0],
  );
  const add = (): void => {
    const { calendars } = shop.shop();
    const calendar = calendars[0] ?? newCalendar(new Set());
    const entry = newMachine(machine()?.calendarId ?? calendar.id, idsOf(machines()));
    const first: Change[] =
      calendars.length === 0 ? [{ kind: "put", list: "calendars", entry: calendar, at: null }] : [];
    shop.apply("new machine", [...first, { kind: "put", list: "machines", entry, at: null }]);
    selection.choose({ machineId: entry.id });
  };
  /** Another machine brings its own calendar; the same one, edited, leaves the calendar that is looked at. */
  const look = (row: Machine | null): void => {
    if (row && row.id !== untrack(() => selection.chosen().machineId))
      selection.choose({ machineId: row.id, calendarId: null });
  };
  followChosen({ grid, rows: machines, chosenId: () => selection.chosen().machineId });
  const count = (): string =>
    `${format().number(machines().length, 0)} ${machines().length === 1 ? "machine" : "machines"}`;
  return (
    <PageFrame
      page={props.page}
      fills
      facts={count()}
      tools={<RowTools grid={grid()} word="machine" onAdd={add} isEmpty={machines().length === 0} />}
    >
      <SplitPane
        name="machine"
        sideLabel="The chosen machine"
        usualPx={470}
        main={
          <Show when={machines().length > 0} fallback={<NoMachines onAdd={add} />}>
            <div class="grid-page">
              <Grid
                label="Machines"
                words={["machine", "machines"]}
                columns={columns.grid}
                rows={machines()}
                onEdit={edits.edit}
                newRow={(like, taken) =>
                  newMachine(like?.calendarId ?? shop.shop().calendars[0]?.id ?? "", taken)
                }
                copyRow={copyMachine}
                findingAt={edits.findingAt}
                onActive={look}
                handle={setGrid}
                widths={widths.widths()}
                onWidth={widths.onWidth}
              />
            </div>
          </Show>
        }
        side={<MachinePanel machine={machine()} columns={columns} edits={edits} />}
      />
    </PageFrame>
  );
}

function NoMachines(props: { readonly onAdd: () => void }): JSX.Element {
  return (
    <EmptyState
      title="No machines yet"
      actions={
        <Button look="main" icon="add" onClick={() => props.onAdd()}>
          New machine
        </Button>
      }
    >
      A machine has a room to build in, nozzles, times, an hour rate and a calendar of the people who serve
      it.
    </EmptyState>
  );
}

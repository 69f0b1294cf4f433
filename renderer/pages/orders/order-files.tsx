import { createSignal, getOwner, type JSX, runWithOwner, Show } from "solid-js";
import type { Order } from "../../../core/shop/order.ts";
import { Button } from "../../components/button.tsx";
import { Dialog } from "../../components/dialog.tsx";
import type { GridColumn } from "../../components/grid/grid-column.ts";
import { readTabText } from "../../components/grid/tab-text.ts";
import { isAmbiguousDate } from "../../format/date-reading.ts";
import { chooseFile } from "../../store/download.ts";
import { DATE_ORDER_KEY } from "../../store/live-format.ts";
import { saveExport } from "../../store/save-export.ts";
import { type Stores, useStores } from "../../store/stores.ts";
import { ordersCsv, ordersXlsx } from "./give-out.ts";
import { readPasted, readTable, type Table } from "./take-in/read-table.ts";
import { TakeInDialog } from "./take-in/take-in-dialog.tsx";
import { orderChoices } from "./take-in/table-columns.ts";
import { createTakeInState, type TakeInState } from "./take-in/take-in-state.ts";

/** Tables that come in and go out, and what has to be asked on the way. */
export interface OrderFiles {
  readonly importTable: (file: File) => void;
  readonly chooseTable: () => void;
  readonly pasteTable: () => void;
  readonly giveOut: (kind: "csv" | "xlsx") => Promise<void>;
  /** true where pasted dates could be read two ways and nobody has said yet which */
  readonly askDatesFirst: (text: string) => boolean;
  readonly dialogs: (paste: (text: string) => void) => JSX.Element;
}

const XLSX_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

export function createOrderFiles(columns: readonly GridColumn<Order>[]): OrderFiles {
  const stores = useStores();
  const { prefs } = stores;
  const [coming, setComing] = createSignal<TakeInState | null>(null);
  const [unclear, setUnclear] = createSignal<string | null>(null);
  const owner = getOwner();
  /** The state of a table belongs to the page, also when the table comes later. */
  const show = (table: Table, readAgain: (encoding: string) => Promise<void>): void => {
    setComing(runWithOwner(owner, () => createTakeInState(table, stores, readAgain)) ?? null);
  };
  const open = (file: File): void => void openTable(file, null, stores, show);
  return {
    importTable: open,
    chooseTable: () => void chooseFile(".csv,.tsv,.txt,.xlsx").then((file) => file && open(file)),
    pasteTable: () => void pasteTable(stores, show),
    giveOut: (kind) => giveOut(kind, columns, stores),
    askDatesFirst: (text) => {
      const isClear = !readTabText(text).flat().some(isAmbiguousDate);
      if (isClear || prefs.remembered(DATE_ORDER_KEY) !== null) return false;
      setUnclear(text);
      return true;
    },
    dialogs: (pasteNow) => (
      <>
        <Show when={coming()} keyed>
          {(state) => <TakeInDialog state={state} onClose={() => setComing(null)} />}
        </Show>
        <Show when={unclear()} keyed>
          {(text) => (
            <DateQuestion
              text={text}
              onAnswer={(order) => {
                setUnclear(null);
                if (order === null) return;
                prefs.remember(DATE_ORDER_KEY, order);
                pasteNow(text);
              }}
            />
          )}
        </Show>
      </>
    ),
  };
}

type ShowTable = (table: Table, readAgain: (encoding: string) => Promise<void>) => void;

async function openTable(
  file: File,
  encoding: string | null,
  stores: Stores,
  show: ShowTable,
): Promise<void> {
  const { notes, format } = stores;
  try {
    const table = await readTable(file, encoding, format());
    if (table.rows.length === 0) return notes.alarm(`${file.name} is empty: there is nothing to take in.`);
    show(table, (next) => openTable(file, next, stores, show));
  } catch (error) {
    notes.alarm(error instanceof Error ? error.message : `${file.name} cannot be read.`);
  }
}

async function pasteTable({ notes }: Stores, show: ShowTable): Promise<void> {
  try {
    const table = readPasted(await navigator.clipboard.readText());
    if (table.rows.length === 0)
      return notes.alarm("There is no text on the clipboard: copy the lines first.");
    show(table, async () => undefined);
  } catch {
    notes.alarm(
      "The browser does not let this page read the clipboard: make a new line and press Ctrl+V there.",
    );
  }
}

async function giveOut(
  kind: "csv" | "xlsx",
  columns: readonly GridColumn<Order>[],
  { host, notes, shop }: Stores,
): Promise<void> {
  const { orders } = shop.shop();
  if (kind === "csv") return saveExport(host, notes, "orders.csv", ordersCsv(orders, columns), "text/csv");
  return saveExport(host, notes, "orders.xlsx", await ordersXlsx(orders, columns), XLSX_TYPE);
}

interface DateQuestionProps {
  readonly text: string;
  readonly onAnswer: (order: string | null) => void;
}

/** Asked once, then remembered: which comes first, the day or the month. */
function DateQuestion(props: DateQuestionProps): JSX.Element {
  const { format } = useStores();
  const example = (): string => readTabText(props.text).flat().find(isAmbiguousDate) ?? "";
  const [day, month] = orderChoices(example(), format().timeZone, format().dateTime);
  return (
    <Dialog
      title="Which comes first, the day or the month?"
      isOpen
      onClose={() => props.onAnswer(null)}
      foot={
        <>
          <Button onClick={() => props.onAnswer(null)}>Cancel</Button>
          <Button onClick={() => props.onAnswer("mdy")}>{month?.label}</Button>
          <Button onClick={() => props.onAnswer("dmy")}>{day?.label}</Button>
        </>
      }
    >
      <p>
        The date <b>{example().slice(0, 40)}</b> can be read two ways. The answer is remembered; it can be
        changed under "Units and look".
      </p>
    </Dialog>
  );
}

import { type Accessor, createMemo, createSignal } from "solid-js";
import type { Order } from "../../../../core/shop/order.ts";
import { makeFormat } from "../../../format/format.ts";
import { nextId } from "../../../store/next-id.ts";
import { changesOfEntries } from "../../../store/renames.ts";
import type { Stores } from "../../../store/stores.ts";
import { orderReadingOf } from "../order-fields.ts";
import { copyOrder, newOrder } from "../order-rows.ts";
import { keptColumns, mappingName } from "./guess-columns.ts";
import type { Table } from "./read-table.ts";
import { createTableColumns, type TableColumns } from "./table-columns.ts";
import { takeIn, type TakenIn, type Twins } from "./take-in.ts";

/** One table on its way in: the choices so far, and what they make of it. */
export interface TakeInState extends TableColumns {
  readonly table: Table;
  readonly twins: Accessor<Twins>;
  readonly setTwins: (twins: Twins) => void;
  /** what is still to be said before the table can be read; null: nothing */
  readonly hint: Accessor<string | null>;
  /** share read while it is read */
  readonly share: Accessor<number | null>;
  readonly result: Accessor<TakenIn | null>;
  readonly read: () => Promise<void>;
  readonly stop: () => void;
  readonly back: () => void;
  readonly apply: () => void;
  readonly readAgain: (encoding: string) => Promise<void>;
}

const MOST_KEPT = 50;

export function createTakeInState(
  table: Table,
  stores: Stores,
  readAgain: (encoding: string) => Promise<void>,
): TakeInState {
  const { shop, notes } = stores;
  const columns = createTableColumns(table, stores);
  const [twins, setTwins] = createSignal<Twins>("replace");
  const [share, setShare] = createSignal<number | null>(null);
  const [result, setResult] = createSignal<TakenIn | null>(null);
  let isStopped = false;
  let readFrom: readonly Order[] = [];

  async function read(): Promise<void> {
    if (hint() !== null) return;
    isStopped = false;
    readFrom = shop.shop().orders;
    const onShare = (done: number): boolean => {
      setShare(done);
      return !isStopped;
    };
    const made = await readTable(columns, stores, twins(), onShare);
    setShare(null);
    setResult(made);
  }

  const hint = createMemo(() => hintOf(columns));
  return {
    ...columns,
    table,
    twins,
    setTwins: (next) => void setTwins(next),
    hint,
    share,
    result,
    read,
    stop: () => {
      isStopped = true;
    },
    back: () => void setResult(null),
    apply: () => {
      const made = result();
      if (!made) return;
      // Another window may have edited: the places that were read are no longer those of the orders.
      if (shop.shop().orders !== readFrom)
        return notes.alarm("The orders have changed meanwhile: take the table in again.");
      shop.apply(made.edit.label, changesOfEntries(shop.shop(), "orders", made.edit));
      keepColumns(columns, stores);
    },
    readAgain,
  };
}

function hintOf(columns: TableColumns): string | null {
  if (columns.rows().length === 0) return "The table has no lines below its head.";
  if (Object.keys(columns.map()).length === 0) return "Say which column is what.";
  const isUnclear = columns.mustAskOrder() && columns.dateOrder() === null;
  return isUnclear ? "Say which comes first, the day or the month." : null;
}

function readTable(
  columns: TableColumns,
  { shop, format }: Stores,
  twins: Twins,
  onShare: (share: number) => boolean,
): Promise<TakenIn | null> {
  const { orders } = shop.shop();
  const dateOrder = columns.dateOrder() ?? format().dateOrder;
  const language = columns.language();
  const fresh = newOrder(shop.shop(), orders.at(-1), new Set(), Date.now());
  let lastId = fresh.id;
  return takeIn({
    rows: columns.rows(),
    map: columns.map(),
    reading: orderReadingOf(shop.shop(), makeFormat({ ...format(), language, dateOrder })),
    twins,
    orders,
    newOrder: (taken) => ({ ...fresh, id: (lastId = nextId(lastId, taken)) }),
    renamed: copyOrder,
    onShare,
  });
}

/** The next table with the same heads is read the same way. */
function keepColumns(columns: TableColumns, { prefs }: Stores): void {
  const mine = { name: mappingName(columns.heads()), columns: keptColumns(columns.map(), columns.heads()) };
  const others = prefs.prefs().columnMappings.filter(({ name }) => name !== mine.name);
  prefs.set({ columnMappings: [mine, ...others].slice(0, MOST_KEPT) });
}

import type { Order } from "../../../../core/shop/order.ts";
import { withTexts } from "../../../components/grid/cell-edits.ts";
import type { GridColumn, GridEdit } from "../../../components/grid/grid-column.ts";
import { carryRejections, rejectionAt } from "../../../components/grid/rejections.ts";
import { type OrderField, type OrderReading, putOrderField } from "../order-fields.ts";
import { type ColumnMap, FIELDS } from "./guess-columns.ts";

/** What is done with a line whose name an order here has already. */
export type Twins = "replace" | "keep" | "rename";

export interface TakeInOptions {
  readonly rows: readonly (readonly string[])[];
  readonly map: ColumnMap;
  readonly reading: OrderReading;
  readonly twins: Twins;
  readonly orders: readonly Order[];
  readonly newOrder: (taken: ReadonlySet<string>) => Order;
  readonly renamed: (order: Order, taken: ReadonlySet<string>) => Order;
  /** told the share done from time to time; false: stop */
  readonly onShare: (share: number) => boolean;
}

/** One cell that could not be read. `line` is the line of the table as people count it: 1 is the head. */
export interface TakeInFault {
  readonly line: number;
  readonly title: string;
  readonly sentence: string;
}

export interface TakenIn {
  readonly edit: GridEdit<Order>;
  readonly faults: readonly TakeInFault[];
  /** lines left out because an order of that name is here, as people count them */
  readonly left: readonly number[];
}

/** So many lines are read before the window may draw again. */
const LINES_AT_ONCE = 1000;

/**
 * Makes orders of the lines of a table. A cell that cannot be read keeps its text, marked, in the order that is made: nothing
 * is lost. Null where it was stopped.
 */
export async function takeIn(options: TakeInOptions): Promise<TakenIn | null> {
  const { rows, orders, twins } = options;
  const columns = columnsOf(options.reading);
  const taken = new Set(orders.map(({ id }) => id));
  const placeOfId = new Map(orders.map(({ id }, place) => [id, place]));
  const replaced = new Map<number, Order>();
  const inserted: { place: number; row: Order }[] = [];
  const faults: TakeInFault[] = [];
  const left: number[] = [];
  for (const [at, row] of rows.entries()) {
    if (at % LINES_AT_ONCE === 0) {
      await nextFrame();
      if (!options.onShare(at / Math.max(1, rows.length))) return null;
    }
    const texts = textsOf(row, options.map);
    const id = texts.find(({ columnId }) => columnId === "id")?.text.trim() ?? "";
    const twin = placeOfId.get(id);
    if (twin !== undefined && twins === "keep") {
      left.push(at + 2);
      continue;
    }
    const base = twin !== undefined && twins === "replace" ? (replaced.get(twin) ?? orders[twin]) : undefined;
    const start = base ?? options.newOrder(taken);
    const read = withTexts(start, texts, columns) ?? start;
    const order = base || !taken.has(read.id) ? read : options.renamed(read, taken);
    if (order !== read) carryRejections(read, order, new Map());
    faults.push(...faultsOf(order, columns, at + 2));
    taken.add(order.id);
    if (twin !== undefined && base) replaced.set(twin, order);
    else inserted.push({ place: orders.length, row: order });
  }
  const label = `taking in of ${rows.length} ${rows.length === 1 ? "line" : "lines"}`;
  const edit = {
    label,
    replaced: [...replaced].map(([place, row]) => ({ place, row })),
    inserted,
    removed: [],
  };
  return { edit, faults, left };
}

function textsOf(row: readonly string[], map: ColumnMap): { columnId: string; text: string }[] {
  return Object.entries(map).flatMap(([columnId, at]) => {
    const text = row[at]?.trim() ?? "";
    return text === "" ? [] : [{ columnId, text }];
  });
}

function columnsOf(reading: OrderReading): ReadonlyMap<string, GridColumn<Order>> {
  return new Map(
    FIELDS.map(({ field, title }) => [
      field,
      {
        id: field,
        title,
        widthPx: 0,
        text: () => "",
        put: (order, text) => putOrderField(order, field as OrderField, text, reading),
      },
    ]),
  );
}

function faultsOf(
  order: Order,
  columns: ReadonlyMap<string, GridColumn<Order>>,
  line: number,
): TakeInFault[] {
  return [...columns.values()].flatMap(({ id, title }) => {
    const rejection = rejectionAt(order, id);
    return rejection ? [{ line, title, sentence: rejection.sentence }] : [];
  });
}

function nextFrame(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

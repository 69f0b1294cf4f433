import { csvText } from "../../../core/report/csv.ts";
import type { Order } from "../../../core/shop/order.ts";
import type { GridColumn } from "../../components/grid/grid-column.ts";

type Cell = string | number | null;

/**
 * The orders as a table with a head, ready to be taken in again: instants as in the shop document, numbers plain, and what
 * the plan makes of each in words.
 */
function tableOf(orders: readonly Order[], columns: readonly GridColumn<Order>[]): Cell[][] {
  const head = columns.map(({ title, unit }) => (unit ? `${title} (${unit()})` : title));
  return [head, ...orders.map((order) => columns.map((column) => cellOf(order, column)))];
}

function cellOf(order: Order, column: GridColumn<Order>): Cell {
  if (column.id === "due") return order.dueAt;
  if (column.id === "release") return order.releaseAt;
  if (column.isSummed) return column.amount?.(order) ?? null;
  return (column.editText ?? column.text)(order);
}

/** CSV by RFC 4180 in UTF-8 with a mark, so that every spreadsheet reads the letters right; formulas are made harmless. */
export function ordersCsv(
  orders: readonly Order[],
  columns: readonly GridColumn<Order>[],
): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(`\uFEFF${csvText(tableOf(orders, columns))}`);
}

/** A workbook with one sheet; texts are texts, whatever they begin with. */
export async function ordersXlsx(
  orders: readonly Order[],
  columns: readonly GridColumn<Order>[],
): Promise<Uint8Array<ArrayBuffer>> {
  const { default: writeXlsxFile } = await import("write-excel-file/browser");
  const rows = tableOf(orders, columns).map((row, place) =>
    row.map((value) => {
      if (value === null) return null;
      if (typeof value === "number") return { value, type: Number };
      return place === 0
        ? { value, type: String, fontWeight: "bold" as const }
        : { value: fitting(value), type: String };
    }),
  );
  const blob = await writeXlsxFile(rows, { sheet: "Orders", stickyRowsCount: 1 }).toBlob();
  return new Uint8Array(await blob.arrayBuffer());
}

/** XML has no place for most control characters, and a cell of a workbook for no more than 32,767 characters. */
function fitting(text: string): string {
  const MOST_CHARS = 32_767;
  return text.replace(UNFIT_FOR_XML, "\ufffd").slice(0, MOST_CHARS);
}

const UNFIT_FOR_XML = /(?![\t\n\r])\p{Cc}|\p{Cs}|[\ufffe\uffff]/gu;

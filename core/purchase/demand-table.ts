import { isDay } from "../shop/instants.ts";
import { listed } from "../shop/finding.ts";
import type { DemandRow } from "../shop/purchase-demand.ts";
import { dayOfIsoWeek } from "../shop/week-number.ts";
import type { Finding } from "../units/finding.ts";

/** Order lines of the past as read from a table, and what was left out. */
interface DemandTable {
  readonly rows: DemandRow[];
  readonly findings: Finding[];
}

/**
 * Order lines from the cells of a table, such as a CSV file: the first row names the columns. Needed are a due date
 * ("2026-11-30") or an ISO week ("2026-W49", taken as its Friday), a part and a quantity; a price of one copy and a late cost per
 * day may be there; other columns are passed over. A row that cannot be read is left out and told with its number.
 * Example: due, part, quantity / 2026-11-30, clip, 40 gives one row.
 */
export function readDemandTable(cells: readonly (readonly string[])[]): DemandTable {
  const [head = [], ...body] = cells;
  const columns = columnsOf(head);
  const missing = NEEDED.filter((column) => columns[column] === undefined);
  if (missing.length > 0) {
    const words = missing.map((column) => COLUMN_NAMES[column][0] ?? column);
    return {
      rows: [],
      findings: [
        fault("columns", `The first row of the table names no column for ${listed(words)}; add it.`),
      ],
    };
  }
  const read = body.map((row, place) => readRow(row, columns, place + 2));
  const rows = read.flatMap((own) => ("row" in own ? [own.row] : []));
  const faults = read.flatMap((own) => ("fault" in own ? [own.fault] : []));
  const none =
    rows.length === 0 && faults.length === 0
      ? [fault("no-history", "The table has no row below its first.")]
      : [];
  return { rows, findings: [...none, ...few(faults)] };
}

type Column = "due" | "part" | "quantity" | "price" | "late";

/** Names of columns, in lower case without blanks; the first is the one that sentences use. */
const COLUMN_NAMES: Readonly<Record<Column, readonly string[]>> = {
  due: ["due", "duedate", "dueon", "dueat", "date", "week"],
  part: ["part", "partid", "article", "item"],
  quantity: ["quantity", "copies", "pieces", "qty"],
  price: ["price", "priceperpiece", "unitprice"],
  late: ["latecost", "latecostperday"],
};
const NEEDED: readonly Column[] = ["due", "part", "quantity"];

function columnsOf(head: readonly string[]): Partial<Record<Column, number>> {
  const names = head.map((cell) => cell.toLowerCase().replaceAll(/[^a-z]/g, ""));
  const found: Partial<Record<Column, number>> = {};
  for (const column of ["due", "part", "quantity", "price", "late"] as const) {
    const place = names.findIndex((name) => COLUMN_NAMES[column].includes(name));
    if (place >= 0) found[column] = place;
  }
  return found;
}

type RowRead = { readonly row: DemandRow } | { readonly fault: Finding };

function readRow(row: readonly string[], columns: Partial<Record<Column, number>>, line: number): RowRead {
  const cell = (column: Column): string => row[columns[column] ?? -1]?.trim() ?? "";
  const wrong = (what: string): RowRead => ({
    fault: fault("row", `Row ${line} of the table is left out: ${what}.`),
  });
  const dueOn = dueDay(cell("due"));
  if (dueOn === null)
    return wrong(`"${cell("due")}" is neither a date like 2026-11-30 nor a week like 2026-W49`);
  const partId = cell("part");
  if (partId === "") return wrong("it names no part");
  const quantity = numberOf(cell("quantity"));
  if (quantity === null || !Number.isInteger(quantity) || quantity < 1)
    return wrong(`"${cell("quantity")}" is no whole quantity of 1 or more`);
  const price = cell("price") === "" ? undefined : numberOf(cell("price"));
  if (price === null || (price ?? 0) < 0) return wrong(`"${cell("price")}" is no price of 0 or more`);
  const late = cell("late") === "" ? undefined : numberOf(cell("late"));
  if (late === null || (late ?? 0) < 0) return wrong(`"${cell("late")}" is no late cost of 0 or more`);
  return {
    row: {
      dueOn,
      partId,
      quantity,
      ...(price === undefined ? {} : { pricePerPiece: price }),
      ...(late === undefined ? {} : { lateCostPerDay: late }),
    },
  };
}

function dueDay(text: string): string | null {
  const week = /^(\d{4})-?W(\d{2})$/.exec(text);
  if (week) return dayOfIsoWeek(Number(week[1]), Number(week[2]), FRIDAY);
  const day = text.slice(0, "2026-11-30".length);
  return isDay(day) ? day : null;
}

const FRIDAY = 4;

/** A plain number; a comma alone stands for the decimal point. */
function numberOf(text: string): number | null {
  const plain = text.includes(".") ? text : text.replace(",", ".");
  const value = Number(plain);
  return plain !== "" && Number.isFinite(value) ? value : null;
}

function fault(code: string, sentence: string): Finding {
  return { severity: "warning", code, where: "demand", sentence };
}

/** The first few faults, and how many more there are. */
function few(faults: readonly Finding[]): Finding[] {
  const more = faults.length - MOST_SHOWN;
  if (more <= 0) return [...faults];
  return [
    ...faults.slice(0, MOST_SHOWN),
    fault("row", `${more} more rows of the table are left out as well.`),
  ];
}

const MOST_SHOWN = 5;

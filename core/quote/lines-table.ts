import { listed } from "../shop/finding.ts";
import { isInstant } from "../shop/instants.ts";
import type { Finding } from "../units/finding.ts";

/** One line of a request as somebody wrote it; `part` is an id or the name of a mesh file. */
export interface WrittenLine {
  readonly part: string;
  readonly quantity: number;
  /** local time or instant; null: no date wanted */
  readonly by: string | null;
  readonly allowLate: boolean;
  readonly machineId?: string;
  readonly feedstockId?: string;
}

/** Lines of a table, and the rows that could not be read. */
export interface LinesTable {
  readonly lines: readonly WrittenLine[];
  readonly findings: readonly Finding[];
}

/**
 * Lines of a request from the cells of a table, such as a CSV file; the first row names the columns: part and quantity, and if wanted
 * by ("2026-12-04" or "2026-12-04T12:00"), late (yes or no), machine and feedstock. Other columns are passed over, empty rows too. A row that
 * cannot be read is left out and told with its number. Example: part, quantity, by / clip, 40, 2026-12-04 gives one line for
 * 16:00 on that day.
 */
export function readLinesTable(cells: readonly (readonly string[])[]): LinesTable {
  const [head = [], ...body] = cells;
  const columns = columnsOf(head);
  const missing = NEEDED.filter((column) => columns[column] === undefined);
  if (missing.length > 0) {
    const what = `The first row of the table names no column for ${listed(missing)}; it needs part and quantity, and may have by, late, machine and feedstock.`;
    return { lines: [], findings: [fault("columns", "row 1", what)] };
  }
  const read = body.flatMap((row, place) =>
    row.some((cell) => cell.trim() !== "") ? [readRow(row, columns, place + 2)] : [],
  );
  const lines = read.flatMap((one) => ("line" in one ? [one.line] : []));
  const findings = read.flatMap((one) => ("line" in one ? [] : one.findings));
  const nothing =
    read.length === 0 ? [fault("no-rows", "row 2", "The table has no row below its first.")] : [];
  return { lines, findings: [...nothing, ...findings] };
}

/** Time of day of a wanted date that names none: the end of a usual day shift (common practice, no source). */
const USUAL_TIME = "16:00";

/**
 * A wanted date as written, with the usual time where it names none; null: it is no date. Example: "2026-12-04" gives
 * "2026-12-04T16:00".
 */
export function readWantedDate(text: string): string | null {
  const trimmed = text.trim().replace(/^(\d{4}-\d{2}-\d{2}) (?=\d)/, "$1T");
  const instant = /^\d{4}-\d{2}-\d{2}$/.test(trimmed) ? `${trimmed}T${USUAL_TIME}` : trimmed;
  return isInstant(instant) ? instant : null;
}

/** Most copies that a line may ask for; more is a slip. */
export const MOST_COPIES = 10_000_000;

/** A quantity as written; null: it is no whole number from 1 to ten million. Example: "1 200" gives 1200. */
export function readQuantity(text: string): number | null {
  const digits = text.trim().replace(/(?<=\d)[\s\u202f_](?=\d{3}\b)/g, "");
  const value = /^\d+$/.test(digits) ? Number(digits) : NaN;
  return value >= 1 && value <= MOST_COPIES ? value : null;
}

const NAMES = ["part", "quantity", "by", "late", "machine", "feedstock"] as const;
type Column = (typeof NAMES)[number];
const NEEDED: readonly Column[] = ["part", "quantity"];

type Columns = Partial<Record<Column, number>>;

function columnsOf(head: readonly string[]): Columns {
  const names = head.map((cell) => cell.trim().toLowerCase());
  return Object.fromEntries(
    NAMES.flatMap((column) => (names.includes(column) ? [[column, names.indexOf(column)]] : [])),
  ) as Columns;
}

type ReadRow = { readonly line: WrittenLine } | { readonly findings: readonly Finding[] };

function readRow(row: readonly string[], columns: Columns, number: number): ReadRow {
  const cell = (column: Column): string => row[columns[column] ?? -1]?.trim() ?? "";
  const findings: Finding[] = [];
  const wrong = (column: Column, what: string): void => {
    findings.push(fault(column, `row ${number}/${column}`, `Row ${number} of the table: ${what}`));
  };
  const quantity = readQuantity(cell("quantity"));
  const by = cell("by") === "" ? null : readWantedDate(cell("by"));
  const late = LATE_WORDS.get(cell("late").toLowerCase());
  if (cell("part") === "") wrong("part", "it names no part; write an id of the shop or a mesh file.");
  if (quantity === null) {
    wrong("quantity", `"${cell("quantity")}" is no quantity; write a whole number from 1 to ${MOST_COPIES}.`);
  }
  if (by === null && cell("by") !== "") {
    wrong("by", `"${cell("by")}" is no date; write it as 2026-12-04 or 2026-12-04T12:00.`);
  }
  if (late === undefined) wrong("late", `"${cell("late")}" says neither yes nor no; write one of them.`);
  if (findings.length > 0 || quantity === null || late === undefined) return { findings };
  return {
    line: {
      part: cell("part"),
      quantity,
      by,
      allowLate: late,
      ...(cell("machine") === "" ? {} : { machineId: cell("machine") }),
      ...(cell("feedstock") === "" ? {} : { feedstockId: cell("feedstock") }),
    },
  };
}

/** May the line be late; nothing said: yes. */
const LATE_WORDS = new Map([
  ["", true],
  ["yes", true],
  ["no", false],
]);

function fault(code: string, where: string, sentence: string): Finding {
  return { severity: "error", code: `quote-table-${code}`, where, sentence };
}

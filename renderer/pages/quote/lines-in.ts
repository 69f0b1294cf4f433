import { readLinesTable } from "../../../core/quote/lines-table.ts";
import { readTabText } from "../../components/grid/tab-text.ts";
import { readText } from "../orders/take-in/read-table.ts";
import { emptyLine, type RequestLine } from "./request.ts";

/** Columns of a table whose first row names none. */
const USUAL_HEAD = ["part", "quantity", "by", "late", "machine", "feedstock"];

/** Lines of a table, and what could not be read, in sentences. */
interface LinesIn {
  readonly lines: readonly RequestLine[];
  readonly faults: readonly string[];
}

/** True for text of several cells or rows, which is a table and no word. */
export function isTable(text: string): boolean {
  return /[\t\n]/.test(text.trim());
}

/**
 * Lines of a request from a table as text: CSV, or cells copied from a spreadsheet; without a head the columns are part, quantity,
 * by, late, machine and feedstock. Example: "clip\t40\t2026-12-04" gives one line of 40 clips.
 */
export function linesOfText(text: string): LinesIn {
  const cells = text.includes("\t") ? readTabText(text) : readText(text);
  const hasHead = cells[0]?.some((cell) => cell.trim().toLowerCase() === "part") ?? false;
  const { lines, findings } = readLinesTable(hasHead ? cells : [USUAL_HEAD, ...cells]);
  return {
    lines: lines.map(({ part, quantity, by, allowLate, machineId, feedstockId }) => ({
      ...emptyLine(),
      part,
      quantity: String(quantity),
      wanted: (by ?? "").replace("T", " "),
      mustHold: !allowLate,
      machineId: machineId ?? "",
      feedstockId: feedstockId ?? "",
    })),
    faults: findings.map(({ sentence }) => sentence),
  };
}

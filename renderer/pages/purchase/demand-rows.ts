import Papa from "papaparse";
import { readDemandTable } from "../../../core/purchase/demand-table.ts";
import type { DemandRow, DemandSource, TypedDemand } from "../../../core/shop/purchase-demand.ts";
import type { Finding } from "../../../core/shop/finding.ts";
import type { GridEdit } from "../../components/grid/grid-column.ts";

/** A line of a list that has no ids of its own, with its place as id, for a grid. */
export type Placed<Line> = Line & { readonly id: string };

export function placed<Line>(lines: readonly Line[]): Placed<Line>[] {
  return lines.map((line, place) => ({ ...line, id: String(place) }));
}

/** The lines after an edit of their grid. Example: the second of three removed leaves the first and the third. */
export function editedLines<Line extends object>(
  lines: readonly Line[],
  { replaced, inserted, removed }: GridEdit<Placed<Line>>,
): Line[] {
  const next: (readonly Line[])[] = lines.map((line) => [line]);
  for (const { place, row } of replaced) next[place] = [plain(row)];
  for (const place of removed) next[place] = [];
  next.push([]);
  for (const { place, row } of inserted.toReversed()) next[place] = [plain(row), ...(next[place] ?? [])];
  return next.flat();
}

function plain<Line extends object>(row: Placed<Line>): Line {
  const { id: _, ...line } = row;
  // What is left is the line that the place was given to.
  return line as unknown as Line;
}

const SEPARATORS = [",", ";", "\t", "|"];

/** Past orders from the text of a table, such as a CSV file or what was copied from a spreadsheet. */
export function pastOrders(text: string): {
  readonly rows: readonly DemandRow[];
  readonly findings: readonly Finding[];
} {
  const { data } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ""), {
    delimitersToGuess: SEPARATORS,
    skipEmptyLines: "greedy",
  });
  return readDemandTable(data);
}

/** A demand of another kind, with what the one before can give it. Example: typed lines of the parts that past orders name. */
export function demandOfKind(
  kind: DemandSource["kind"],
  before: DemandSource,
  firstPartId: string | undefined,
): DemandSource {
  if (kind === "orders") return { kind };
  if (kind === "rows") return { kind, rows: [] };
  if (before.kind === "typed") return before;
  return { kind, lines: firstPartId === undefined ? [] : [firstLine(firstPartId)] };
}

export function firstLine(partId: string): TypedDemand {
  return { partId, ordersPerWeek: 1, quantity: 1 };
}

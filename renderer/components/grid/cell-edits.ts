import { type GridColumn, isUnfit } from "./grid-column.ts";
import { carryRejections, type Rejection, rejectionAt } from "./rejections.ts";

/** A text for one column of a row. */
export interface CellText {
  readonly columnId: string;
  readonly text: string;
}

/**
 * The row with texts put into some of its columns. A text that does not fit leaves the value as it was and stays in its cell,
 * marked. Null: nothing changes. Texts of columns that cannot be edited are passed over.
 */
export function withTexts<Row extends object>(
  row: Row,
  texts: readonly CellText[],
  columns: ReadonlyMap<string, GridColumn<Row>>,
): Row | null {
  let next = row;
  const changed = new Map<string, Rejection | null>();
  for (const { columnId, text } of texts) {
    const column = columns.get(columnId);
    if (!column?.put || isAsBefore(row, column, text)) continue;
    const answer = column.put(next, text);
    if (isUnfit(answer)) changed.set(columnId, { text, sentence: answer.unfit });
    else {
      next = answer;
      changed.set(columnId, null);
    }
  }
  if (changed.size === 0) return null;
  if (next === row) next = { ...row };
  carryRejections(row, next, changed);
  return next;
}

/** Text of a cell as it is edited and copied. */
export function editTextOf<Row extends object>(row: Row, column: GridColumn<Row>): string {
  return rejectionAt(row, column.id)?.text ?? (column.editText ?? column.text)(row);
}

/** An editor that was opened and left changes nothing, however the value was rounded when it was shown. */
function isAsBefore<Row extends object>(row: Row, column: GridColumn<Row>, text: string): boolean {
  return text === editTextOf(row, column);
}

/** A text that somebody typed or pasted and that could not be read: it stays in its cell until it is corrected. */
export interface Rejection {
  readonly text: string;
  readonly sentence: string;
}

/**
 * What could not be read, by the row as it was then. Rows are values: undo brings the old row back and with it the cell as it
 * was, redo the rejected text. Nothing of it is in the shop document.
 */
const rejectionsOf = new WeakMap<object, ReadonlyMap<string, Rejection>>();

export function rejectionAt(row: object, columnId: string): Rejection | undefined {
  return rejectionsOf.get(row)?.get(columnId);
}

export function hasRejection(row: object): boolean {
  return rejectionsOf.has(row);
}

/** Carries what was rejected over to the edited row, but for columns that have a new text now. */
export function carryRejections(
  from: object,
  to: object,
  changed: ReadonlyMap<string, Rejection | null>,
): void {
  const next = new Map(rejectionsOf.get(from));
  for (const [columnId, rejection] of changed) {
    if (rejection) next.set(columnId, rejection);
    else next.delete(columnId);
  }
  if (next.size > 0) rejectionsOf.set(to, next);
}

/** One thing about the user's data that somebody should know: what it is, where it is, and what to do. */
export interface Finding {
  /** error: what it is about cannot be planned; warning: planned as the sentence says */
  readonly severity: "error" | "warning";
  readonly code: string;
  /** list, id and field, such as "orders/O-17/dueAt", or a file by its name; a "/" within an id is written "~1" and a "~" "~0" (RFC 6901) */
  readonly where: string;
  readonly sentence: string;
}

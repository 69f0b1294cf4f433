import type { JSX } from "solid-js";

/** A text that does not fit a column, and why, in a sentence that says what to do. */
export interface Unfit {
  readonly unfit: string;
}

export interface CellChoice {
  /** what is put into the cell */
  readonly value: string;
  /** what is read beside it, such as the name of an id */
  readonly label: string;
}

/** One column of a grid as data: how a row's value is shown, edited, read, sorted. */
export interface GridColumn<Row> {
  readonly id: string;
  readonly title: string;
  /** in small letters below the title; follows the switch of units: () => format().length */
  readonly unit?: () => string;
  readonly widthPx: number;
  readonly align?: "end";
  /** true: stays in sight when the grid is moved sideways; for the first column alone */
  readonly isSticky?: boolean;
  /** as shown and copied */
  readonly text: (row: Row) => string;
  /** drawn in place of the text */
  readonly draw?: (row: Row) => JSX.Element;
  /** as edited and copied, where that is not the text shown */
  readonly editText?: (row: Row) => string;
  /** the row with a typed or pasted text in this column; absent: the column cannot be edited */
  readonly put?: (row: Row, text: string) => Row | Unfit;
  /** what may be chosen while the cell is edited */
  readonly choices?: () => readonly CellChoice[];
  /** the number behind the text: for sorting and for sifting by "> 5" */
  readonly amount?: (row: Row) => number | null;
  /** true: the sum of chosen amounts means something and is shown */
  readonly isSummed?: boolean;
}

/** A list edited at once; places are those before the edit. */
export interface GridEdit<Row> {
  /** in words, after "Undo" */
  readonly label: string;
  readonly replaced: readonly { readonly place: number; readonly row: Row }[];
  /** each goes before what is at its place, in the order given; the length of the list: at the end */
  readonly inserted: readonly { readonly place: number; readonly row: Row }[];
  readonly removed: readonly number[];
}

export function isUnfit(answer: object): answer is Unfit {
  return "unfit" in answer;
}

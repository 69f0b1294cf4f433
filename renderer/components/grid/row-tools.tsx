import type { JSX } from "solid-js";
import { Button } from "../button.tsx";
import type { GridHandle } from "./grid.tsx";

interface RowToolsProps<Row> {
  readonly grid: GridHandle<Row> | null;
  /** one of what the rows are: "machine" */
  readonly word: string;
  readonly onAdd: () => void;
  /** true: there is nothing to duplicate or to delete */
  readonly isEmpty: boolean;
}

/** Buttons of a page with a grid: a new row, and the selected ones once more or away. */
export function RowTools<Row>(props: RowToolsProps<Row>): JSX.Element {
  return (
    <>
      <Button icon="add" onClick={() => props.onAdd()}>
        New {props.word}
      </Button>
      <Button
        icon="copy"
        disabled={props.isEmpty}
        onClick={() => (props.grid?.actions.duplicate(), props.grid?.focus())}
      >
        Duplicate
      </Button>
      <Button
        icon="remove"
        disabled={props.isEmpty}
        onClick={() => (props.grid?.actions.remove(), props.grid?.focus())}
      >
        Delete
      </Button>
    </>
  );
}

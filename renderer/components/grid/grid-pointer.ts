import { startEditing } from "./grid-keys.ts";
import type { GridState } from "./grid-state.ts";
import type { CellPlace } from "./ranges.ts";

interface GridPointer {
  readonly down: (event: PointerEvent) => void;
  readonly move: (event: PointerEvent) => void;
  readonly up: () => void;
  readonly doubleClick: (event: MouseEvent) => void;
}

/** Choosing cells by mouse, pen or finger: press, drag, Shift to extend, Ctrl to add; a number chooses its whole row. */
export function createGridPointer<Row extends object>(options: {
  readonly state: GridState<Row>;
  readonly focus: () => void;
}): GridPointer {
  const { state, focus } = options;
  let isDragging = false;
  let isWholeRows = false;
  const lastCol = (): number => state.columns.length - 1;

  function chooseRows(place: CellPlace, isExtended: boolean): void {
    const top = isExtended ? state.anchor().row : place.row;
    state.select({ top, left: 0, bottom: place.row, right: lastCol() });
  }

  return {
    down: (event) => {
      if (event.button !== 0) return;
      const target = event.target as Element;
      if (target.closest("[data-all]")) {
        state.select({ top: 0, left: 0, bottom: state.count() - 1, right: lastCol() });
        return focus();
      }
      const place = placeOf(target);
      if (!place) return;
      // The focus stays on the grid itself; a text selection would only be in the way.
      event.preventDefault();
      isWholeRows = place.col < 0;
      isDragging = event.pointerType !== "touch";
      if (isWholeRows) chooseRows(place, event.shiftKey);
      else state.goTo(place, event.shiftKey ? "extend" : event.ctrlKey || event.metaKey ? "add" : undefined);
      focus();
    },
    move: (event) => {
      if (!isDragging || event.buttons !== 1) return;
      const place = placeOf(document.elementFromPoint(event.clientX, event.clientY));
      if (!place) return;
      if (isWholeRows) chooseRows(place, true);
      else if (place.col >= 0) state.goTo(place, "extend");
    },
    up: () => {
      isDragging = false;
    },
    doubleClick: (event) => {
      const place = placeOf(event.target as Element);
      if (place && place.col >= 0) startEditing(state, null);
    },
  };
}

/** The cell that an element belongs to; column -1 for the number of a row. */
export function placeOf(element: Element | null): CellPlace | null {
  const cell = element?.closest<HTMLElement>("[data-row]");
  if (!cell) return null;
  return { row: Number(cell.dataset["row"]), col: Number(cell.dataset["col"] ?? -1) };
}

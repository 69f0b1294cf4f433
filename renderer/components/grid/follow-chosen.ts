import { type Accessor, createEffect, on } from "solid-js";
import type { GridHandle } from "./grid.tsx";

interface FollowOptions<Row> {
  readonly grid: Accessor<GridHandle<Row> | null>;
  readonly rows: Accessor<readonly Row[]>;
  /** id of the row that was chosen, here or on another page */
  readonly chosenId: Accessor<string | null>;
  /** absent: the row becomes the active one in the column that is active */
  readonly goTo?: (grid: GridHandle<Row>, row: number) => void;
}

/** Makes the chosen row the active one of its grid, unless it is that already or is not shown. */
export function followChosen<Row extends { readonly id: string }>({
  grid,
  rows,
  chosenId,
  goTo = ({ state }, row) => state.goTo({ row, col: state.active().col }),
}: FollowOptions<Row>): void {
  createEffect(
    on([grid, chosenId], ([handle, id]) => {
      if (!handle || id === null) return;
      const { state } = handle;
      if (state.rowAt(state.active().row)?.id === id) return;
      const row = state.order().findIndex((place) => rows()[place]?.id === id);
      if (row >= 0) goTo(handle, row);
    }),
  );
}

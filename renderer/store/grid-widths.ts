import { createMemo } from "solid-js";
import { useStores } from "./stores.ts";

/** Widths of a grid's columns that somebody set, kept with the preferences under the grid's name. */
export interface GridWidths {
  readonly widths: () => Readonly<Record<string, number>>;
  readonly onWidth: (columnId: string, widthPx: number) => void;
}

export function createGridWidths(name: string): GridWidths {
  const { prefs } = useStores();
  const key = `widths of ${name}`;
  const widths = createMemo((): Readonly<Record<string, number>> => {
    try {
      return JSON.parse(prefs.remembered(key) ?? "{}") as Record<string, number>;
    } catch {
      return {};
    }
  });
  return {
    widths,
    onWidth: (columnId, widthPx) => prefs.remember(key, JSON.stringify({ ...widths(), [columnId]: widthPx })),
  };
}

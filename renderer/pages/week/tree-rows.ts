import type { WeekBuild, WeekPicture, WeekRow } from "./week-picture.ts";

/** A row of the list: a machine, or one of its builds. */
export type TreeRow =
  | { readonly level: 1; readonly id: string; readonly row: WeekRow; readonly place: number }
  | {
      readonly level: 2;
      readonly id: string;
      readonly build: WeekBuild;
      /** which of the machine's builds it is, from 1 */
      readonly place: number;
      readonly of: number;
    };

/** All rows as they stand under one another; machines that are shut show none of theirs. Example: 2 machines, one open with 3 builds: 5. */
export function treeRows({ rows }: WeekPicture, isOpen: (machineId: string) => boolean): TreeRow[] {
  return rows.flatMap((row, at): TreeRow[] => {
    const head: TreeRow = { level: 1, id: machineKey(row.machineId), row, place: at + 1 };
    if (!isOpen(row.machineId)) return [head];
    const builds = row.builds.map((build, index): TreeRow => {
      return { level: 2, id: buildKey(build.build.id), build, place: index + 1, of: row.builds.length };
    });
    return [head, ...builds];
  });
}

/** Ids of rows; a machine and a build may have the same id in the shop. */
export function machineKey(machineId: string): string {
  return `machine ${machineId}`;
}

export function buildKey(buildId: string): string {
  return `build ${buildId}`;
}

/** Where a key of the tree leads. */
type TreeStep = { readonly to: number } | { readonly open: string } | { readonly shut: string } | null;

/**
 * What a key does in a tree, by the WAI-ARIA pattern of tree grids (W3C): up and down, right opens or goes in, left shuts or
 * goes out, Home and End, a page up or down. Null: the key is for something else.
 */
export function treeStep(
  rows: readonly TreeRow[],
  at: number,
  key: string,
  isOpen: (machineId: string) => boolean,
  pageRows: number,
): TreeStep {
  const row = rows[at];
  const to = (next: number): TreeStep => ({ to: Math.max(0, Math.min(rows.length - 1, next)) });
  switch (key) {
    case "ArrowDown":
      return to(at + 1);
    case "ArrowUp":
      return to(at - 1);
    case "PageDown":
      return to(at + pageRows);
    case "PageUp":
      return to(at - pageRows);
    case "Home":
      return to(0);
    case "End":
      return to(rows.length - 1);
    case "ArrowRight":
      if (row?.level !== 1 || row.row.builds.length === 0) return null;
      return isOpen(row.row.machineId) ? to(at + 1) : { open: row.row.machineId };
    case "ArrowLeft":
      if (row?.level === 1) return isOpen(row.row.machineId) ? { shut: row.row.machineId } : null;
      return to(rows.findLastIndex((other, place) => place < at && other.level === 1));
    default:
      return null;
  }
}

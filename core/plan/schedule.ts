/** Copies of one line made by one option. */
export interface ScheduledItem {
  readonly optionIndex: number;
  readonly copies: number;
}

/** One build with its place in time, epoch minutes. */
export interface ScheduledBuild {
  readonly machineIndex: number;
  /** one item, or several with equal mixKey */
  readonly items: readonly ScheduledItem[];
  readonly setUpStartMin: number;
  readonly printStartMin: number;
  readonly printEndMin: number;
  readonly unloadEndMin: number;
}

/** What the search decides: builds in time order by machine, copies bought out, copies that found no place. */
export interface Schedule {
  readonly builds: readonly ScheduledBuild[];
  readonly boughtOut: readonly { readonly lineIndex: number; readonly copies: number }[];
  readonly unplaced: readonly { readonly lineIndex: number; readonly copies: number }[];
  /** money of all of it, major units, lateness included, unplaced copies not */
  readonly cost: number;
}

/** Copies of all lines that found no place. Example: 2 of one line and 3 of another: 5. */
export function copiesLeftOut({ unplaced }: Schedule): number {
  return unplaced.reduce((sum, { copies }) => sum + copies, 0);
}

/** Layers one above the other, the first and last included; 1 is the layer on the platform. */
export interface LayerRange {
  readonly from: number;
  readonly to: number;
}

/**
 * Ranges of the layers of which something holds, from the bottom up: neighbours are put together.
 * Example: runs of 3, 2 and 4 layers of which the first and second are meant give 1 to 5.
 */
export function layerRanges<Run extends { readonly count: number }>(
  runs: readonly Run[],
  isMeant: (run: Run) => boolean,
): LayerRange[] {
  const ranges: { from: number; to: number }[] = [];
  let below = 0;
  for (const run of runs) {
    const last = ranges.at(-1);
    if (isMeant(run)) {
      if (last?.to === below) last.to += run.count;
      else ranges.push({ from: below + 1, to: below + run.count });
    }
    below += run.count;
  }
  return ranges;
}

/** How many layers are in ranges. Example: 1 to 4 and 9 to 9 are 5. */
export function layersIn(ranges: readonly LayerRange[]): number {
  return ranges.reduce((sum, { from, to }) => sum + to - from + 1, 0);
}

/**
 * Ranges of layers in words, at most four of them. Example: "layer 7", "layers 1 to 4 and 212 to 240".
 */
export function layerWords(ranges: readonly LayerRange[]): string {
  const hidden = ranges.length - MOST_RANGES;
  const shown = ranges
    .slice(0, MOST_RANGES)
    .map(({ from, to }) => (from === to ? String(from) : `${from} to ${to}`));
  const words = hidden > 0 ? [...shown, `${hidden} more ranges`] : shown;
  const head = words.slice(0, -1).join(", ");
  const list = head === "" ? (words.at(-1) ?? "none") : `${head} and ${words.at(-1)}`;
  return layersIn(ranges) === 1 ? `layer ${list}` : `layers ${list}`;
}

const MOST_RANGES = 4;

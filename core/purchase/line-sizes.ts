/** How large the order lines of one part are. */
export interface LineSizes {
  readonly partId: string;
  /** ascending by quantity; `lines` only says how many there are beside each other */
  readonly sizes: readonly { readonly quantity: number; readonly lines: number }[];
}

/** An order line, or several alike. */
interface SizedLine {
  readonly partId: string;
  readonly quantity: number;
  /** 1 where none is given */
  readonly lines?: number;
}

/** Counts the lines of every part by quantity. Example: two lines of 5 and one of 8: 5 twice, 8 once. */
export function lineSizes(all: readonly SizedLine[]): LineSizes[] {
  const counts = new Map<string, Map<number, number>>();
  for (const { partId, quantity, lines = 1 } of all) {
    const ofPart = counts.get(partId) ?? new Map<number, number>();
    ofPart.set(quantity, (ofPart.get(quantity) ?? 0) + lines);
    counts.set(partId, ofPart);
  }
  return [...counts]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([partId, ofPart]) => ({
      partId,
      sizes: [...ofPart].toSorted(([a], [b]) => a - b).map(([quantity, lines]) => ({ quantity, lines })),
    }));
}

/**
 * Mean copies in one build when each line has builds of its own, as full as they can be: copies of all lines over their
 * builds; lines of fewer than `fewest` copies cannot be made so and do not count. 0: no line is left.
 * Example: lines of 5 and 45 with at most 40 in a build: 50 copies in 3 builds, 16.67.
 */
export function meanBuildCopies({ sizes }: LineSizes, fewest: number, most: number): number {
  let copies = 0;
  let builds = 0;
  for (const { quantity, lines } of sizes) {
    if (quantity < fewest) continue;
    copies += lines * quantity;
    builds += lines * Math.ceil(quantity / most);
  }
  // Rounding may leave it a hair above the largest build there is.
  return builds === 0 ? 0 : Math.min(most, copies / builds);
}

/** The largest line of a part, copies. */
export function largestLine({ sizes }: LineSizes): number {
  return sizes[sizes.length - 1]?.quantity ?? 1;
}

/** Size of a piece or a platform, mm. */
interface Size {
  readonly x: number;
  readonly y: number;
}

/**
 * Quick test before places are looked for: false when the pieces with their gaps cover more than the platform can hold, or
 * when shelves of equal height, filled first-fit with the highest first, need clearly more height than there is. Shelves
 * waste some room, so an arrangement that is found by other means may be missed only far beyond `SLACK`.
 * Example: two pieces of 60 x 40 with gap 5 on 130 x 40: true; on 120 x 40: false.
 */
export function mayFitShelves(pieces: readonly Size[], platform: Size, gapMm: number): boolean {
  const widthMm = platform.x + gapMm;
  const heightMm = platform.y + gapMm;
  const areaMm2 = pieces.reduce((sum, { x, y }) => sum + (x + gapMm) * (y + gapMm), 0);
  if (areaMm2 > widthMm * heightMm) return false;
  return shelvesMm(pieces, widthMm, gapMm) <= heightMm * SLACK;
}

/** Height of all shelves may exceed the platform by this much before the exact search is skipped. */
const SLACK = 1.3;

function shelvesMm(pieces: readonly Size[], widthMm: number, gapMm: number): number {
  const lying = pieces
    .map(({ x, y }) => ({ width: Math.max(x, y) + gapMm, height: Math.min(x, y) + gapMm }))
    .toSorted((a, b) => b.height - a.height);
  const leftMm: number[] = [];
  let usedMm = 0;
  for (const { width, height } of lying) {
    const shelf = leftMm.findIndex((left) => left >= width);
    if (shelf >= 0) leftMm[shelf] = leftMm[shelf]! - width;
    else {
      leftMm.push(widthMm - width);
      usedMm += height;
    }
  }
  return usedMm;
}

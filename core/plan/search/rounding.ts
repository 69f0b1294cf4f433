import type { SearchData } from "./search-data.ts";

/** Copies of each option, and copies bought out of each line, whole numbers. */
export interface WholeShares {
  readonly ofOption: Int32Array;
  readonly boughtOut: Int32Array;
}

/** Copies by option as the linear program divides them, and copies bought out by line: fractions. */
export interface Shares {
  readonly shares: readonly { readonly optionIndex: number; readonly copies: number }[];
  readonly boughtOut?: readonly { readonly lineIndex: number; readonly copies: number }[];
}

interface Part {
  readonly option: number;
  readonly copies: number;
}

/**
 * Rounds each line's shares to whole copies by largest remainder, never more than the line's quantity. A share that is too
 * small for one build of its option goes to the line's largest one. What is left over is for the caller to place.
 * Example: 10 copies as 6.6 and 3.4: 7 and 3.
 */
export function roundShares(data: SearchData, start: Shares): WholeShares {
  const parts: Part[][] = data.problem.lines.map(() => []);
  for (const { optionIndex, copies } of start.shares) {
    const line = data.optionLine[optionIndex];
    if (line !== undefined && copies > LEAST_SHARE) parts[line]?.push({ option: optionIndex, copies });
  }
  for (const { lineIndex, copies } of start.boughtOut ?? []) {
    if (copies > LEAST_SHARE) parts[lineIndex]?.push({ option: BOUGHT, copies });
  }
  const whole: WholeShares = {
    ofOption: new Int32Array(data.optionLine.length),
    boughtOut: new Int32Array(data.lineCount),
  };
  parts.forEach((list, line) => {
    roundLine(data, line, list, whole);
  });
  return whole;
}

const BOUGHT = -1;
const LEAST_SHARE = 1e-6;

function roundLine(data: SearchData, line: number, parts: readonly Part[], whole: WholeShares): void {
  const counts = largestRemainder(
    parts.map((part) => part.copies),
    data.quantity[line]!,
  );
  const largest = counts.indexOf(Math.max(...counts));
  counts.forEach((count, index) => {
    const option = parts[index]!.option;
    const isTooSmall = option !== BOUGHT && count < data.optionMin[option]!;
    const target = isTooSmall && count > 0 ? parts[largest]!.option : option;
    if (target === BOUGHT) whole.boughtOut[line] = whole.boughtOut[line]! + count;
    else whole.ofOption[target] = whole.ofOption[target]! + count;
  });
}

/** Whole numbers nearest to the shares that add up to their rounded sum, at most `most`. */
function largestRemainder(shares: readonly number[], most: number): number[] {
  const sum = shares.reduce((total, share) => total + share, 0);
  const counts = shares.map((share) => Math.floor(share + LEAST_SHARE));
  let left = Math.min(most, Math.round(sum)) - counts.reduce((total, count) => total + count, 0);
  const order = shares
    .map((_, index) => index)
    .toSorted((a, b) => remainder(shares[b]!) - remainder(shares[a]!));
  for (const index of order) {
    if (left <= 0) break;
    counts[index] = counts[index]! + 1;
    left--;
  }
  for (let index = 0; left < 0 && index < counts.length; index++) {
    const taken = Math.min(counts[index]!, -left);
    counts[index] = counts[index]! - taken;
    left += taken;
  }
  return counts;
}

function remainder(share: number): number {
  return share - Math.floor(share + LEAST_SHARE);
}

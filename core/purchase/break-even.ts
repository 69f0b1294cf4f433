/** A value, such as the net present value, at a multiple of one input, such as demand. */
export interface FactorPoint {
  readonly factor: number;
  readonly value: number;
}

/** Where a value passes zero as one input changes. */
export interface BreakEven {
  /**
   * above: gains from the one crossing on; below: gains up to it; always and never: no crossing within what was looked at;
   * several: it crosses more than once
   */
  readonly kind: "above" | "below" | "always" | "never" | "several";
  /** multiples of the input, ascending, linear between the points */
  readonly crossings: readonly number[];
  /** what it rests on, ascending by factor */
  readonly points: readonly FactorPoint[];
}

/**
 * Break-even from points already worked out, linear between neighbours. Example: -100 at 0.5 and 300 at 1: above 0.625.
 */
export function breakEvenOf(points: readonly FactorPoint[]): BreakEven {
  const ascending = points.toSorted((a, b) => a.factor - b.factor);
  const [first] = ascending;
  if (first === undefined) throw new RangeError("no point, no break-even");
  const crossings = brackets(ascending).map(([low, high]) => crossingOf(low, high));
  return { kind: kindOf(crossings.length, first.value), crossings, points: ascending };
}

function kindOf(crossings: number, firstValue: number): BreakEven["kind"] {
  if (crossings > 1) return "several";
  if (crossings === 1) return firstValue < 0 ? "above" : "below";
  return firstValue < 0 ? "never" : "always";
}

type Bracket = readonly [FactorPoint, FactorPoint];

/** Neighbours of which one gains and the other loses. A value of 0 counts as a gain. */
function brackets(ascending: readonly FactorPoint[]): Bracket[] {
  return ascending.slice(1).flatMap((high, place) => {
    const low = ascending[place];
    return low !== undefined && low.value < 0 !== high.value < 0 ? [[low, high] as const] : [];
  });
}

function crossingOf(low: FactorPoint, high: FactorPoint): number {
  return low.factor - (low.value * (high.factor - low.factor)) / (high.value - low.value);
}

function middleOf(low: FactorPoint, high: FactorPoint): number {
  return (low.factor + high.factor) / 2;
}

/**
 * Break-even found by working the case out anew: first at the factors given, then `refinements` times within each bracket, by
 * turns at the crossing of the line and in the middle, so that a bent curve closes in from both sides. Every evaluation plans
 * anew with the input changed. Example: value = 800 x factor - 500 at 0.5 and 1, one refinement: above 0.625 exactly.
 */
export async function seekBreakEven(
  evaluate: (factor: number) => Promise<number>,
  factors: readonly number[],
  refinements: number,
): Promise<BreakEven> {
  const points: FactorPoint[] = [];
  const work = async (factor: number): Promise<void> => {
    if (points.some((point) => point.factor === factor)) return;
    points.push({ factor, value: await evaluate(factor) });
  };
  for (const factor of factors) await work(factor);
  for (let round = 0; round < refinements; round++) {
    const between = round % 2 === 0 ? crossingOf : middleOf;
    const ascending = points.toSorted((a, b) => a.factor - b.factor);
    for (const [low, high] of brackets(ascending)) await work(between(low, high));
  }
  return breakEvenOf(points);
}

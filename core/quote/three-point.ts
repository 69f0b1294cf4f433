/** What a person says of a time: at best, most likely, at worst. */
export interface ThreePoint {
  readonly least: number;
  readonly likely: number;
  readonly most: number;
}

/**
 * Mean and variance by the three-point rule: (a + 4m + b) / 6 and ((b - a) / 6)^2 (Malcolm, Roseboom, Clark and Fazar 1959,
 * from memory). Example: 2, 3 and 10 give 4 and 1.7778.
 */
export function threePointMoments({ least, likely, most }: ThreePoint): { mean: number; variance: number } {
  if (!(least <= likely && likely <= most))
    throw new RangeError(`not in order: ${least}, ${likely}, ${most}`);
  return { mean: (least + 4 * likely + most) / 6, variance: ((most - least) / 6) ** 2 };
}

import type { Reading } from "./body-reading.ts";
import { type LengthUnit, MM_PER_UNIT } from "./length-unit.ts";

/** Bodies with a smaller or larger longest side are most often in another unit (common practice, no source). */
const SMALL_MM = 3;
const LARGE_MM = 10_000;
const OFFERED: readonly LengthUnit[] = ["millimeter", "centimeter", "inch", "meter"];

/**
 * Warns where a body is so small or so large that its unit is in doubt, and says what other units would give.
 * Example: a side of 1.2 mm would be 12 mm in centimeters, 30.5 mm in inches, 1200 mm in meters.
 */
export function warnOfAbsurdSize(sideMm: number, unit: LengthUnit, isGuess: boolean, reading: Reading): void {
  if (sideMm >= SMALL_MM && sideMm <= LARGE_MM) return;
  const side = sideMm / MM_PER_UNIT[unit];
  const offers = OFFERED.filter((other) => other !== unit).map(
    (other) => `in ${other} ${rounded(side * MM_PER_UNIT[other])} mm`,
  );
  reading.warn(
    "size-in-doubt",
    `its longest side is ${rounded(sideMm)} mm, read in ${unit}${isGuess ? ", a guess since the file names no unit" : ""}; ` +
      `it would be ${offers.join(", ")}: check its unit`,
  );
}

function rounded(mm: number): string {
  return `${Number(mm.toPrecision(3))}`;
}

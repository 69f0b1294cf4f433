import type { EntryFindings, Finding } from "./finding.ts";

/** A number with the range it usually has and the range outside which it must be a slip (of the unit, most often). */
export interface Plausible<Item> {
  readonly field: string;
  readonly words: string;
  readonly unit: string;
  readonly of: (item: Item) => number | undefined;
  readonly usual: readonly [number, number];
  readonly possible: readonly [number, number];
}

/** One row of a table of plausible ranges. */
export function range<Item>(
  field: string,
  words: string,
  unit: string,
  of: (item: Item) => number | undefined,
  usual: readonly [number, number],
  possible: readonly [number, number],
): Plausible<Item> {
  return { field, words, unit, of, usual, possible };
}

/**
 * An error for each number outside its possible range, a warning for each outside its usual one.
 * Example: a density of 50 kg/m3 with a possible range of 100 to 23000 gives an error.
 */
export function plausibilityFindings<Item>(
  say: EntryFindings,
  item: Item,
  rows: readonly Plausible<Item>[],
): Finding[] {
  return rows.flatMap(({ field, words, unit, of, usual, possible }) => {
    const value = of(item);
    if (value === undefined || isWithin(value, usual)) return [];
    const said = `${words} is ${withUnit(value, unit)}`;
    if (isWithin(value, possible)) {
      return [
        say.warning(
          field,
          "unusual",
          `${said}, usual is ${span(usual, unit)}; check the number and its unit`,
        ),
      ];
    }
    return [
      say.error(
        field,
        "absurd",
        `${said}, possible is ${span(possible, unit)}; correct the number or its unit`,
      ),
    ];
  });
}

function isWithin(value: number, [low, high]: readonly [number, number]): boolean {
  return value >= low && value <= high;
}

function span([low, high]: readonly [number, number], unit: string): string {
  return `${low} to ${withUnit(high, unit)}`;
}

function withUnit(value: number, unit: string): string {
  return unit === "" ? String(value) : `${value} ${unit}`;
}

/** Units of length that a body's file may be in; the names are those of the 3MF core specification. */
export const LENGTH_UNITS = ["micron", "millimeter", "centimeter", "inch", "foot", "meter"] as const;

export type LengthUnit = (typeof LENGTH_UNITS)[number];

/** Millimetres of one unit, exact (inch and foot by international agreement, 1959). Example: 2 inch are 50.8 mm. */
export const MM_PER_UNIT: Readonly<Record<LengthUnit, number>> = {
  micron: 0.001,
  millimeter: 1,
  centimeter: 10,
  inch: 25.4,
  foot: 304.8,
  meter: 1000,
};

/** The unit of a name as a file writes it, or null for any other word. Example: "inch" gives "inch", "furlong" null. */
export function lengthUnit(word: string): LengthUnit | null {
  return LENGTH_UNITS.find((unit) => unit === word) ?? null;
}

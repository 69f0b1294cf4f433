/** Exact conversion factors: international pound (1959) and inch; 0 degC in kelvin. */
export const KG_PER_LB = 0.45359237;
export const MM_PER_IN = 25.4;
export const KELVIN_AT_0_C = 273.15;

/** Minutes and milliseconds in the units of time that the calendar uses. */
export const MIN_PER_H = 60;
export const MIN_PER_DAY = 1440;
export const MS_PER_MIN = 60_000;
export const S_PER_MIN = 60;
export const S_PER_H = 3600;

/** Millimetres to inches. Example: 25.4 gives 1. */
export function inFromMm(lengthMm: number): number {
  return lengthMm / MM_PER_IN;
}

/** Inches to millimetres. Example: 0.4 gives 10.16. */
export function mmFromIn(lengthIn: number): number {
  return lengthIn * MM_PER_IN;
}

/** Kilograms to pounds. Example: 1 gives 2.2046226. */
export function lbFromKg(massKg: number): number {
  return massKg / KG_PER_LB;
}

/** Pounds to kilograms. Example: 20 gives 9.0718474. */
export function kgFromLb(massLb: number): number {
  return massLb * KG_PER_LB;
}

import { MIN_PER_H } from "../units/conversions.ts";

/**
 * Cost of minutes at an hourly rate: an operator's, a machine's, a machining shop's. Money in major units.
 * Example: 15 min at 36 per h cost 9.
 */
export function timeCost(minutes: number, perH: number): number {
  return (minutes * perH) / MIN_PER_H;
}

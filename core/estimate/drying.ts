/**
 * Mass that a hopper dryer must hold so that feedstock stays in it as long as it has to dry, kg (Little's law: what is inside
 * is rate times residence). Example: 10 kg/h dried for 4 h needs 40 kg.
 */
export function dryerHopperKg(feedKgPerH: number, dryH: number): number {
  return feedKgPerH * dryH;
}

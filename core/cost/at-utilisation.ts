import type { Machine } from "../shop/machine.ts";
import type { Shop } from "../shop/shop.ts";

/**
 * The same shop with every machine in use for another share of its planned hours: only the fixed part of a machine-hour
 * rate is divided anew, and rates given as one number stay. Example: share 0.75 turns 1 600 h per year into 1 200 h.
 */
export function atUtilisation(shop: Shop, share: number): Shop {
  if (!(share > 0)) throw new RangeError(`share of the planned hours must be above 0, got ${share}`);
  return { ...shop, machines: shop.machines.map((machine) => scaled(machine, share)) };
}

function scaled(machine: Machine, share: number): Machine {
  const { hourRate } = machine;
  if (typeof hourRate === "number") return machine;
  return { ...machine, hourRate: { ...hourRate, plannedHoursPerYear: hourRate.plannedHoursPerYear * share } };
}

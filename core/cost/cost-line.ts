/** Kinds of cost, in the order in which they are shown. */
export const COST_KINDS = [
  "feedstock",
  "machine",
  "labour",
  "engineering",
  "changeover",
  "finishing",
  "expectedFailure",
  "overhead",
  "buyOut",
  "late",
  "moving",
] as const;

export type CostKind = (typeof COST_KINDS)[number];

/** One number that went into a cost line. */
export interface CostInput {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
}

/**
 * One amount of money, in major units of the shop's currency and unrounded, with the formula and the numbers that made it.
 * Every total of a plan is a sum of these, so it can be opened down to them. `orderId` is always given; machine, feedstock
 * and build are given where the amount belongs to one ("bought out" and "late" have none).
 */
export interface CostLine {
  readonly kind: CostKind;
  readonly amount: number;
  /** the formula in words and symbols, such as "mass x price x (1 + waste)" */
  readonly formula: string;
  readonly inputs: readonly CostInput[];
  readonly orderId: string;
  readonly machineId?: string;
  readonly feedstockId?: string;
  readonly buildId?: string;
}

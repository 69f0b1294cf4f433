import type { BuildCosting } from "../../cost/build-cost.ts";
import type { LoadedState } from "../../cost/changeover-cost.ts";
import type { Machine } from "../../shop/machine.ts";
import type { Shop } from "../../shop/shop.ts";
import type { SetUpState } from "../plan-problem.ts";

/** Every pair of feedstock and nozzle that a plan may meet, numbered in order of first mention. */
export class StateNumbers {
  readonly states: SetUpState[] = [];
  private readonly numberOf = new Map<string, number>();
  private readonly familyOf: ReadonlyMap<string, string>;

  constructor(shop: Shop) {
    this.familyOf = new Map(shop.feedstocks.map((feedstock) => [feedstock.id, feedstock.family]));
  }

  /** The number of a state, which is new when it was not met before. */
  of({ feedstockId, nozzleId }: LoadedState): number {
    const key = JSON.stringify([feedstockId, nozzleId]);
    const known = this.numberOf.get(key);
    if (known !== undefined) return known;
    const number = this.states.length;
    this.states.push({ feedstockId, nozzleId, family: this.familyOf.get(feedstockId) ?? "" });
    this.numberOf.set(key, number);
    return number;
  }
}

/** Minutes and money of every change of state on one class of machines, as `MachineClass` describes them. */
export interface ChangeoverTable {
  readonly changeoverMin: Float64Array;
  readonly changeoverCost: Float64Array;
}

/**
 * Fills the table of one class for the states that it can be in. `to` states are those it has options for, `from` states
 * those and what is loaded. Pairs that cannot happen hold Infinity. The last row is "nothing loaded".
 */
export function changeoverTable(
  costing: BuildCosting,
  machine: Machine,
  states: readonly SetUpState[],
  fromStates: ReadonlySet<number>,
  toStates: ReadonlySet<number>,
): ChangeoverTable {
  const size = states.length;
  const changeoverMin = new Float64Array((size + 1) * size).fill(Infinity);
  const changeoverCost = new Float64Array((size + 1) * size).fill(Infinity);
  for (const from of [...fromStates, size]) {
    for (const to of toStates) {
      const target = states[to];
      if (!target) throw new RangeError(`no such state: ${to}`);
      const { minutes, cost } = costing.changeoverAmounts(machine, states[from] ?? null, target);
      changeoverMin[from * size + to] = Math.ceil(minutes);
      changeoverCost[from * size + to] = cost;
    }
  }
  return { changeoverMin, changeoverCost };
}

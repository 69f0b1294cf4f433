import { CHOSEN, Choices, OPEN } from "./assignment-choices.ts";
import { Knapsack } from "./knapsack.ts";

/** A generalized assignment to be made at least cost, by pair (machine x jobs + job). Costs and loads are whole numbers. */
export interface AssignmentTask {
  readonly cost: Float64Array;
  readonly load: Int32Array;
  readonly capacity: readonly number[];
}

/**
 * The relaxation in which a job may go to several machines or none, at a price: each machine packs what pays, by itself. Its
 * value is a lower bound whatever the prices (Lagrange; for this problem Fisher, Jaikumar & Van Wassenhove 1986, from
 * memory), and the packings tell what each pair costs if it is decided the other way.
 */
export class PricedAssignment {
  readonly choices: Choices;
  /** by job: to how many machines the packings take it */
  readonly uses: Int32Array;
  /** by pair: 1 where the packing has it */
  readonly packed: Uint8Array;
  /** by open pair: rise of the bound if it is decided against the packing; filled in when asked for */
  readonly rise: Float64Array;
  private readonly task: AssignmentTask;
  private readonly knapsack: Knapsack;
  private readonly items: { weight: Int32Array; value: Float64Array; count: number };
  private readonly jobOf: Int32Array;

  constructor(task: AssignmentTask) {
    const jobs = task.cost.length / task.capacity.length;
    this.task = task;
    this.choices = new Choices(task.load, task.capacity);
    this.uses = new Int32Array(jobs);
    this.packed = new Uint8Array(task.cost.length);
    this.rise = new Float64Array(task.cost.length);
    this.jobOf = new Int32Array(jobs);
    this.items = { weight: new Int32Array(jobs), value: new Float64Array(jobs), count: 0 };
    this.knapsack = new Knapsack(jobs, Math.max(...task.capacity), this.items);
  }

  /** The bound at these prices by job, under the choices so far; `withRise` also fills in `rise`. */
  bound(prices: Float64Array, withRise: boolean): number {
    this.uses.fill(0);
    let total = prices.reduce((sum, price) => sum + price, 0);
    for (let machine = 0; machine < this.choices.machines; machine++) {
      total += this.packMachine(machine, prices, withRise);
    }
    return total;
  }

  private packMachine(machine: number, prices: Float64Array, withRise: boolean): number {
    const { knapsack, packed, rise, items, uses } = this;
    const capacity = this.choices.left[machine]!;
    const chosen = this.gather(machine, prices, withRise);
    const least = knapsack.pack(capacity);
    if (withRise) knapsack.force(capacity);
    const first = machine * uses.length;
    for (let item = 0; item < items.count; item++) {
      const job = this.jobOf[item]!;
      packed[first + job] = knapsack.taken[item]!;
      uses[job]! += knapsack.taken[item]!;
      if (withRise) rise[first + job] = knapsack.rise[item]!;
    }
    return chosen + least;
  }

  /** Lists a machine's open jobs that pay (all of them when `isWhole`); gives the value of its chosen ones. */
  private gather(machine: number, prices: Float64Array, isWhole: boolean): number {
    const { items, task, choices, uses } = this;
    let chosen = 0;
    items.count = 0;
    for (let job = 0; job < uses.length; job++) {
      const pair = machine * uses.length + job;
      const value = task.cost[pair]! - prices[job]!;
      this.packed[pair] = choices.of[pair] === CHOSEN ? 1 : 0;
      if (choices.of[pair] === CHOSEN) {
        chosen += value;
        uses[job]!++;
      }
      if (choices.of[pair] !== OPEN || (value >= 0 && !isWhole)) continue;
      this.jobOf[items.count] = job;
      items.weight[items.count] = task.load[pair]!;
      items.value[items.count++] = value;
    }
    return chosen;
  }

  /** Decides every open pair whose other way would lift a bound, just made with `rise`, above the target. */
  decide(bound: number, target: number): void {
    const { choices, rise, packed } = this;
    const room = target - bound + ROUNDING;
    for (let pair = 0; pair < rise.length && !choices.isImpossible; pair++) {
      if (choices.of[pair] !== OPEN || rise[pair]! <= room) continue;
      if (packed[pair] === 1) choices.choose(pair);
      else choices.ruleOut(pair);
    }
    choices.follow();
  }

  /** Machine of each job as the packings have it, or null where a job has several or none. */
  assignment(): number[] | null {
    if (this.uses.some((count) => count !== 1)) return null;
    const jobs = this.uses.length;
    return Array.from(this.uses, (_, job) =>
      this.task.capacity.findIndex((__, machine) => this.packed[machine * jobs + job] === 1),
    );
  }
}

/** Bounds that differ by less are equal. */
export const ROUNDING = 1e-6;

import { OPEN } from "./assignment-choices.ts";
import { type AssignmentTask, PricedAssignment, ROUNDING } from "./assignment-prices.ts";

/** What the tree found out. */
export interface TreeAnswer {
  /** machine of each job at least cost, or null where the time was up before one was found */
  readonly machineOf: readonly number[] | null;
  /** no assignment costs less; Infinity where there is none at all */
  readonly bound: number;
}

/** How long prices are climbed: at the root of a tree and below it. */
const ROOT_CLIMB = { steps: 400, patience: 15, stride: 1, every: 10 };
const NODE_CLIMB = { steps: 30, patience: 6, stride: 0.5, every: 5 };
const SHORTER_STRIDE = 0.6;
const LEAST_STRIDE = 0.02;
/** Share of the last direction kept in the next. */
const MOMENTUM = 0.4;
const LEAST_GAIN = 1e-4;

/**
 * The cheapest assignment by proof: is there one that costs no more than a target, from the lower bound upwards, one unit at
 * a time? For each target a depth-first tree decides pairs; in every node the prices are climbed by subgradient steps and
 * pairs that could only lead above the target are decided at once. Source of the scheme: Posta, Ferland & Michelon 2012,
 * "An exact method with variable fixing for solving the generalized assignment problem" (from memory).
 */
export function cheapestAssignment(
  task: AssignmentTask,
  startPrices: Float64Array,
  isTimeLeft: () => boolean,
): TreeAnswer {
  const dearest = dearestCost(task);
  let target = Math.ceil(new PricedAssignment(task).bound(startPrices, false) - ROUNDING);
  let prices = startPrices;
  for (; target <= dearest; target++) {
    const tree = new AssignmentTree(task, target, isTimeLeft);
    const machineOf = tree.search(prices);
    if (machineOf || tree.isCutShort) return { machineOf, bound: target };
    prices = tree.rootPrices;
  }
  return { machineOf: null, bound: Infinity };
}

/** Every job at its dearest. */
function dearestCost({ cost, capacity }: AssignmentTask): number {
  const jobs = cost.length / capacity.length;
  let sum = 0;
  for (let job = 0; job < jobs; job++) {
    sum += Math.max(...capacity.map((_, machine) => cost[machine * jobs + job]!));
  }
  return sum;
}

/** The tree of one target. */
class AssignmentTree {
  isCutShort = false;
  rootPrices: Float64Array = new Float64Array(0);
  private readonly priced: PricedAssignment;
  private readonly target: number;
  private readonly isTimeLeft: () => boolean;

  constructor(task: AssignmentTask, target: number, isTimeLeft: () => boolean) {
    this.priced = new PricedAssignment(task);
    this.target = target;
    this.isTimeLeft = isTimeLeft;
  }

  /** Machine of each job at no more than the target, or null. */
  search(startPrices: Float64Array): readonly number[] | null {
    const climb = new Climb(this.priced, this.target, startPrices);
    climb.run(ROOT_CLIMB);
    this.rootPrices = climb.best;
    return climb.isDead ? null : (climb.found ?? this.branch(climb.best));
  }

  private node(startPrices: Float64Array): readonly number[] | null {
    if (!this.isTimeLeft()) this.isCutShort = true;
    if (this.isCutShort) return null;
    const climb = new Climb(this.priced, this.target, startPrices);
    climb.run(NODE_CLIMB);
    return climb.isDead ? null : (climb.found ?? this.branch(climb.best));
  }

  /** Decides the pair that matters most first as the packing has it, then the other way. */
  private branch(prices: Float64Array): readonly number[] | null {
    const { priced, target } = this;
    const { choices } = priced;
    const bound = priced.bound(prices, true);
    priced.decide(bound, target);
    if (choices.isImpossible) return null;
    const pair = this.pairToDecide();
    if (pair < 0) return priced.bound(prices, false) > target + ROUNDING ? null : priced.assignment();
    const isPacked = priced.packed[pair] === 1;
    for (const isChosen of [isPacked, !isPacked]) {
      const mark = choices.mark();
      if (isChosen) choices.choose(pair);
      else choices.ruleOut(pair);
      choices.follow();
      const found = choices.isImpossible ? null : this.node(prices);
      choices.undoTo(mark);
      if (found || this.isCutShort) return found;
    }
    return null;
  }

  private pairToDecide(): number {
    const { choices, rise } = this.priced;
    let most = -1;
    for (let pair = 0; pair < rise.length; pair++) {
      if (choices.of[pair] !== OPEN) continue;
      if (most < 0 || rise[pair]! > rise[most]!) most = pair;
    }
    return most;
  }
}

/** Steps towards prices with a higher bound, from the best so far, shorter when none comes. */
class Climb {
  best: Float64Array;
  /** no assignment under the choices costs as little as the target */
  isDead = false;
  found: readonly number[] | null = null;
  private readonly priced: PricedAssignment;
  private readonly target: number;
  private readonly prices: Float64Array;
  private readonly direction: Float64Array;
  private bestBound = -Infinity;

  constructor(priced: PricedAssignment, target: number, startPrices: Float64Array) {
    this.priced = priced;
    this.target = target;
    this.prices = startPrices.slice();
    this.best = startPrices.slice();
    this.direction = new Float64Array(startPrices.length);
  }

  run({ steps, patience, stride, every }: typeof ROOT_CLIMB): void {
    let length = stride;
    let waited = 0;
    for (let step = 0; step < steps && length >= LEAST_STRIDE; step++) {
      const bound = this.look(step % every === 0);
      if (this.isDead || this.found) return;
      if (bound > this.bestBound + LEAST_GAIN) {
        this.bestBound = bound;
        this.best.set(this.prices);
        waited = 0;
      } else if (++waited >= patience) {
        length *= SHORTER_STRIDE;
        waited = 0;
        this.prices.set(this.best);
      }
      this.move(length * (this.target + 1 - bound));
    }
  }

  private look(decides: boolean): number {
    const { priced, target } = this;
    const bound = priced.bound(this.prices, decides);
    if (bound > target + ROUNDING) this.isDead = true;
    else this.found = priced.assignment();
    if (this.isDead || this.found || !decides) return bound;
    priced.decide(bound, target);
    this.isDead = priced.choices.isImpossible;
    return bound;
  }

  private move(length: number): void {
    const { direction, priced, prices } = this;
    let square = 0;
    for (let job = 0; job < direction.length; job++) {
      direction[job] = 1 - priced.uses[job]! + MOMENTUM * direction[job]!;
      square += direction[job]! ** 2;
    }
    if (square === 0) return;
    for (let job = 0; job < direction.length; job++) prices[job]! += (length / square) * direction[job]!;
  }
}

import { boughtMoney } from "./line-money.ts";
import { Insertion } from "./insertion.ts";
import type { SearchState } from "./search-state.ts";
import type { Trial } from "./trial.ts";

/** How places are looked for. */
export interface PlaceRule {
  /** true: only after the last build of each machine */
  readonly atEnd: boolean;
  /** passes over a position at random; null: never */
  readonly skip: (() => boolean) | null;
}

/** Finds places for copies that have none: the cheapest by copy over all options, machines and positions, or bought out. */
export class Recreate {
  private readonly trial: Trial;
  private readonly state: SearchState;
  private readonly insertion: Insertion;
  // The best place found.
  private option = -1;
  private machine = -1;
  private position = -1;
  private copies = 0;
  private perCopy = Infinity;

  constructor(trial: Trial) {
    this.trial = trial;
    this.state = trial.state;
    this.insertion = new Insertion(trial.state);
  }

  /** Places copies of a line until none is left or no place is found. */
  placeLine(line: number, rule: PlaceRule): void {
    const { state } = this;
    while (state.unplaced[line]! > 0) {
      if (!this.find(line, rule) || !this.insert(line)) return;
    }
  }

  private find(line: number, rule: PlaceRule): boolean {
    const { state } = this;
    const { data } = state;
    const wanted = state.unplaced[line]!;
    this.perCopy = state.penalty;
    this.copies = 0;
    this.option = -1;
    if (data.buyPrice[line]! < Infinity) this.tryBuying(line, wanted);
    for (const option of data.lineOptions[line]!) {
      const copies = buildSize(wanted, data.optionMin[option]!, data.optionMax[option]!);
      if (copies > 0) this.tryOption(option, copies, rule);
    }
    return this.copies > 0;
  }

  private tryBuying(line: number, copies: number): void {
    const { state } = this;
    const { data } = state;
    const bought = state.boughtOut[line]!;
    const arriveMin = data.buyArriveMin[line]!;
    const lateMin = arriveMin - Math.max(data.dueMin[line]!, state.lineEnd[line]!);
    const money =
      boughtMoney(data, state.penalty, line, bought + copies) -
      boughtMoney(data, state.penalty, line, bought) +
      Math.max(0, lateMin) * data.wholeRate[line]!;
    if (money / copies >= this.perCopy) return;
    this.perCopy = money / copies;
    this.copies = copies;
  }

  private tryOption(option: number, copies: number, rule: PlaceRule): void {
    const { state, insertion } = this;
    insertion.prepare(option, copies);
    if (insertion.standingCost() >= this.perCopy * copies) return;
    for (const machine of state.data.optionMachines[option]!) {
      const from = rule.atEnd ? state.length[machine]! : 0;
      const money = insertion.scan(machine, this.perCopy * copies, rule.skip, from);
      if (money === Infinity) continue;
      this.perCopy = money / copies;
      this.option = option;
      this.machine = machine;
      this.position = insertion.position;
      this.copies = copies;
    }
  }

  private insert(line: number): boolean {
    const { state, trial, option, copies } = this;
    const bought = state.boughtOut[line]!;
    const left = state.unplaced[line]! - copies;
    if (option < 0) {
      trial.setCounts(line, bought + copies, left);
    } else {
      const build = trial.addSingle(option, copies);
      if (build < 0) return false;
      trial.setCounts(line, bought, left);
      trial.splices.open(this.machine, this.position, this.position);
      trial.splices.put(build);
    }
    if (trial.evaluate() === Infinity) {
      trial.discard();
      return false;
    }
    trial.commit();
    return true;
  }
}

/**
 * Copies for the next of as few and as even builds as hold `wanted` copies; 0 where not even one build can be filled.
 * Example: 10 wanted, at most 4 a build: 4 (then 3 and 3); at least 4: 4.
 */
export function buildSize(wanted: number, least: number, most: number): number {
  if (wanted < least || most < least) return 0;
  const even = Math.ceil(wanted / Math.ceil(wanted / most));
  return Math.min(most, Math.max(least, even));
}

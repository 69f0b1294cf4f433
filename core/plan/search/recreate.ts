import type { Random } from "../../units/random.ts";
import { boughtMoney } from "./line-money.ts";
import { Insertion, type Positions } from "./insertion.ts";
import { PlatformJoin } from "./platform-join.ts";
import type { SearchState } from "./search-state.ts";
import type { Trial } from "./trial.ts";

/** How places are looked for. */
export interface PlaceRule {
  /** true: only after the last build of each machine */
  readonly atEnd: boolean;
  /** for passing over positions, other sizes of builds and shared platforms; null: none of these */
  readonly random: Random | null;
}

/** Cheap places are looked at first: they make the others be given up early. */
const ANYWHERE: readonly Positions[] = ["beside", "apart"];
const AT_END: readonly Positions[] = ["end"];

/** There is always time. */
export const ALWAYS = (): boolean => true;

/** In place of an option: bought out, or on the platform of a build that there is. */
const BOUGHT = -1;
const JOINED = -2;
/** Share of builds that may be smaller than they could be. */
const FEWER_SHARE = 0.1;

/** Finds places for copies that have none: the cheapest by copy over all options, machines and positions, or bought out. */
export class Recreate {
  private readonly trial: Trial;
  private readonly state: SearchState;
  private readonly insertion: Insertion;
  private readonly join: PlatformJoin | null;
  /** copies of the next build by option */
  private readonly sizes: Int32Array;
  // The best place found.
  private option = BOUGHT;
  private machine = -1;
  private position = -1;
  private copies = 0;
  private perCopy = Infinity;

  /** `random` is for shared platforms; null: none are tried. */
  constructor(trial: Trial, random: Random | null) {
    const isMixing = random !== null && trial.state.data.hasMixing;
    this.trial = trial;
    this.state = trial.state;
    this.insertion = new Insertion(trial.state);
    this.sizes = new Int32Array(trial.state.data.optionLine.length);
    this.join = isMixing ? new PlatformJoin(trial, random) : null;
  }

  /** Places copies of a line until none is left, no place is found or `goOn` says no. */
  placeLine(line: number, rule: PlaceRule, goOn: () => boolean = ALWAYS): void {
    const { state } = this;
    while (state.unplaced[line]! > 0 && goOn()) {
      if (!this.find(line, rule) || !this.insert(line)) return;
    }
  }

  private find(line: number, rule: PlaceRule): boolean {
    const { state } = this;
    const { data } = state;
    const wanted = state.unplaced[line]!;
    this.perCopy = state.penalty;
    this.copies = 0;
    this.option = BOUGHT;
    if (data.buyPrice[line]! < Infinity) this.tryBuying(line, wanted);
    const options = data.lineOptions[line]!;
    for (const option of options) {
      this.sizes[option] = buildSize(wanted, data.optionMin[option]!, this.mostCopies(option, rule));
    }
    for (const positions of rule.atEnd ? AT_END : ANYWHERE) {
      for (const option of options) this.tryOption(option, positions, rule.random);
    }
    if (this.join) this.tryJoining(this.join, line, wanted);
    return this.copies > 0;
  }

  /** Most copies for the next build: what the option takes, now and then fewer. */
  private mostCopies(option: number, { random }: PlaceRule): number {
    const most = this.state.data.optionMax[option]!;
    if (random === null || most < 2 || random() >= FEWER_SHARE) return most;
    return 1 + Math.floor(random() * most);
  }

  private tryJoining(join: PlatformJoin, line: number, wanted: number): void {
    const perCopy = join.find(line, wanted, this.perCopy);
    if (perCopy >= this.perCopy) return;
    this.perCopy = perCopy;
    this.copies = join.copies;
    this.option = JOINED;
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

  private tryOption(option: number, positions: Positions, random: Random | null): void {
    const { state, insertion } = this;
    const copies = this.sizes[option]!;
    if (copies === 0) return;
    insertion.prepare(option, copies);
    if (insertion.leastCost() >= this.perCopy * copies) return;
    for (const machine of state.data.optionMachines[option]!) {
      const money = insertion.scan(machine, this.perCopy * copies, random, positions);
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
    if (option === BOUGHT) {
      trial.setCounts(line, bought + copies, left);
    } else if (option === JOINED) {
      if (!this.join?.writeBest(line)) return false;
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

import type { Random } from "../../units/random.ts";
import { usualRise } from "./heat.ts";
import { buyOrMake, splitBuild, transferCopies } from "./moves-copies.ts";
import { changeOption, type Move, moveBlock, relocate, swapAcross, swapInMachine } from "./moves-order.ts";
import { mixOrPart } from "./moves-platform.ts";
import { holdOrLoosen } from "./moves-earlier.ts";
import { Ruin } from "./ruin.ts";
import { SavedPlan } from "./saved-plan.ts";
import { settle } from "./settle.ts";
import type { Trial } from "./trial.ts";
import { Walk } from "./walk.ts";

/** How far a search is after some more steps: 0 at its start, 1 at its end or when it shall stop. */
export type Progress = (steps: number, bestMoney: number) => number;

/** Moves and how often each is drawn, parts of the sum. */
const MOVES: readonly (readonly [Move, number])[] = [
  [relocate, 44],
  [swapInMachine, 15],
  [swapAcross, 13],
  [changeOption, 5],
  [moveBlock, 8],
  [transferCopies, 6],
  [splitBuild, 4],
  [buyOrMake, 2],
  [mixOrPart, 3],
  [holdOrLoosen, 3],
];

/** Temperatures: a share of a usual rise at first, by how much it has fallen in the end, how much more in later cycles. */
const START_SHARE = 0.1;
const FALL = 250;
const HEATS = [1, 5, 20];
/** Many cycles can afford to start hotter. */
const MANY_CYCLES = 12;
const HEATS_OF_MANY = [5, 20, 80, 1];
/** Moves between two looks at the clock; a round of ruin and recreate counts as as many steps. */
const MOVES_A_LOOK = 64;
/** Share of the time before annealing begins, and rounds of both after it. */
const RUIN_FIRST = 0.2;
const ROUNDS = 6;

/**
 * Improves a plan: annealing by small moves and ruin and recreate in turn, under one falling temperature. It ends when
 * `progress` says 1 and leaves the best plan found in the trial's state. Source: Kirkpatrick, Gelatt & Vecchi
 * 1983 (annealing, from memory).
 */
export class Improver {
  readonly best = new SavedPlan();
  private readonly trial: Trial;
  private readonly random: Random;
  private readonly walk: Walk;
  private readonly ruin: Ruin;
  private readonly draw: Move[];
  /** the plan as it is now is better than `best` */
  private isAhead = false;

  constructor(trial: Trial, random: Random) {
    this.trial = trial;
    this.random = random;
    this.walk = new Walk(trial, random);
    this.ruin = new Ruin(this.walk);
    this.draw = MOVES.filter(([move]) => isUseful(move, trial)).flatMap(([move, parts]) =>
      Array.from({ length: parts }, () => move),
    );
    this.best.save(trial.state);
  }

  /**
   * Runs until `progress` says 1, in so many cycles of falling temperature, later ones from higher up; tells `onBest`
   * of better plans when it looks at the clock.
   */
  run(progress: Progress, cycles: number, onBest: () => void): void {
    const { state } = this.trial;
    let done = progress(0, this.bestMoney());
    let cycle = -1;
    let isRuin = false;
    let hottest = 0;
    while (done < 1) {
      const inCycle = (done * cycles) % 1;
      const ruinNow = isRuinTime(inCycle);
      if (ruinNow !== isRuin) this.tidy();
      isRuin = ruinNow;
      if (Math.floor(done * cycles) > cycle) {
        cycle = Math.floor(done * cycles);
        hottest = this.startCycle(cycle, cycles > MANY_CYCLES ? HEATS_OF_MANY : HEATS);
      }
      const temperature = hottest * FALL ** -inCycle;
      const steps = isRuin ? this.ruinOnce(temperature) : this.annealSome(temperature);
      if (this.isAhead) onBest();
      done = progress(steps, this.bestMoney());
    }
    this.keepBest();
    this.best.restore(this.trial);
    settle(this.trial);
    this.best.save(state);
  }

  /** Goes back to the best plan; gives the temperature to start from. */
  private startCycle(cycle: number, heats: readonly number[]): number {
    if (cycle > 0) {
      this.keepBest();
      this.best.restore(this.trial);
    }
    const heat = heats[cycle % heats.length]!;
    return heat * START_SHARE * usualRise(this.walk, this.draw);
  }

  private bestMoney(): number {
    return this.isAhead ? this.trial.state.money : this.best.money;
  }

  /** The state is about to get worse, or somebody asks: the best so far is put by. */
  keepBest(): void {
    if (!this.isAhead) return;
    this.best.save(this.trial.state);
    this.isAhead = false;
  }

  private tidy(): void {
    this.keepBest();
    settle(this.trial);
    this.trial.recount();
    this.note();
  }

  private note(): void {
    if (this.trial.state.money < this.best.money - LEAST_GAIN) this.isAhead = true;
  }

  private ruinOnce(temperature: number): number {
    const { state } = this.trial;
    const limit = -temperature * Math.log(1 - this.random());
    const before = state.money;
    if (this.isAhead) this.keepBest();
    if (this.ruin.round(limit) && state.money < before) this.note();
    return MOVES_A_LOOK;
  }

  private annealSome(temperature: number): number {
    for (let turn = 0; turn < MOVES_A_LOOK; turn++) this.moveOnce(temperature);
    return MOVES_A_LOOK;
  }

  private moveOnce(temperature: number): void {
    const { trial, walk, draw } = this;
    const move = draw[(this.random() * draw.length) | 0]!;
    if (!move(walk)) return;
    const delta = trial.evaluate();
    if (delta > 0 && delta > -temperature * Math.log(1 - this.random())) {
      trial.discard();
      return;
    }
    if (delta > 0) this.keepBest();
    trial.commit();
    if (delta < 0) this.note();
  }
}

function isRuinTime(inCycle: number): boolean {
  return inCycle < RUIN_FIRST || (((inCycle - RUIN_FIRST) / (1 - RUIN_FIRST)) * ROUNDS) % 1 >= 0.5;
}

/** Smaller gains are dust. */
const LEAST_GAIN = 1e-7;

function isUseful(move: Move, { state }: Trial): boolean {
  if (move === buyOrMake) return state.data.hasBuyOut;
  if (move === mixOrPart) return state.data.hasMixing;
  if (move === holdOrLoosen) return state.data.earlier.cost > 0;
  return true;
}

/** A pair of machine and job is open, chosen or ruled out. */
export const OPEN = 0;
export const CHOSEN = 1;
export const RULED_OUT = 2;

/**
 * What is decided of an assignment of jobs to machines, pair by pair (machine x jobs + job), with what follows: a job has
 * one machine, a job with one machine left goes there. All of it can be taken back to an earlier mark.
 */
export class Choices {
  readonly machines: number;
  readonly jobs: number;
  readonly of: Uint8Array;
  /** capacity that the chosen jobs leave, by machine */
  readonly left: Int32Array;
  /** the choices so far leave no assignment */
  isImpossible = false;
  private readonly load: Int32Array;
  private readonly machinesLeft: Int32Array;
  private readonly trail: number[] = [];
  private readonly lastChance: number[] = [];

  /** `load` by pair; capacity by machine. */
  constructor(load: Int32Array, capacity: readonly number[]) {
    this.machines = capacity.length;
    this.jobs = load.length / capacity.length;
    this.load = load;
    this.of = new Uint8Array(load.length);
    this.left = Int32Array.from(capacity);
    this.machinesLeft = new Int32Array(this.jobs).fill(this.machines);
  }

  /** Where the choices stand, to come back to by `undoTo`. */
  mark(): number {
    return this.trail.length;
  }

  ruleOut(pair: number): void {
    if (this.of[pair] === RULED_OUT) return;
    if (this.of[pair] === CHOSEN) {
      this.isImpossible = true;
      return;
    }
    const job = pair % this.jobs;
    this.of[pair] = RULED_OUT;
    this.trail.push(pair);
    this.machinesLeft[job]!--;
    if (this.machinesLeft[job] === 0) this.isImpossible = true;
    if (this.machinesLeft[job] === 1) this.lastChance.push(job);
  }

  choose(pair: number): void {
    if (this.of[pair] === CHOSEN) return;
    const machine = Math.floor(pair / this.jobs);
    const job = pair % this.jobs;
    if (this.of[pair] === RULED_OUT || this.left[machine]! < this.load[pair]!) {
      this.isImpossible = true;
      return;
    }
    this.of[pair] = CHOSEN;
    this.trail.push(pair);
    this.left[machine]! -= this.load[pair]!;
    for (let other = 0; other < this.machines; other++) {
      if (other !== machine) this.ruleOut(other * this.jobs + job);
    }
  }

  /** Chooses the last machine left of every job that has but one. */
  follow(): void {
    while (!this.isImpossible) {
      const job = this.lastChance.pop();
      if (job === undefined) return;
      for (let machine = 0; machine < this.machines; machine++) {
        const pair = machine * this.jobs + job;
        if (this.of[pair] === OPEN) this.choose(pair);
      }
    }
  }

  undoTo(mark: number): void {
    while (this.trail.length > mark) {
      const pair = this.trail.pop()!;
      if (this.of[pair] === CHOSEN) this.left[Math.floor(pair / this.jobs)]! += this.load[pair]!;
      else this.machinesLeft[pair % this.jobs]!++;
      this.of[pair] = OPEN;
    }
    this.lastChance.length = 0;
    this.isImpossible = false;
  }
}

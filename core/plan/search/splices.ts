const MOST_SPLICES = 8;

/**
 * Changes of machines' sequences, not made yet: on a machine, the builds at positions `[from, to)` give way to a list of
 * builds. At most one splice for each machine.
 */
export class Splices {
  count = 0;
  readonly machine = new Int32Array(MOST_SPLICES);
  readonly from = new Int32Array(MOST_SPLICES);
  readonly to = new Int32Array(MOST_SPLICES);
  /** the list of splice `i` is `[start[i], end[i])` of `builds` */
  readonly start = new Int32Array(MOST_SPLICES);
  readonly end = new Int32Array(MOST_SPLICES);
  readonly builds: Int32Array;
  private used = 0;

  constructor(capacity: number) {
    this.builds = new Int32Array(capacity);
  }

  /** Begins the splice of a machine; `put` adds to its list. */
  open(machine: number, from: number, to: number): void {
    const index = this.count++;
    this.machine[index] = machine;
    this.from[index] = from;
    this.to[index] = to;
    this.start[index] = this.used;
    this.end[index] = this.used;
  }

  put(build: number): void {
    this.builds[this.used++] = build;
    this.end[this.count - 1] = this.used;
  }

  /** Adds the builds of a sequence at positions `[from, to)`. */
  putRange(sequence: Int32Array, from: number, to: number): void {
    for (let position = from; position < to; position++) this.put(sequence[position]!);
  }

  clear(): void {
    this.count = 0;
    this.used = 0;
  }
}

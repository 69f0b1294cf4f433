const FEWEST_SLOTS = 1024;

/**
 * Gives points with equal coordinates one corner number, in the order of their first coming. A hash table with open
 * addressing over typed arrays: at most half of its slots are taken, so a look-up reads few of them.
 * Example: (0,0,0), (1,0,0), (0,0,0) give 0, 1, 0.
 */
export class Welder {
  #coordinates: Float64Array;
  #count = 0;
  /** corner number + 1 in each slot that is taken, else 0 */
  #slots: Int32Array;
  readonly #scratch = new Float64Array(3);
  readonly #bits = new Uint32Array(this.#scratch.buffer);

  constructor(corners: number) {
    let slots = FEWEST_SLOTS;
    while (slots < 2 * corners) slots *= 2;
    this.#slots = new Int32Array(slots);
    this.#coordinates = new Float64Array(3 * Math.max(corners, FEWEST_SLOTS / 2));
  }

  get count(): number {
    return this.#count;
  }

  /** The number of the corner at a point; -0 and 0 are the same. */
  cornerAt(x: number, y: number, z: number): number {
    const mask = this.#slots.length - 1;
    let slot = this.#hash(x, y, z) & mask;
    for (;;) {
      const corner = (this.#slots[slot] ?? 0) - 1;
      if (corner < 0) return this.#add(slot, x, y, z);
      const at = 3 * corner;
      if (this.#coordinates[at] === x && this.#coordinates[at + 1] === y && this.#coordinates[at + 2] === z) {
        return corner;
      }
      slot = (slot + 1) & mask;
    }
  }

  /** x, y, z of one corner after the other, times a factor. */
  corners(factor: number): Float64Array {
    const taken = this.#coordinates.slice(0, 3 * this.#count);
    if (factor !== 1) for (let at = 0; at < taken.length; at++) taken[at] = (taken[at] ?? 0) * factor;
    return taken;
  }

  #add(slot: number, x: number, y: number, z: number): number {
    const corner = this.#count;
    const at = 3 * corner;
    if (at === this.#coordinates.length) this.#growCorners();
    this.#coordinates[at] = x + 0;
    this.#coordinates[at + 1] = y + 0;
    this.#coordinates[at + 2] = z + 0;
    this.#slots[slot] = corner + 1;
    this.#count = corner + 1;
    if (2 * this.#count > this.#slots.length) this.#growSlots();
    return corner;
  }

  /** All bits of the three coordinates, mixed so that those of round numbers (mostly zeros) spread too. */
  #hash(x: number, y: number, z: number): number {
    this.#scratch[0] = x + 0;
    this.#scratch[1] = y + 0;
    this.#scratch[2] = z + 0;
    const bits = this.#bits;
    const mixedX = spread((bits[0] ?? 0) ^ Math.imul(bits[1] ?? 0, 0x9e3779b1));
    const mixedY = spread((bits[2] ?? 0) ^ Math.imul(bits[3] ?? 0, 0x85ebca6b));
    const mixedZ = spread((bits[4] ?? 0) ^ Math.imul(bits[5] ?? 0, 0xc2b2ae35));
    const mixed =
      Math.imul(mixedX, 0x27d4eb2f) + Math.imul(mixedY, 0x165667b1) + Math.imul(mixedZ, 0x2c1b3c6d);
    return mixed ^ (mixed >>> 15);
  }

  #growCorners(): void {
    const larger = new Float64Array(2 * this.#coordinates.length);
    larger.set(this.#coordinates);
    this.#coordinates = larger;
  }

  #growSlots(): void {
    this.#slots = new Int32Array(2 * this.#slots.length);
    const mask = this.#slots.length - 1;
    for (let corner = 0; corner < this.#count; corner++) {
      const at = 3 * corner;
      const x = this.#coordinates[at] ?? 0;
      let slot = this.#hash(x, this.#coordinates[at + 1] ?? 0, this.#coordinates[at + 2] ?? 0) & mask;
      while (this.#slots[slot] !== 0) slot = (slot + 1) & mask;
      this.#slots[slot] = corner + 1;
    }
  }
}

/** Carries high bits down: low bits of round numbers are all zero. */
function spread(bits: number): number {
  const mixed = Math.imul(bits ^ (bits >>> 16), 0x7feb352d);
  return mixed ^ (mixed >>> 15);
}

const FEWEST_SLOTS = 1024;
const MINUS_ZERO = 0x80000000 | 0;

/**
 * As `Welder`, for points of three float32 given by their bits: nothing but whole numbers is compared, and half as much memory
 * is read, which is what a large binary STL waits for. Example: the bits of (0,0,0), (1,0,0), (-0,0,0) give 0, 1, 0.
 */
export class FloatWelder {
  /** bits of x, y, z of one corner after the other */
  #bits: Int32Array;
  #count = 0;
  /** corner number + 1 in each slot that is taken, else 0 */
  #slots: Int32Array;

  constructor(corners: number) {
    let slots = FEWEST_SLOTS;
    while (slots < 2 * corners) slots *= 2;
    this.#slots = new Int32Array(slots);
    this.#bits = new Int32Array(3 * Math.max(corners, FEWEST_SLOTS / 2));
  }

  /** The number of the corner at a point; -0 and 0 are the same. */
  cornerAt(x: number, y: number, z: number): number {
    const bitsX = x === MINUS_ZERO ? 0 : x;
    const bitsY = y === MINUS_ZERO ? 0 : y;
    const bitsZ = z === MINUS_ZERO ? 0 : z;
    const slots = this.#slots;
    const bits = this.#bits;
    const mask = slots.length - 1;
    let slot = hashOf(bitsX, bitsY, bitsZ) & mask;
    for (;;) {
      const corner = slots[slot]! - 1;
      if (corner < 0) return this.#add(slot, bitsX, bitsY, bitsZ);
      const at = 3 * corner;
      if (bits[at] === bitsX && bits[at + 1] === bitsY && bits[at + 2] === bitsZ) return corner;
      slot = (slot + 1) & mask;
    }
  }

  /** x, y, z of one corner after the other, times a factor. */
  corners(factor: number): Float64Array {
    const corners = new Float64Array(new Float32Array(this.#bits.buffer, 0, 3 * this.#count));
    if (factor !== 1) for (let at = 0; at < corners.length; at++) corners[at] = corners[at]! * factor;
    return corners;
  }

  #add(slot: number, bitsX: number, bitsY: number, bitsZ: number): number {
    const corner = this.#count;
    const at = 3 * corner;
    if (at === this.#bits.length) this.#growCorners();
    this.#bits[at] = bitsX;
    this.#bits[at + 1] = bitsY;
    this.#bits[at + 2] = bitsZ;
    this.#slots[slot] = corner + 1;
    this.#count = corner + 1;
    if (2 * this.#count > this.#slots.length) this.#growSlots();
    return corner;
  }

  #growCorners(): void {
    const larger = new Int32Array(2 * this.#bits.length);
    larger.set(this.#bits);
    this.#bits = larger;
  }

  #growSlots(): void {
    this.#slots = new Int32Array(2 * this.#slots.length);
    const mask = this.#slots.length - 1;
    for (let corner = 0; corner < this.#count; corner++) {
      const at = 3 * corner;
      let slot = hashOf(this.#bits[at]!, this.#bits[at + 1]!, this.#bits[at + 2]!) & mask;
      while (this.#slots[slot] !== 0) slot = (slot + 1) & mask;
      this.#slots[slot] = corner + 1;
    }
  }
}

/** All bits of the three, mixed so that those of round numbers (mostly zeros) spread too. */
function hashOf(bitsX: number, bitsY: number, bitsZ: number): number {
  const mixedX = Math.imul(bitsX ^ (bitsX >>> 15), 0x7feb352d);
  const mixedY = Math.imul(bitsY ^ (bitsY >>> 15), 0x846ca68b);
  const mixedZ = Math.imul(bitsZ ^ (bitsZ >>> 15), 0x2c1b3c6d);
  const mixed =
    Math.imul(mixedX ^ (mixedY >>> 13) ^ (mixedY << 19), 0x27d4eb2f) ^ (mixedZ >>> 7) ^ (mixedZ << 25);
  return Math.imul(mixed ^ (mixed >>> 16), 0x165667b1) >>> 11;
}

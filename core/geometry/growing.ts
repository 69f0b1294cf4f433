const FIRST_CAPACITY = 1024;

/** Whole numbers from 0 to 2^32 - 1, as many as come, in one typed array that doubles when it is full. */
export class GrowingNumbers {
  #numbers: Uint32Array;
  #length = 0;

  constructor(expected = 0) {
    this.#numbers = new Uint32Array(Math.max(FIRST_CAPACITY, expected));
  }

  get length(): number {
    return this.#length;
  }

  push(number: number): void {
    if (this.#length === this.#numbers.length) {
      const larger = new Uint32Array(2 * this.#length);
      larger.set(this.#numbers);
      this.#numbers = larger;
    }
    this.#numbers[this.#length++] = number;
  }

  /** The number at a place that has one. */
  at(place: number): number {
    return this.#numbers[place] ?? 0;
  }

  /** All numbers, in an array of their own. */
  taken(): Uint32Array {
    return this.#numbers.slice(0, this.#length);
  }
}

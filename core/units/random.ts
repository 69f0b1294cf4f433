/** A seeded source of numbers in [0, 1): the same seed gives the same sequence on every machine. */
export type Random = () => number;

/**
 * A small, fast, seeded generator (32-bit state, Weyl step and two multiply-xorshift rounds; "mulberry32", public domain).
 * Good enough for a search and for simulations of some million draws; not for secrets.
 */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

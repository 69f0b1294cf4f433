/** Two whole numbers of 32 bits that stand for a name; draws that have equal keys are equal in every plan. */
export interface DrawKey {
  readonly a: number;
  readonly b: number;
}

/**
 * The key of a name: its characters folded by multiplication (32-bit FNV-1a of Fowler, Noll and Vo, from memory) from two
 * starts, then mixed. Example: equal names have equal keys; "F1" and "F2" have none in common.
 */
export function drawKey(name: string): DrawKey {
  return { a: mixed(folded(name, 0x811c9dc5)), b: mixed(folded(name, 0x2f0b4c47)) };
}

function folded(name: string, start: number): number {
  let hash = start;
  for (let index = 0; index < name.length; index++) {
    hash = Math.imul(hash ^ name.charCodeAt(index), 0x01000193);
  }
  return hash;
}

/** The key of one run of one seed. Example: run 7 of seed 1 is another key than run 1 of seed 7. */
export function runKey(seed: number, run: number): number {
  return mixed(mixed(seed | 0) + Math.imul(run + 1, 0x9e3779b9));
}

/**
 * A number strictly between 0 and 1 that depends on a run, a key and the place of the draw alone, not on what was drawn
 * before: with and without one more order the other builds meet the same luck ("common random numbers").
 * Example: the same arguments give the same number on every machine.
 */
export function drawAt(run: number, keyA: number, keyB: number, place: number): number {
  const bits = mixed(mixed(run ^ keyA) + keyB + Math.imul(place, 0x9e3779b9));
  return ((bits >>> 0) + 0.5) / 4_294_967_296;
}

/** Spreads every bit over all 32 (finalizer of MurmurHash3, Appleby 2011, public domain, from memory). */
function mixed(bits: number): number {
  let hash = bits ^ (bits >>> 16);
  hash = Math.imul(hash, 0x85ebca6b);
  hash ^= hash >>> 13;
  hash = Math.imul(hash, 0xc2b2ae35);
  return hash ^ (hash >>> 16);
}

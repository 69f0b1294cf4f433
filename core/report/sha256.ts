/**
 * SHA-256 of bytes by FIPS 180-4 (NIST 2015), as 32 bytes, in plain code so that it runs where no platform is.
 * Example: of the bytes of "abc" it starts with BA 78 16 BF.
 */
export function sha256(bytes: readonly number[]): number[] {
  const state = Uint32Array.from(firstWords(8, squareRoot));
  const blocks = padded(bytes);
  const words = new Uint32Array(64);
  for (let offset = 0; offset < blocks.length; offset += BLOCK) mixBlock(state, words, blocks, offset);
  return [...state].flatMap((word) => [word >>> 24, (word >>> 16) & 0xff, (word >>> 8) & 0xff, word & 0xff]);
}

const BLOCK = 64;
const TWO_TO_32 = 4_294_967_296;
const squareRoot = (value: number): number => Math.sqrt(value);
const cubeRoot = (value: number): number => Math.cbrt(value);
/** Round constants: first 32 bits of the fractions of the cube roots of the first 64 primes. */
const ROUND_WORDS = firstWords(64, cubeRoot);

function firstWords(count: number, root: (value: number) => number): number[] {
  const words: number[] = [];
  for (let candidate = 2; words.length < count; candidate += 1) {
    if (isPrime(candidate)) words.push(Math.floor((root(candidate) % 1) * TWO_TO_32) >>> 0);
  }
  return words;
}

function isPrime(value: number): boolean {
  for (let factor = 2; factor * factor <= value; factor += 1) if (value % factor === 0) return false;
  return true;
}

/** The message, a one bit, zeros, and its length in bits as 64 bits: a whole number of blocks. */
function padded(bytes: readonly number[]): Uint8Array {
  const blocks = new Uint8Array(Math.ceil((bytes.length + 9) / BLOCK) * BLOCK);
  blocks.set(bytes);
  blocks[bytes.length] = 0x80;
  const view = new DataView(blocks.buffer);
  view.setUint32(blocks.length - 8, Math.floor((bytes.length * 8) / TWO_TO_32));
  view.setUint32(blocks.length - 4, (bytes.length * 8) >>> 0);
  return blocks;
}

function mixBlock(state: Uint32Array, words: Uint32Array, blocks: Uint8Array, offset: number): void {
  const at = (index: number): number => words[index] ?? 0;
  const view = new DataView(blocks.buffer);
  for (let t = 0; t < 16; t += 1) words[t] = view.getUint32(offset + 4 * t);
  for (let t = 16; t < 64; t += 1) {
    const small0 = turned(at(t - 15), 7) ^ turned(at(t - 15), 18) ^ (at(t - 15) >>> 3);
    const small1 = turned(at(t - 2), 17) ^ turned(at(t - 2), 19) ^ (at(t - 2) >>> 10);
    words[t] = at(t - 16) + small0 + at(t - 7) + small1;
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
  for (let t = 0; t < 64; t += 1) {
    const big1 = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25);
    const first = (h + big1 + ((e & f) ^ (~e & g)) + (ROUND_WORDS[t] ?? 0) + at(t)) >>> 0;
    const big0 = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22);
    const second = (big0 + ((a & b) ^ (a & c) ^ (b & c))) >>> 0;
    [a, b, c, d, e, f, g, h] = [(first + second) >>> 0, a, b, c, (d + first) >>> 0, e, f, g];
  }
  [a, b, c, d, e, f, g, h].forEach((word, index) => {
    state[index] = (state[index] ?? 0) + word;
  });
}

function turned(word: number, bits: number): number {
  return (word >>> bits) | (word << (32 - bits));
}

/** Reversed polynomial of CRC-32 (ISO 3309; PKWARE's ZIP specification). */
const POLYNOMIAL = 0xedb88320;

/** What one byte does to the sum, then what it does with one, two and three zeros after it: four bytes go at a time. */
const TABLES = makeTables();

/** The check sum of a ZIP part, continued over pieces: begin with 0. Example: the bytes of "123456789" give 0xCBF43926. */
export function crc32(sum: number, bytes: Uint8Array): number {
  const [first, second, third, fourth] = TABLES;
  const whole = bytes.length - (bytes.length % 4);
  let rest = ~sum;
  let at = 0;
  for (; at < whole; at += 4) {
    rest ^= bytes[at]! | (bytes[at + 1]! << 8) | (bytes[at + 2]! << 16) | (bytes[at + 3]! << 24);
    rest =
      fourth[rest & 0xff]! ^
      third[(rest >>> 8) & 0xff]! ^
      second[(rest >>> 16) & 0xff]! ^
      first[rest >>> 24]!;
  }
  for (; at < bytes.length; at++) rest = (rest >>> 8) ^ first[(rest ^ bytes[at]!) & 0xff]!;
  return ~rest >>> 0;
}

function makeTables(): readonly [Int32Array, Int32Array, Int32Array, Int32Array] {
  const first = Int32Array.from({ length: 256 }, (_, byte) => {
    let rest = byte;
    for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ POLYNOMIAL : rest >>> 1;
    return rest;
  });
  const withZero = (before: Int32Array): Int32Array =>
    before.map((rest) => (rest >>> 8) ^ first[rest & 0xff]!);
  const second = withZero(first);
  const third = withZero(second);
  return [first, second, third, withZero(third)];
}

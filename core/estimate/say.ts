/**
 * A number as a sentence shows it: one decimal from 10 up, two from 1, three below, no needless zeros.
 * Example: 812.04 gives "812", 53.68 gives "53.7", 0.45 gives "0.45".
 */
export function say(value: number): string {
  const size = Math.abs(value);
  const decimals = size >= 10 ? 1 : size >= 1 ? 2 : 3;
  return String(Number(value.toFixed(decimals)));
}

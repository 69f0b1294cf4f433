/** One measured number and what it should be. */
export interface BenchRow {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** in words, such as "at most 5"; empty: told, not judged */
  readonly target: string;
  /** null: no target */
  readonly met: boolean | null;
}

/** What the bench was asked for. */
export interface BenchCall {
  /** fewer seeds and short searches */
  readonly quick: boolean;
  /** a line for whoever waits */
  readonly say: (text: string) => void;
}

export function atMost(name: string, value: number, unit: string, limit: number): BenchRow {
  return { name, value, unit, target: `at most ${limit}`, met: value <= limit };
}

export function atLeast(name: string, value: number, unit: string, limit: number): BenchRow {
  return { name, value, unit, target: `at least ${limit}`, met: value >= limit };
}

export function told(name: string, value: number, unit: string): BenchRow {
  return { name, value, unit, target: "", met: null };
}

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length / 2;
  if (sorted.length === 0) return NaN;
  return ((sorted[Math.floor(middle)] ?? 0) + (sorted[Math.ceil(middle) - 1] ?? 0)) / 2;
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

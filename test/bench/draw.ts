import type { Random } from "../../core/units/random.ts";

/** A number from `min` up to `max`, evenly. */
export function between(random: Random, min: number, max: number): number {
  return min + (max - min) * random();
}

/** A whole number from `min` to `max`, both included. */
export function wholeBetween(random: Random, min: number, max: number): number {
  return min + Math.floor(random() * (max - min + 1));
}

export function pick<T>(list: readonly T[], random: Random): T {
  const item = list[Math.floor(random() * list.length)];
  if (item === undefined) throw new RangeError("nothing to pick from");
  return item;
}

/** True in so many of a hundred draws. */
export function chance(random: Random, percent: number): boolean {
  return random() * 100 < percent;
}

/** The same list in a random order (Fisher and Yates 1938, from memory). */
export function shuffled<T>(list: readonly T[], random: Random): T[] {
  const mixed = [...list];
  for (let last = mixed.length - 1; last > 0; last--) {
    const other = Math.floor(random() * (last + 1));
    [mixed[last], mixed[other]] = [mixed[other] as T, mixed[last] as T];
  }
  return mixed;
}

/**
 * What of each period's make is still free to promise, uncommitted: in the first period stock and make less every order until
 * the next make, later the make less the orders until the next one; null where nothing is made. Orders that one make cannot
 * cover are taken from the free quantity of the nearest make before it.
 * Definition: common in production planning textbooks; worked example Stevenson, Operations Management (from memory): stock
 * 64, orders 33 20 10 4 2 0 0 0, make 70 in periods 3, 5, 7 and 8 give 11, 56, 68, 70 and 70.
 */
export function availableToPromise(
  stock: number,
  ordered: readonly number[],
  made: readonly number[],
): (number | null)[] {
  const free = ordered.map((_, period) => {
    const make = made[period] ?? 0;
    if (period > 0 && make === 0) return null;
    return (period === 0 ? stock : 0) + make - orderedUntilNextMake(period, ordered, made);
  });
  return coverShortages(free);
}

function orderedUntilNextMake(from: number, ordered: readonly number[], made: readonly number[]): number {
  let sum = ordered[from] ?? 0;
  for (let period = from + 1; period < ordered.length && (made[period] ?? 0) === 0; period++) {
    sum += ordered[period] ?? 0;
  }
  return sum;
}

/** A period that promised more than it has takes the difference from the periods before it, the nearest first. */
function coverShortages(free: readonly (number | null)[]): (number | null)[] {
  const left = [...free];
  let missing = 0;
  for (let period = left.length - 1; period >= 0; period--) {
    const own = left[period];
    if (own === null || own === undefined) continue;
    const rest = own - missing;
    missing = Math.max(0, -rest);
    left[period] = period === 0 ? rest : Math.max(0, rest);
  }
  return left;
}

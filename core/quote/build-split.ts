/** One size of build and how many of it. */
export interface BuildsOfSize {
  readonly copies: number;
  readonly builds: number;
}

/** How a quantity is divided into builds, and what that costs in all. */
export interface BuildSplit {
  readonly sizes: readonly BuildsOfSize[];
  readonly cost: number;
}

/**
 * The cheapest way to divide a quantity into builds of `least` copies or more, by the cost of a build of so many copies (index =
 * copies, its length ends the sizes). Quantities far beyond one build are first filled with builds of the size that makes a copy
 * cheapest. Null where no builds add up to the quantity. Source: the unbounded knapsack recursion (Bellman 1957, from memory).
 * Example: builds of 1, 2 or 3 copies at 10, 14 and 18, quantity 4: 3 + 1 and 2 + 2 both cost 28; the larger first build wins.
 */
export function cheapestSplit(
  costByCopies: ArrayLike<number>,
  least: number,
  quantity: number,
): BuildSplit | null {
  const most = costByCopies.length - 1;
  if (quantity < 1 || most < least) return null;
  const bulk = bulkBuilds(costByCopies, least, quantity);
  const rest = quantity - bulk.builds * bulk.copies;
  const first = firstBuilds(costByCopies, least, rest);
  if (!first) return null;
  const counts = new Map<number, number>(bulk.builds > 0 ? [[bulk.copies, bulk.builds]] : []);
  for (let left = rest; left > 0; left -= first.size[left]!) {
    counts.set(first.size[left]!, (counts.get(first.size[left]!) ?? 0) + 1);
  }
  const sizes = [...counts].map(([copies, builds]) => ({ copies, builds })).toSorted(byCopies);
  return { sizes, cost: bulk.builds * (costByCopies[bulk.copies] ?? 0) + first.cost[rest]! };
}

/** Copies that are divided one by one: beyond them the size that makes a copy cheapest fills the rest. */
const MOST_DIVIDED = 4;
const LEAST_DIVIDED = 400;

function bulkBuilds(costs: ArrayLike<number>, least: number, quantity: number): BuildsOfSize {
  const most = costs.length - 1;
  let best = most;
  for (let copies = Math.max(1, least); copies <= most; copies++) {
    if ((costs[copies] ?? Infinity) / copies < (costs[best] ?? Infinity) / best) best = copies;
  }
  const divided = Math.max(LEAST_DIVIDED, MOST_DIVIDED * most);
  return { copies: best, builds: Math.max(0, Math.ceil((quantity - divided) / best)) };
}

/** Cheapest cost of every quantity up to the one asked for, and the first build of each. */
function firstBuilds(
  costs: ArrayLike<number>,
  least: number,
  quantity: number,
): { readonly cost: Float64Array; readonly size: Int32Array } | null {
  const cost = new Float64Array(quantity + 1).fill(Infinity);
  const size = new Int32Array(quantity + 1);
  cost[0] = 0;
  for (let copies = 1; copies <= quantity; copies++) {
    for (let build = Math.min(costs.length - 1, copies); build >= Math.max(1, least); build--) {
      const sum = (costs[build] ?? Infinity) + cost[copies - build]!;
      if (sum >= cost[copies]!) continue;
      cost[copies] = sum;
      size[copies] = build;
    }
  }
  return cost[quantity]! < Infinity ? { cost, size } : null;
}

function byCopies(a: BuildsOfSize, b: BuildsOfSize): number {
  return b.copies - a.copies;
}

import { moneyOf, type OperatingMoney } from "./operating-money.ts";

/** What a candidate changes in a year at a demand that is so many times the case's own. */
export interface DemandPoint {
  readonly demandFactor: number;
  readonly change: OperatingMoney;
}

/**
 * Change of running money at another demand: linear between the points worked out, row by row, and held beyond the last ones,
 * since what a full works would do with more is not known. Example: late costs saved 0 at 1 and 100 at 2 are 50 at 1.5, 100 at 3.
 */
export function changeAtDemand(points: readonly DemandPoint[], demandFactor: number): OperatingMoney {
  const ascending = points.toSorted((a, b) => a.demandFactor - b.demandFactor);
  const above = ascending.find((point) => point.demandFactor >= demandFactor) ?? ascending.at(-1);
  const below = ascending.findLast((point) => point.demandFactor <= demandFactor) ?? ascending[0];
  if (above === undefined || below === undefined)
    throw new RangeError("no point at which demand was worked out");
  const span = above.demandFactor - below.demandFactor;
  const share = span === 0 ? 0 : (demandFactor - below.demandFactor) / span;
  return moneyOf((row) => below.change[row] + share * (above.change[row] - below.change[row]));
}

/**
 * Change of running money in each year of a life: the years planned, then by growth. A later year adds to the last one
 * planned what the points say for the growth since; without at least two points it stays as the last. Points are at multiples of
 * the demand of the first year planned. Example: one year planned, growth 10 %: year 3 is read at 1.21.
 */
export function changesOverLife(
  planned: readonly OperatingMoney[],
  lifeYears: number,
  growthPctPerYear: number,
  points: readonly DemandPoint[],
): OperatingMoney[] {
  const last = planned.at(-1);
  if (last === undefined) throw new RangeError("no year was planned");
  const growth = 1 + growthPctPerYear / 100;
  const at = (year: number): OperatingMoney => changeAtDemand(points, growth ** year);
  return Array.from({ length: lifeYears }, (_, year) => {
    const own = planned[year];
    if (own !== undefined) return own;
    if (points.length < 2 || growth === 1) return last;
    const [later, then] = [at(year), at(planned.length - 1)];
    return moneyOf((row) => last[row] + later[row] - then[row]);
  });
}

import type { Process } from "../shop/machine.ts";
import { cheapestOfProcess, type PartWays } from "./part-costs.ts";

/** One part made by one process. */
export interface ChartPoint {
  readonly partId: string;
  readonly process: Process;
  readonly quantity: number;
  /** of one copy with supports and losses, by that way, kg */
  readonly massKg: number;
  /** of one copy when it is ordered again at its usual quantity, currency */
  readonly costPerCopy: number;
}

/** cost = factor x mass^exponent: a straight line where both axes are logarithmic. */
export interface PowerLine {
  readonly factor: number;
  readonly exponent: number;
  readonly points: number;
}

/** Cost per part against part mass for both processes on a shop's own data. */
export interface CrossoverChart {
  readonly points: readonly ChartPoint[];
  /** null: fewer than two parts of different mass */
  readonly filament: PowerLine | null;
  readonly pellet: PowerLine | null;
  /** part mass above which pellets are the cheaper way by the two lines, kg; null: the lines do not cross so among the masses there are */
  readonly crossoverKg: number | null;
  /** parts that both can make and that pellets make cheaper, by id */
  readonly cheaperByPellet: readonly string[];
  /** the chart in one sentence */
  readonly sentence: string;
}

/**
 * The crossover chart: each part of the demand by the cheapest filament and the cheapest pellet way, a power law through each
 * (least squares of the logarithms), and the mass at which the lines cross. Lines go through parts that both processes can make
 * where there are three or more of them, since large parts that only pellets make would bend the comparison; else through all.
 * Example: 40 x m and 20 x m^0.5 cross at 0.25 kg.
 */
export function crossoverChart(partWays: readonly PartWays[]): CrossoverChart {
  const points = partWays.flatMap((own) => [...pointOf(own, "filament"), ...pointOf(own, "pellet")]);
  const both = pairedParts(points);
  const compared = both.size >= FEWEST_PAIRS ? points.filter(({ partId }) => both.has(partId)) : points;
  const filament = powerLine(compared.filter(({ process }) => process === "filament"));
  const pellet = powerLine(compared.filter(({ process }) => process === "pellet"));
  const crossoverKg = crossing(filament, pellet, compared);
  const cheaperByPellet = [...both].filter(
    (id) => costOf(points, id, "pellet") < costOf(points, id, "filament"),
  );
  return {
    points,
    filament,
    pellet,
    crossoverKg,
    cheaperByPellet,
    sentence: sentenceOf(crossoverKg, cheaperByPellet.length, both.size),
  };
}

const FEWEST_PAIRS = 3;

function pointOf(own: PartWays, process: Process): ChartPoint[] {
  const cheapest = cheapestOfProcess(own, process);
  if (cheapest === null || !(cheapest.costPerCopy > 0)) return [];
  const { partId, quantity } = own;
  return [
    { partId, process, quantity, massKg: cheapest.way.massKgPerCopy, costPerCopy: cheapest.costPerCopy },
  ];
}

function pairedParts(points: readonly ChartPoint[]): Set<string> {
  const byFilament = new Set(
    points.filter(({ process }) => process === "filament").map(({ partId }) => partId),
  );
  return new Set(
    points
      .filter(({ process, partId }) => process === "pellet" && byFilament.has(partId))
      .map(({ partId }) => partId),
  );
}

function costOf(points: readonly ChartPoint[], partId: string, process: Process): number {
  return (
    points.find((point) => point.partId === partId && point.process === process)?.costPerCopy ?? Infinity
  );
}

/**
 * Power law through points by least squares of the logarithms; null: fewer than two different masses.
 * Example: 0.1 kg at 4 and 10 kg at 400 give 40 x m^1.
 */
function powerLine(points: readonly Pick<ChartPoint, "massKg" | "costPerCopy">[]): PowerLine | null {
  const logs = points.map(({ massKg, costPerCopy }) => ({ x: Math.log(massKg), y: Math.log(costPerCopy) }));
  const meanX = mean(logs.map(({ x }) => x));
  const meanY = mean(logs.map(({ y }) => y));
  const spread = logs.reduce((sum, { x }) => sum + (x - meanX) ** 2, 0);
  if (!(spread > TINY)) return null;
  const exponent = logs.reduce((sum, { x, y }) => sum + (x - meanX) * (y - meanY), 0) / spread;
  return { factor: Math.exp(meanY - exponent * meanX), exponent, points: points.length };
}

const TINY = 1e-9;

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Only where pellets are dearer below and cheaper above, and no further out than the parts go. */
function crossing(
  filament: PowerLine | null,
  pellet: PowerLine | null,
  points: readonly ChartPoint[],
): number | null {
  if (!filament || !pellet || filament.exponent <= pellet.exponent) return null;
  const massKg = (pellet.factor / filament.factor) ** (1 / (filament.exponent - pellet.exponent));
  const masses = points.map((point) => point.massKg);
  return massKg >= Math.min(...masses) && massKg <= Math.max(...masses) ? massKg : null;
}

function sentenceOf(crossoverKg: number | null, cheaper: number, both: number): string {
  if (both === 0) return "No part of this demand can be made both ways, so there is nothing to compare.";
  const counted = `Of ${both} ${both === 1 ? "part" : "parts"} that both can make, pellets are cheaper for ${cheaper}.`;
  if (crossoverKg === null)
    return `${counted} No part mass stands out above which pellets are the cheaper way.`;
  return `${counted} By the trend, pellets are the cheaper way above about ${crossoverKg.toPrecision(2)} kg a part.`;
}

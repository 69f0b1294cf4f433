import type { CostKind } from "../cost/cost-line.ts";
import { WEEKS_PER_YEAR } from "./cash-terms.ts";
import type { ScenarioResult } from "./scenario-job.ts";

/** Rows of a year's running money, as shown. Overhead is no cash and has none. */
export const OPERATING_ROWS = [
  "revenue",
  "feedstock",
  "machine",
  "labour",
  "engineering",
  "changeover",
  "finishing",
  "expectedFailure",
  "buyOut",
  "late",
] as const;

export type OperatingRow = (typeof OPERATING_ROWS)[number];

/** Running money of one year by row, currency: what comes in is positive, what goes out negative. */
export type OperatingMoney = Readonly<Record<OperatingRow, number>>;

/**
 * Running money of each year of a scenario: whole years of 52 weeks; where there is not even one, the weeks there are, scaled
 * to 52. Example: 26 weeks of 100 revenue each give one year of 5200.
 */
export function operatingYears({ weeks }: ScenarioResult): OperatingMoney[] {
  const years = Math.max(1, Math.floor(weeks.length / WEEKS_PER_YEAR));
  return Array.from({ length: years }, (_, year) => {
    const own = weeks.slice(year * WEEKS_PER_YEAR, (year + 1) * WEEKS_PER_YEAR);
    const scale = own.length === 0 ? 0 : WEEKS_PER_YEAR / own.length;
    return moneyOf((row) => scale * own.reduce((sum, week) => sum + weekMoney(week, row), 0));
  });
}

function weekMoney(week: ScenarioResult["weeks"][number], row: OperatingRow): number {
  if (row === "revenue") return week.revenue;
  if (row === "buyOut") return -week.boughtOutCost;
  if (row === "late") return -week.lateCost;
  const kind: CostKind = row;
  return -(week.costByKind[kind] ?? 0);
}

/** Running money with each row worked out. Example: every row 1 adds up to 10. */
export function moneyOf(amount: (row: OperatingRow) => number): OperatingMoney {
  // Every row is set.
  return Object.fromEntries(OPERATING_ROWS.map((row) => [row, amount(row)])) as OperatingMoney;
}

/** What changes: with less without, row by row. Example: feedstock -80 with and -100 without: 20 saved. */
export function changeOf(withIt: OperatingMoney, without: OperatingMoney): OperatingMoney {
  return moneyOf((row) => withIt[row] - without[row]);
}

/** All rows together. Example: revenue 100 and feedstock -30 make 70. */
export function totalOf(money: OperatingMoney): number {
  return OPERATING_ROWS.reduce((sum, row) => sum + money[row], 0);
}

/** The mean over scenarios, row by row and year by year; as many years as the shortest has. */
export function meanMoney(scenarios: readonly (readonly OperatingMoney[])[]): OperatingMoney[] {
  if (scenarios.length === 0) return [];
  const years = Math.min(...scenarios.map((own) => own.length));
  return Array.from({ length: years }, (_, year) =>
    moneyOf((row) => scenarios.reduce((sum, own) => sum + (own[year]?.[row] ?? 0), 0) / scenarios.length),
  );
}

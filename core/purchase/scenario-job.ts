import type { CostKind } from "../cost/cost-line.ts";
import type { Shop } from "../shop/shop.ts";
import type { LineSizes } from "./line-sizes.ts";
import type { ScenarioDemand } from "./scenarios.ts";

/** One scenario on one fleet: a pure job with a JSON form, so that any thread or machine gives the same answer. */
export interface ScenarioJob {
  /** the fleet is already applied to it; its orders and builds play no part */
  readonly shop: Shop;
  readonly scenario: ScenarioDemand;
  /** an order later than this is lost: with 0 at the end of the week it is due in, weeks */
  readonly patienceWeeks: number;
  /** of the solver's choices among equally good answers */
  readonly seed: number;
  /** first minute of the Monday on which the first week starts, epoch minute */
  readonly fromMin: number;
  /** orders are known so many weeks before the one they are due in; what is left over then can make them */
  readonly knownWeeksAhead: number;
  /** sizes of the order lines, where several jobs share a fleet; left out: those of this scenario */
  readonly lineSizes?: readonly LineSizes[];
}

export interface ScenarioResult {
  readonly weeks: readonly WeekResult[];
}

/** Hours of one machine in a week: its part of those of machines that are alike. */
export interface MachineHours {
  readonly machineId: string;
  /** set up, printing, cooling or being unloaded, changeovers included; it may exceed the staffed hours by printing unattended */
  readonly usedH: number;
  readonly staffedH: number;
}

/** What one week costs and brings, by the weekly program. Money in major units. */
export interface WeekResult {
  /** of making, buying out and lateness; kinds that cost nothing are left out */
  readonly costByKind: Readonly<Partial<Record<CostKind, number>>>;
  /** the kind "late" of `costByKind` again */
  readonly lateCost: number;
  /** order lines that fell due, that became late, and that were lost; parts of lines count as parts */
  readonly orders: number;
  readonly lateOrders: number;
  readonly lostOrders: number;
  /** price of the lost copies that have one */
  readonly lostRevenue: number;
  /** least cost of making the lost copies that have no price, where they can be made at all */
  readonly lostUnpricedCost: number;
  /** the kind "buyOut" of `costByKind` again */
  readonly boughtOutCost: number;
  /** price of the copies served that have one */
  readonly revenue: number;
  readonly hoursByMachine: readonly MachineHours[];
  /** feedstock in parts and supports; purges and failed builds are in the money only */
  readonly kgByFeedstock: Readonly<Record<string, number>>;
  /** copies open at the end of the week */
  readonly backlogCopies: number;
  /** what the weekly program made as small as it can be: costs, the worth of lost copies, and the least cost of copies left open */
  readonly objective: number;
}

import { machineHourRate } from "../cost/machine-hour-rate.ts";
import type { Shift } from "../shop/calendar.ts";
import type { Costing } from "../shop/costing.ts";
import type { Machine } from "../shop/machine.ts";
import type { Shop } from "../shop/shop.ts";
import { MIN_PER_DAY, MIN_PER_H } from "../units/conversions.ts";

/*
 * What of a cost is cash. The price of a machine stands in the cash flow once, as what is paid at the start, and the discount
 * rate is the interest on it; so neither depreciation nor imputed interest may stand in the yearly costs again. Of the
 * machine-hour rate:
 *   depreciation, interest   no cash: they are in the price and in the discount rate
 *   energy                   cash for each hour in use
 *   floor, maintenance       cash each year, in use or not, while the machine stands there
 * Overhead is a share of costs that the works has anyway: no cash. Feedstock, labour by the hour of work, tool paths, finishing
 * and buying out are cash; lateness is money that the shop's own rate says.
 */

/**
 * The shop with only cash in its costs, for every plan that a purchase is judged by: an hour of a machine costs its energy,
 * overhead is none. Of a rate given as one number a share counts, 0 to 100 %. Example: 25 kW at 0.08 per kWh and 33 per h of
 * depreciation, interest, floor and maintenance cost 2 per h.
 */
export function cashShop(shop: Shop, givenRateCashPct = 0): Shop {
  return {
    ...shop,
    costing: { ...shop.costing, overheadPct: 0 },
    machines: shop.machines.map((machine) => ({
      ...machine,
      hourRate: cashPerH(machine, shop.costing, givenRateCashPct),
    })),
  };
}

function cashPerH(machine: Machine, costing: Costing, givenRateCashPct: number): number {
  const rate = machineHourRate(machine, costing);
  return rate.hoursPerYear === null ? (rate.perH * givenRateCashPct) / 100 : rate.variablePerH;
}

/**
 * Cash that the machines of a shop cost each year whether in use or not: floor and maintenance. A rate given as one number
 * has none. Example: floor 2 500 and maintenance 5 500 per year make 8 000.
 */
export function standingCashPerYear(shop: Shop): number {
  return shop.machines.reduce((sum, machine) => sum + standingOf(machine, shop.costing), 0);
}

function standingOf(machine: Machine, costing: Costing): number {
  return machineHourRate(machine, costing)
    .terms.filter(({ kind, name }) => kind === "fixed" && STANDING.has(name))
    .reduce((sum, term) => sum + term.amount, 0);
}

const STANDING = new Set(["floor", "maintenance"]);

/** An added shift and what it pays. */
interface PaidShift {
  readonly shift: Shift;
  readonly premiumPct: number;
  readonly otherWorkPct: number;
}

/**
 * Wages of an added shift in a year of 52 weeks: paid hours x operators x cost of labour with its premium, without the share
 * that is other useful work. Example: 5 days of 8 h, 2 operators, 30 per h, premium 25 %, a quarter other work:
 * 52 x 40 x 2 x 37.5 x 0.75 = 117 000.
 */
export function shiftWagesPerYear(
  { shift, premiumPct, otherWorkPct }: PaidShift,
  labourPerH: number,
): number {
  const paidH = WEEKS_PER_YEAR * shift.days.length * (shiftMin(shift) / MIN_PER_H);
  return paidH * shift.operators * labourPerH * (1 + premiumPct / 100) * (1 - otherWorkPct / 100);
}

/** A year as the cash flow counts it. */
export const WEEKS_PER_YEAR = 52;

function shiftMin({ start, end }: Shift): number {
  const length = minuteOfDay(end) - minuteOfDay(start);
  return length > 0 ? length : length + MIN_PER_DAY;
}

function minuteOfDay(clock: string): number {
  const [hours = 0, minutes = 0] = clock.split(":").map(Number);
  return hours * MIN_PER_H + minutes;
}

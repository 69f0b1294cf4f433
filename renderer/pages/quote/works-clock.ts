import type { QuoteDeskRequest } from "../../../core/quote/quote-desk.ts";
import { minuteOf } from "../../../core/shop/instants.ts";
import { nextFullHour } from "../../../core/shop/local-time.ts";
import { MS_PER_MIN } from "../../../core/units/conversions.ts";
import type { Stores } from "../../store/stores.ts";
import { usualStart } from "../../store/usual-start.ts";

const DAYS = 7;
const SEED = 1;

/** The time at the works, and what a desk for quotes starts from. */
interface AtWorks {
  /** when quotes are asked for and decided, epoch minute */
  readonly nowMin: number;
  readonly request: QuoteDeskRequest;
}

/**
 * Now, but never before the plan starts. In the demo shop, whose week is invented, it is always the start of its plan.
 * Example: at 09:40 with a plan from yesterday: now 09:40, the desk from 10:00.
 */
export function atWorks({ shop, plan }: Pick<Stores, "shop" | "plan">): AtWorks {
  const { timeZone } = shop.shop();
  const { isDemo } = shop.opened;
  const planned = plan.plan();
  const clockMin = Math.floor(Date.now() / MS_PER_MIN);
  const startAt = planned?.plannedFrom ?? usualStart(shop.shop(), isDemo, Date.now());
  const startMin = minuteOf(startAt, timeZone);
  const fromMin = isDemo ? startMin : Math.max(nextFullHour(clockMin, timeZone), startMin);
  const { horizonDays: days, seed } = planned ?? { horizonDays: DAYS, seed: SEED };
  return { nowMin: isDemo ? startMin : clockMin, request: { fromMin, days, seed } };
}

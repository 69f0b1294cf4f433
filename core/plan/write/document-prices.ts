import { at } from "../at.ts";
import type { HourPrice, HourPrices } from "../bound/hour-prices.ts";
import type { PlanDocument } from "../plan-document.ts";
import type { PlanSource } from "./plan-source.ts";

/** Prices of hours as the document has them: machines and calendars by id, times as instants. */
export function documentPrices(source: PlanSource, prices: HourPrices): PlanDocument["prices"] {
  const { classes, machines, calendars } = source.problem;
  const common = ({ fromMin, toMin, moreSavesPerH, lessCostsPerH }: HourPrice) => ({
    from: source.instant(fromMin),
    to: source.instant(toMin),
    moreSavesPerH,
    lessCostsPerH,
  });
  return {
    machineHour: prices.machineHour.map((price) => ({
      ...common(price),
      machineIds: at(classes, price.classIndex).machineIndices.map((index) => at(machines, index).machineId),
    })),
    operatorHour: prices.operatorHour.map((price) => ({
      ...common(price),
      calendarId: at(calendars, price.calendarIndex).calendarId,
    })),
  };
}

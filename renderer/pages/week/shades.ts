import type { Stretch } from "../../../core/plan/plan-problem.ts";
import { workingTime } from "../../../core/plan/time/working-time.ts";
import { isInstant, minuteOf } from "../../../core/shop/instants.ts";
import type { Shop } from "../../../core/shop/shop.ts";

/** The ground of one machine's row: when somebody is there, when the works is shut, when the machine is out of service. */
export interface Ground {
  readonly staffed: readonly Stretch[];
  readonly shut: readonly Stretch[];
  readonly outOfService: readonly (Stretch & { readonly reason: string })[];
}

const NOTHING: Ground = { staffed: [], shut: [], outOfService: [] };

/**
 * The grounds of all machines over a stretch. A calendar that several machines share is laid out once.
 * Example: two machines in one shift from 06:00 to 14:00 have the same staffed stretches.
 */
export function groundsOf(
  shop: Pick<Shop, "calendars" | "machines" | "timeZone">,
  within: Stretch,
): ReadonlyMap<string, Ground> {
  const { timeZone } = shop;
  const calendars = new Map(
    shop.calendars.map((calendar) => {
      const { operators, closures } = workingTime(calendar, timeZone, within.startMin, within.endMin);
      return [calendar.id, { staffed: operators.filter(hasOperators), shut: closures }] as const;
    }),
  );
  return new Map(
    shop.machines.map((machine) => {
      const outOfService = machine.outOfService
        .filter(({ from, to }) => isInstant(from) && isInstant(to))
        .map(({ from, to, reason }) => ({
          startMin: minuteOf(from, timeZone),
          endMin: minuteOf(to, timeZone),
          reason,
        }));
      return [machine.id, { ...(calendars.get(machine.calendarId) ?? NOTHING), outOfService }] as const;
    }),
  );
}

function hasOperators({ operators }: { readonly operators: number }): boolean {
  return operators > 0;
}

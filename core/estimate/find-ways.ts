import type { Feedstock } from "../shop/feedstock.ts";
import type { Machine, Nozzle } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import { machineReasons, partReasons } from "./feedstock-fit.ts";
import { closest, nozzleWays, tryGroup } from "./lay-down.ts";
import type { LaidRoute, NozzleWays } from "./lay-down.ts";
import { reasonWithLayers } from "./layers-to-blame.ts";
import type { PaceInput } from "./pace.ts";
import type { DepositRefusal } from "./route-attempt.ts";
import type { RouteReason } from "./route.ts";
import { findStandings } from "./standings.ts";

/** What is asked of the ways to make a part. */
interface WayOptions {
  /** true: the best route of each direction up; false: the best over all of them */
  readonly byDirection: boolean;
  /** true: feedstocks in the other form too, and layer times even where the feedstock does not suit */
  readonly withOtherForms: boolean;
}

/** The routes of a part with one nozzle and one feedstock, still without cautions; none: the reasons. */
interface Ways {
  readonly nozzle: Nozzle;
  readonly feedstock: Feedstock;
  readonly laid: readonly LaidRoute[];
  readonly reasons: readonly RouteReason[];
}

/**
 * The ways to make a part on a machine, for each of its nozzles with each feedstock of its form. There is no third: at least
 * one way, or at least one reason. Example: 2 nozzles and 3 feedstocks give 6 entries.
 */
export function findWays(
  part: Part,
  machine: Machine,
  feedstocks: readonly Feedstock[],
  options: WayOptions,
): Ways[] {
  const fitted = feedstocks
    .filter(({ form }) => form === machine.process || options.withOtherForms)
    .map((feedstock) => ({
      feedstock,
      reasons: [...machineReasons(machine, feedstock), ...partReasons(part, feedstock)],
    }));
  const found = findStandings(part, machine);
  return machine.nozzles.flatMap((nozzle) => {
    const ways = nozzleWays(part, machine, nozzle, found, options.byDirection);
    return fitted.map(({ feedstock, reasons }) => {
      const asked = { part, machine, nozzle, feedstock };
      const isSuited = reasons.length === 0;
      const isWanted = isSuited || (options.withOtherForms && feedstock.form === machine.process);
      const tried = isWanted ? tryWays(asked, ways) : NOTHING_TRIED;
      if (isSuited && ways.reasons.length === 0 && tried.laid.length > 0) {
        return { nozzle, feedstock, laid: tried.laid, reasons: [] };
      }
      const refused = tried.refusals.map((refusal) => reasonWithLayers(asked, refusal));
      return { nozzle, feedstock, laid: [], reasons: [...reasons, ...ways.reasons, ...refused] };
    });
  });
}

/** The routes that work, or where none does for each code the refusal that came closest. */
interface TriedWays {
  readonly laid: readonly LaidRoute[];
  readonly refusals: readonly DepositRefusal[];
}

const NOTHING_TRIED: TriedWays = { laid: [], refusals: [] };

function tryWays(asked: PaceInput, { groups }: NozzleWays): TriedWays {
  const laid: LaidRoute[] = [];
  const refusals: DepositRefusal[] = [];
  for (const group of groups) {
    const tried = tryGroup(asked, group);
    if (tried.best) laid.push(tried.best);
    else refusals.push(...tried.refusals);
  }
  return laid.length > 0 ? { laid, refusals: [] } : { laid, refusals: closest(refusals) };
}

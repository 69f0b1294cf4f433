import type { Machine, Nozzle } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import { beadChoices } from "./bead-choices.ts";
import { bestRoute } from "./best-route.ts";
import { deposit } from "./deposit.ts";
import type { Bead, Deposit, Standing } from "./deposit.ts";
import type { PaceInput } from "./pace.ts";
import { attempt } from "./route-attempt.ts";
import type { DepositRefusal } from "./route-attempt.ts";
import type { Route, RouteReason } from "./route.ts";
import type { Standings } from "./standings.ts";

/** Deposits of which one is to be chosen: thick layers, and thinner ones for when no thick one works. */
interface DepositGroup {
  readonly thick: () => readonly Deposit[];
  readonly thin: () => readonly Deposit[];
}

/** Ways a part may be laid down with one nozzle, whatever the feedstock, and why there may be none. */
export interface NozzleWays {
  readonly groups: readonly DepositGroup[];
  readonly reasons: readonly RouteReason[];
}

/**
 * Ways to lay a part down with one nozzle: one group for each direction up, or one for all of them together.
 * Example: a part that stands three ways, by direction: 3 groups of up to 3 thick beads each.
 */
export function nozzleWays(
  part: Part,
  machine: Machine,
  nozzle: Nozzle,
  found: Standings,
  byDirection: boolean,
): NozzleWays {
  const choices = beadChoices(part, nozzle);
  const deposits = (standing: Standing, beads: readonly Bead[]): Deposit[] => {
    return beads.map((bead) => deposit({ part, process: machine.process, nozzle, standing, bead }));
  };
  const groupOf = (standings: readonly Standing[]): DepositGroup => ({
    thick: once(() => standings.flatMap((standing) => deposits(standing, choices.thick))),
    thin: once(() => standings.flatMap((standing) => deposits(standing, choices.thin))),
  });
  const apart = byDirection ? found.standings.map((standing) => [standing]) : [found.standings];
  return { groups: apart.map(groupOf), reasons: [...choices.reasons, ...found.reasons] };
}

function once<Value>(compute: () => Value): () => Value {
  let first: { value: Value } | null = null;
  return () => {
    first ??= { value: compute() };
    return first.value;
  };
}

/** A route that works, still without cautions, with what it lays down. */
export interface LaidRoute {
  readonly route: Route;
  readonly deposit: Deposit;
}

/** The best of a group, or for each code the refusal that came closest. */
type Tried =
  | { readonly best: LaidRoute }
  | { readonly best: null; readonly refusals: readonly DepositRefusal[] };

/** Thick layers first; thinner ones, which take less time each, only when every thick one fails. */
export function tryGroup(input: PaceInput, group: DepositGroup): Tried {
  const thick = tryDeposits(input, group.thick());
  if (thick.best || thick.refusals.length === 0) return thick;
  const thin = tryDeposits(input, group.thin());
  return thin.best ? thin : { best: null, refusals: closest([...thick.refusals, ...thin.refusals]) };
}

function tryDeposits(input: PaceInput, deposits: readonly Deposit[]): Tried {
  const routes: LaidRoute[] = [];
  const refusals: DepositRefusal[] = [];
  for (const way of deposits) {
    const tried = attempt(input, way);
    if (tried.route) routes.push(tried);
    else refusals.push(tried.refusal);
  }
  const best = bestRoute(routes);
  return best ? { best } : { best: null, refusals: closest(refusals) };
}

/** Of each code the refusal that is short by least. */
export function closest(refusals: readonly DepositRefusal[]): DepositRefusal[] {
  const byCode = new Map<string, DepositRefusal>();
  for (const refusal of refusals) {
    const known = byCode.get(refusal.reason.code);
    if (!known || refusal.shortBy < known.shortBy) byCode.set(refusal.reason.code, refusal);
  }
  return [...byCode.values()];
}

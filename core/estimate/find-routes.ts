import type { Feedstock } from "../shop/feedstock.ts";
import type { Machine, Nozzle } from "../shop/machine.ts";
import type { Axis, Part } from "../shop/part.ts";
import { beadChoices } from "./bead-choices.ts";
import { bestRoute } from "./best-route.ts";
import { routeCautions } from "./cautions.ts";
import { deposit } from "./deposit.ts";
import type { Bead, Deposit } from "./deposit.ts";
import { machineReasons, partReasons } from "./feedstock-fit.ts";
import { layerKinds } from "./layer-kinds.ts";
import type { LayerKind } from "./layer-kinds.ts";
import type { LayerRefusal } from "./layer-reasons.ts";
import { attempt } from "./route-attempt.ts";
import type { Route, RouteAnswer, RouteReason } from "./route.ts";
import { findStandings } from "./standings.ts";
import type { Standings } from "./standings.ts";

export interface RouteOptions {
  /**
   * true: every reason is wanted. Feedstocks in the other form are answered too, refused with reason "form", and layer times
   * are judged even where the feedstock does not suit the part or the machine, which costs time
   */
  readonly withOtherForms?: boolean;
}

/**
 * One answer for each nozzle of a machine and each feedstock of its form: the best route of a part over orientations, beads
 * and layer heights, or the reasons why there is none. Nothing is left out silently.
 * Example: a machine with one nozzle and a shop with 7 filaments and 5 kinds of pellets give 7 answers.
 */
export function findRoutes(
  part: Part,
  machine: Machine,
  feedstocks: readonly Feedstock[],
  options: RouteOptions = {},
): RouteAnswer[] {
  const fitted = feedstocks
    .filter(({ form }) => form === machine.process || options.withOtherForms === true)
    .map((feedstock) => ({
      feedstock,
      reasons: [...machineReasons(machine, feedstock), ...partReasons(part, feedstock)],
    }));
  const found = findStandings(part, machine);
  return machine.nozzles.flatMap((nozzle) => {
    const ways = waysOf(part, machine, nozzle, found);
    return fitted.map(({ feedstock, reasons }) => {
      const asked = { part, machine, nozzle, feedstock };
      const wanted =
        reasons.length === 0 || (options.withOtherForms === true && feedstock.form === machine.process);
      return answer(asked, [...reasons, ...ways.reasons], wanted ? tryAll(asked, ways) : NOTHING_TRIED);
    });
  });
}

/** Ways a part may be laid down with one nozzle, whatever the feedstock, and why there may be none. */
interface Ways {
  readonly thick: () => readonly Deposit[];
  readonly thin: () => readonly Deposit[];
  readonly reasons: readonly RouteReason[];
}

function waysOf(part: Part, machine: Machine, nozzle: Nozzle, { standings, reasons }: Standings): Ways {
  const choices = beadChoices(part, nozzle);
  const { process } = machine;
  const deposits = (beads: readonly Bead[]): Deposit[] =>
    standings.flatMap((standing) => {
      const kindsAt = layersByHeight(part, standing.axis);
      return beads.map((bead) =>
        deposit({ part, process, nozzle, standing, bead, kinds: kindsAt(bead.layerHeightMm) }),
      );
    });
  return {
    thick: once(() => deposits(choices.thick)),
    thin: once(() => deposits(choices.thin)),
    reasons: [...choices.reasons, ...reasons],
  };
}

/** The part's layers on an axis by their height, each height computed once. */
function layersByHeight(part: Part, axis: Axis): (layerHeightMm: number) => LayerKind[] {
  const known = new Map<number, LayerKind[]>();
  return (layerHeightMm) => {
    const kinds = known.get(layerHeightMm) ?? layerKinds(part, axis, layerHeightMm);
    known.set(layerHeightMm, kinds);
    return kinds;
  };
}

function once<Value>(compute: () => Value): () => Value {
  let known: { value: Value } | null = null;
  return () => {
    known ??= { value: compute() };
    return known.value;
  };
}

interface Asked {
  readonly part: Part;
  readonly machine: Machine;
  readonly nozzle: Nozzle;
  readonly feedstock: Feedstock;
}

function answer(asked: Asked, known: readonly RouteReason[], tried: Tried): RouteAnswer {
  if (known.length === 0 && tried.route) return { status: "route", route: tried.route };
  return {
    status: "refused",
    machineId: asked.machine.id,
    nozzleId: asked.nozzle.id,
    feedstockId: asked.feedstock.id,
    reasons: [...known, ...tried.refusals.map(({ reason }) => reason)],
  };
}

/** The best route, or for each code the refusal that came closest. */
interface Tried {
  readonly route: Route | null;
  readonly refusals: readonly LayerRefusal[];
}

const NOTHING_TRIED: Tried = { route: null, refusals: [] };

/** Thick layers first; thinner ones, which take less time each, only when every thick one fails. */
function tryAll(asked: Asked, ways: Ways): Tried {
  const thick = tryDeposits(asked, ways.thick());
  if (thick.route || thick.refusals.length === 0) return thick;
  const thin = tryDeposits(asked, ways.thin());
  return thin.route ? thin : { route: null, refusals: closest([...thick.refusals, ...thin.refusals]) };
}

function tryDeposits(asked: Asked, deposits: readonly Deposit[]): Tried {
  const routes = [];
  const refusals = [];
  for (const way of deposits) {
    const tried = attempt(asked, way);
    if (tried.route) routes.push(tried);
    else refusals.push(tried.refusal);
  }
  const best = bestRoute(routes);
  if (!best) return { route: null, refusals: closest(refusals) };
  return { route: { ...best.route, cautions: routeCautions({ ...asked, ...best }) }, refusals: [] };
}

/** Of each code the refusal that is short by least. */
function closest(refusals: readonly LayerRefusal[]): LayerRefusal[] {
  const byCode = new Map<string, LayerRefusal>();
  for (const refusal of refusals) {
    const known = byCode.get(refusal.reason.code);
    if (!known || refusal.shortBy < known.shortBy) byCode.set(refusal.reason.code, refusal);
  }
  return [...byCode.values()];
}

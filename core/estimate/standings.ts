import { axisOf, directionsUp, measuredStanding, NEAR_VERTICAL_DEG } from "../shop/directions-up.ts";
import type { Machine } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import type { Standing } from "./deposit.ts";
import { excess, fillPlatform, standUp, usableMm } from "./fit.ts";
import type { StandingBox } from "./fit.ts";
import type { RouteReason } from "./route.ts";
import { say } from "./say.ts";
import { overhangMm2, unsupportedShare } from "./supports.ts";
import { closestTurn, turnToFit } from "./turn.ts";

/** Ways a part can stand on a machine, or why it cannot. */
export interface Standings {
  readonly standings: readonly Standing[];
  readonly reasons: readonly RouteReason[];
}

/**
 * Every way a part can stand on a machine: a direction that may point up, small enough, on filament machines without an
 * overhang that must not be supported, on pellet machines without one too large to be built without support.
 * Example: 812 mm across on 600 mm between the margins: none, "too-large".
 */
export function findStandings(part: Part, machine: Machine): Standings {
  const directions = directionsUp(part);
  if (directions.length === 0) return { standings: [], reasons: [noDirection(part)] };
  const fitting = directions.map((up) => stand(part, up, machine)).filter(({ copies }) => copies > 0);
  const reasons = fitting.length === 0 ? [tooLarge(part, directions, machine)] : [];
  const hanging = (up: string): boolean => hangs(part, up, machine);
  const standings = fitting.filter(({ up }) => !hanging(up));
  const support = directions.every(hanging) || (fitting.length > 0 && standings.length === 0);
  return {
    standings,
    reasons: support ? [...reasons, noSupport(part, directions.filter(hanging), machine)] : reasons,
  };
}

/** A part with one direction up, turned as it fills the platform best; 0 copies where it does not fit. */
function stand(part: Part, up: string, machine: Machine): Standing {
  const { allowanceMm } = part.finishing;
  const measured = measuredStanding(part, up);
  if (measured) {
    const { boxMm } = part.geometry.measures;
    const fill = turnToFit({ standing: measured, boxMm, allowanceMm }, machine);
    return { up, ...fill, heightMm: measured.heightMm + 2 * allowanceMm };
  }
  const box = standUp(part.geometry.measures.boxMm, axisOf(up), allowanceMm);
  return { up, ...fillPlatform(box, machine), rotationDeg: 0, heightMm: box.heightMm };
}

function hangs(part: Part, up: string, { process }: Machine): boolean {
  if (process === "filament") return !part.supportAllowed && overhangMm2(part, up) > 0;
  return unsupportedShare(part, up) > MOST_UNSUPPORTED;
}

/** Overhang over footprint up to which a pellet machine bridges it without support: common practice, no source. */
const MOST_UNSUPPORTED = 0.1;

function noDirection(part: Part): RouteReason {
  const isMeasured = part.geometry.measures.standings !== undefined;
  const all = isMeasured ? ["all that were measured"] : ["x", "y", "z"];
  const named = (part.orientations ?? all).join(", ");
  const loadAxis = part.loadAxis ?? "none";
  const sentence = isMeasured
    ? `no measured direction may point up: allowed are ${named}, and its load along ${loadAxis} must be ${NEAR_VERTICAL_DEG}° or more off the vertical.`
    : `no axis may be vertical: allowed are ${named}, and its load is along ${loadAxis}.`;
  return { code: "orientation", sentence, values: { allowed: named, loadAxis } };
}

/** Speaks of the direction with the smallest overhang. */
function noSupport(part: Part, directions: readonly string[], machine: Machine): RouteReason {
  if (machine.process === "pellet") {
    const shares = directions.map((up) => ({ up, share: unsupportedShare(part, up) }));
    const { up, share } = shares.reduce((best, next) => (next.share < best.share ? next : best));
    const overhangAreaMm2 = overhangMm2(part, up);
    const sentence = `needs support, a pellet machine builds without: with ${up} up ${say(overhangAreaMm2)} mm² hang over, ${say(100 * share)} % of its footprint.`;
    return { code: "support", sentence, values: { up, overhangAreaMm2, sharePct: 100 * share } };
  }
  const overhangAreaMm2 = Math.min(...directions.map((up) => overhangMm2(part, up)));
  const sentence = `${say(overhangAreaMm2)} mm² hang over and supports must not touch the part.`;
  return { code: "support", sentence, values: { overhangAreaMm2 } };
}

/** Speaks of the way of standing that comes closest. */
function tooLarge(part: Part, directions: readonly string[], machine: Machine): RouteReason {
  const closest = directions
    .map((up) => ({ up, ...closestStanding(part, up, machine) }))
    .reduce((best, next) => (next.excess < best.excess ? next : best));
  const { footprintMm, heightMm } = closest.standing;
  const usable = usableMm(machine);
  const values = {
    axis: closest.up,
    acrossXMm: footprintMm.x,
    acrossYMm: footprintMm.y,
    heightMm,
    usableXMm: usable.x,
    usableYMm: usable.y,
    usableZMm: usable.z,
  };
  const size = `${say(footprintMm.x)} x ${say(footprintMm.y)} mm across and ${say(heightMm)} mm high`;
  const room = `${say(usable.x)} x ${say(usable.y)} mm between the margins and ${say(usable.z)} mm high`;
  const way = measuredStanding(part, closest.up) ? "up" : "vertical";
  return { code: "too-large", sentence: `too large: ${size} with ${closest.up} ${way}, ${room}.`, values };
}

function closestStanding(
  part: Part,
  up: string,
  machine: Machine,
): { readonly standing: StandingBox; readonly excess: number } {
  const { allowanceMm } = part.finishing;
  const { boxMm } = part.geometry.measures;
  const measured = measuredStanding(part, up);
  if (measured) return closestTurn({ standing: measured, boxMm, allowanceMm }, machine);
  const standing = standUp(boxMm, axisOf(up), allowanceMm);
  return { standing, excess: excess(standing, machine) };
}

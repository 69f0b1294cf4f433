import type { Machine } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import type { Standing } from "./deposit.ts";
import { excess, fillPlatform, standUp, usableMm } from "./fit.ts";
import type { StandingBox } from "./fit.ts";
import { verticalAxes } from "./orientation.ts";
import type { RouteReason } from "./route.ts";
import { say } from "./say.ts";
import { overhangMm2 } from "./supports.ts";

/** Ways a part can stand on a machine, or why it cannot. */
export interface Standings {
  readonly standings: readonly Standing[];
  readonly reasons: readonly RouteReason[];
}

/**
 * Every way a part can stand on a machine: an axis that may be vertical, small enough, and on filament machines without an
 * overhang that must not be supported. Example: 812 mm across on 600 mm between the margins: none, "too-large".
 */
export function findStandings(part: Part, machine: Machine): Standings {
  const axes = verticalAxes(part);
  if (axes.length === 0) return { standings: [], reasons: [noAxis(part)] };
  const { boxMm } = part.geometry.measures;
  const boxes = axes.map((axis) => ({ axis, box: standUp(boxMm, axis, part.finishing.allowanceMm) }));
  const fitting = boxes.flatMap(({ axis, box }) => {
    const { footprintMm, copies } = fillPlatform(box, machine);
    return copies > 0 ? [{ axis, footprintMm, heightMm: box.heightMm, copies }] : [];
  });
  const reasons = fitting.length === 0 ? [tooLarge(boxes, machine)] : [];
  const hanging = (standing: { axis: Standing["axis"] }): boolean =>
    machine.process === "filament" && !part.supportAllowed && overhangMm2(part, standing.axis) > 0;
  const standings = fitting.filter((standing) => !hanging(standing));
  const support = axes.every((axis) => hanging({ axis })) || (fitting.length > 0 && standings.length === 0);
  return { standings, reasons: support ? [...reasons, noSupport(part)] : reasons };
}

function noAxis(part: Part): RouteReason {
  const named = (part.orientations ?? ["x", "y", "z"]).join(", ");
  const loadAxis = part.loadAxis ?? "none";
  const sentence = `no axis may be vertical: allowed are ${named}, and its load is along ${loadAxis}.`;
  return { code: "orientation", sentence, values: { allowed: named, loadAxis } };
}

function noSupport(part: Part): RouteReason {
  const overhangAreaMm2 = part.geometry.measures.overhangAreaMm2 ?? 0;
  const sentence = `${say(overhangAreaMm2)} mm² hang over and supports must not touch the part.`;
  return { code: "support", sentence, values: { overhangAreaMm2 } };
}

/** Speaks of the way of standing that comes closest. */
function tooLarge(
  boxes: readonly { axis: Standing["axis"]; box: StandingBox }[],
  machine: Machine,
): RouteReason {
  const closest = boxes.reduce((best, next) =>
    excess(next.box, machine) < excess(best.box, machine) ? next : best,
  );
  const { footprintMm, heightMm } = closest.box;
  const usable = usableMm(machine);
  const values = {
    axis: closest.axis,
    acrossXMm: footprintMm.x,
    acrossYMm: footprintMm.y,
    heightMm,
    usableXMm: usable.x,
    usableYMm: usable.y,
    usableZMm: usable.z,
  };
  const part = `${say(footprintMm.x)} x ${say(footprintMm.y)} mm across and ${say(heightMm)} mm high`;
  const room = `${say(usable.x)} x ${say(usable.y)} mm between the margins and ${say(usable.z)} mm high`;
  return {
    code: "too-large",
    sentence: `too large: ${part} with ${closest.axis} vertical, ${room}.`,
    values,
  };
}

import type { OrderCopies } from "../../cost/build-lines.ts";
import { runMin, slowestLayerS } from "../../estimate/print-time.ts";
import type { RouteReason } from "../../estimate/route.ts";
import { sideUp } from "../../shop/direction.ts";
import type { Finding } from "../../shop/finding.ts";
import { broken, routeInBuild } from "./check-source.ts";
import type { CheckedBuild, CheckSource } from "./check-source.ts";
import { packPlatform } from "../packing/platform-packing.ts";

/**
 * What one planned build is: feasible routes with that nozzle, bead, layer height and orientation, as many copies as they
 * allow, footprints that fit the platform together, layers that bond, a run as long as it takes, and the mass it uses.
 */
export function checkPlannedBuilds(source: CheckSource): Finding[] {
  return source.planned.flatMap((checked) => {
    if (!checked.items) return noRoute(source, checked);
    return [
      ...checkMixing(checked),
      ...checkCopies(checked, checked.items),
      ...checkTurns(checked, checked.items),
      ...checkPlatform(checked, checked.items),
      ...checkLayerTime(checked, checked.items),
      ...checkRun(checked, checked.items),
    ];
  });
}

function noRoute(source: CheckSource, checked: CheckedBuild): Finding[] {
  const { build, machine, feedstock } = checked;
  const refused = build.items.filter(({ orderId }) => !routeInBuild(source, build, checked, orderId));
  const how = `nozzle ${build.nozzleId}, bead ${build.beadWidthMm} mm, layer ${build.layerHeightMm} mm, ${sideUp(build.orientation)}`;
  return refused.map(({ orderId }) => {
    const sentences = reasonsFor(source, checked, orderId).map(({ sentence }) => sentence);
    return broken(
      "route",
      ["builds", build.id, "items", orderId],
      [
        `Build ${build.id} makes order ${orderId} on ${machine.id} of ${feedstock.id} with ${how}: no feasible route is so.`,
        ...sentences,
      ].join(" "),
    );
  });
}

function reasonsFor(
  source: CheckSource,
  { build, machine, feedstock }: CheckedBuild,
  orderId: string,
): readonly RouteReason[] {
  const order = source.order(orderId);
  const answers = order ? source.routes(source.part(order), machine, feedstock) : [];
  return answers.flatMap((answer) =>
    answer.status === "refused" && answer.nozzleId === build.nozzleId ? answer.reasons : [],
  );
}

function checkMixing({ build, machine }: CheckedBuild): Finding[] {
  if (machine.mixedPlatform || build.items.length === 1) return [];
  return [
    broken(
      "mixed-platform",
      ["builds", build.id, "items"],
      `Build ${build.id} mixes ${build.items.length} orders, which ${machine.id} does not allow.`,
    ),
  ];
}

function checkCopies({ build }: CheckedBuild, items: readonly OrderCopies[]): Finding[] {
  return items.flatMap(({ orderId, copies, route }) => {
    const where = ["builds", build.id, "items", orderId];
    const has = `Build ${build.id} has ${copies} copies of ${orderId}`;
    if (copies < route.copiesMin) {
      return [
        broken("too-few-copies", where, `${has}; its layers need at least ${route.copiesMin} in a build.`),
      ];
    }
    if (copies <= route.copiesMax) return [];
    return [
      broken("too-many-copies", where, `${has}; its route allows at most ${route.copiesMax} in a build.`),
    ];
  });
}

/** The turn of a copy decides what space it takes. */
function checkTurns({ build }: CheckedBuild, items: readonly OrderCopies[]): Finding[] {
  return build.items.flatMap(({ orderId, rotationDeg = 0 }) => {
    const needed = items.find((item) => item.orderId === orderId)?.route.rotationDeg ?? 0;
    if (Math.abs(rotationDeg - needed) < SAME_DEG) return [];
    const sentence = `Build ${build.id} turns ${orderId} by ${rotationDeg}° about the vertical; its route turns it by ${needed}°.`;
    return [broken("turn", ["builds", build.id, "items", orderId], sentence)];
  });
}

const SAME_DEG = 1e-6;

function checkPlatform({ build, machine }: CheckedBuild, items: readonly OrderCopies[]): Finding[] {
  const pieces = items.flatMap(({ copies, route }) =>
    Array.from({ length: copies }, () => route.footprintMm),
  );
  const x = machine.envelopeMm.x - 2 * machine.edgeMarginMm;
  const y = machine.envelopeMm.y - 2 * machine.edgeMarginMm;
  if (packPlatform(pieces, { x, y }, machine.partGapMm)) return [];
  return [
    broken(
      "platform",
      ["builds", build.id, "items"],
      `Build ${build.id} has ${pieces.length} pieces that do not fit the ${x} \u00d7 ${y} mm of ${machine.id} with a gap of ${machine.partGapMm} mm.`,
    ),
  ];
}

/** Parts that share a platform share its layers: one after another they must be over before the first is too cold to bond. */
function checkLayerTime({ build }: CheckedBuild, items: readonly OrderCopies[]): Finding[] {
  const layerS = items.reduce((sum, item) => sum + slowestLayerS(item), 0);
  const limitS = Math.min(...items.map(({ route }) => route.longestLayerS));
  if (layerS <= limitS + DUST_S) return [];
  return [
    broken(
      "layer-time",
      ["builds", build.id, "items"],
      `Build ${build.id} takes ${layerS.toFixed(1)} s for its slowest layer; it bonds up to ${limitS.toFixed(1)} s.`,
    ),
  ];
}

const DUST_S = 1e-6;

function checkRun(
  { build, printStartMin, printEndMin }: CheckedBuild,
  items: readonly OrderCopies[],
): Finding[] {
  const neededMin = runMin(items);
  const plannedMin = printEndMin - printStartMin;
  if (plannedMin === neededMin) return [];
  return [
    broken(
      "run-length",
      ["builds", build.id, "printEnd"],
      `Build ${build.id} prints for ${plannedMin} min in the plan; its copies take ${neededMin} min.`,
    ),
  ];
}

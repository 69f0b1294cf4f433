import { AXIS_DIRECTIONS } from "../geometry/direction.ts";
import type { Direction } from "../geometry/direction.ts";
import { pairEdges } from "../geometry/edges.ts";
import type { EdgePairs } from "../geometry/edges.ts";
import { layerProfile } from "../geometry/layer-profile.ts";
import { measureBody } from "../geometry/measure.ts";
import type { BodyMeasures } from "../geometry/measure.ts";
import type { Mesh } from "../geometry/mesh.ts";
import { footprintHull, heightMm, overhang } from "../geometry/standing.ts";
import type { Measures, Part } from "../shop/part.ts";
import { isNamed } from "../shop/directions-up.ts";
import { MOST_HULL_CORNERS } from "../shop/standing.ts";
import type { MeasuredStanding } from "../shop/standing.ts";
import { rounded, bandsOf } from "./profile-cuts.ts";
import type { FineCuts } from "./profile-cuts.ts";

interface BodyOptions {
  /** directions that may point up beside the six axis directions */
  readonly buildDirections?: Part["buildDirections"];
  /** directions that the part may be built in, as it names them: others are left out; without it all are kept */
  readonly orientations?: Part["orientations"];
  /** what `measureBody` gave already, so that it is not done twice */
  readonly body?: BodyMeasures;
}

/**
 * What a shop document keeps of a mesh: its measures, and for each of its six axis directions up (and those asked for) height,
 * footprint, overhang and cuts. With that a plan is made and checked from the document alone. The body should be closed:
 * otherwise volume and cuts mean little, which is for the caller to say.
 * Example: a box of 60 x 40 x 20 mm: 48 000 mm3, 8800 mm2, six standings of one cut each.
 */
export function measuresOfBody(mesh: Mesh, options: BodyOptions = {}): Measures {
  const edges = pairEdges(mesh);
  const body = options.body ?? measureBody(mesh, edges);
  if (!(body.volumeMm3 > 0)) throw new RangeError("a body without volume has no measures");
  const { min, max } = body.boxMm;
  const axes = AXES.flatMap(([up, down]) => standBothWays(mesh, edges, up, down));
  const own = (options.buildDirections ?? []).map(({ label, x, y, z }) => {
    const length = Math.hypot(x, y, z);
    const vector = { x: x / length, y: y / length, z: z / length };
    return { ...stand(mesh, label, vector, fineCuts(mesh, edges, vector)), vector };
  });
  const all = [...axes, ...own];
  const asRead = all.find(({ up }) => up === "z");
  return {
    volumeMm3: rounded(body.volumeMm3),
    areaMm2: rounded(body.areaMm2),
    boxMm: { x: rounded(max.x - min.x), y: rounded(max.y - min.y), z: rounded(max.z - min.z) },
    overhangAreaMm2: asRead?.overhangAreaMm2 ?? 0,
    standings: all.filter(({ up }) => isNamed(options.orientations, up)),
  };
}

const AXES = [
  ["z", "-z"],
  ["y", "-y"],
  ["x", "-x"],
] as const;

/** An axis either way up: the cuts are the same, in the other order. */
function standBothWays(
  mesh: Mesh,
  edges: EdgePairs,
  up: keyof typeof AXIS_DIRECTIONS,
  down: keyof typeof AXIS_DIRECTIONS,
): MeasuredStanding[] {
  const fine = fineCuts(mesh, edges, AXIS_DIRECTIONS[up]);
  return [
    stand(mesh, up, AXIS_DIRECTIONS[up], fine),
    stand(mesh, down, AXIS_DIRECTIONS[down], upsideDown(fine)),
  ];
}

function stand(mesh: Mesh, up: string, direction: Direction, fine: StoodCuts): MeasuredStanding {
  const { areaMm2, supportVolumeMm3 } = overhang(mesh, direction);
  const hull = footprintHull(mesh, direction, MOST_HULL_CORNERS);
  return {
    up,
    heightMm: rounded(fine.heightMm),
    hullMm: hull.map(({ x, y }) => [rounded(x), rounded(y)]),
    overhangAreaMm2: rounded(areaMm2),
    supportVolumeMm3: rounded(supportVolumeMm3),
    cuts: bandsOf(fine, fine.heightMm),
  };
}

/** Cuts 0.1 mm apart, closer than most machines' layers, but no more of them than so many. */
const FINE_MM = 0.1;
const MOST_FINE_CUTS = 400;

interface StoodCuts extends FineCuts {
  readonly heightMm: number;
}

function fineCuts(mesh: Mesh, edges: EdgePairs, up: Direction): StoodCuts {
  const height = heightMm(mesh, up);
  const count = Math.min(MOST_FINE_CUTS, Math.max(1, Math.ceil(height / FINE_MM)));
  const profile = layerProfile(mesh, up, height / count, edges);
  return { ...profile, corners: profile.sharpCorners };
}

function turned(values: ArrayLike<number>): number[] {
  return Array.from(values).toReversed();
}

function upsideDown(fine: StoodCuts): StoodCuts {
  return {
    heightMm: fine.heightMm,
    areaMm2: turned(fine.areaMm2),
    perimeterMm: turned(fine.perimeterMm),
    islands: turned(fine.islands),
    holes: turned(fine.holes),
    corners: turned(fine.corners),
    thinnestMm: turned(fine.thinnestMm),
  };
}

import { type Direction, standUp } from "./direction.ts";
import { type EdgePairs, pairEdges } from "./edges.ts";
import { sweepLayers } from "./layer-sweep.ts";
import type { Mesh } from "./mesh.ts";
import { countCorners } from "./outline-corners.ts";
import { type Outlines, makeCutter } from "./outlines.ts";
import { isDust, thinnestMm } from "./thinnest.ts";

/** What each layer of a body measures, from the bottom up; entry i of each list is layer i. */
export interface LayerProfile {
  readonly layerHeightMm: number;
  /** height of the body; the last layer may be thinner than the others */
  readonly heightMm: number;
  /** height of the cut above the bottom: the middle of the layer, mm */
  readonly zMm: Float64Array;
  /** material in the cut; holes are taken off, mm2 */
  readonly areaMm2: Float64Array;
  /** outline with holes, mm */
  readonly perimeterMm: Float64Array;
  /** separate regions */
  readonly islands: Int32Array;
  /** holes in them */
  readonly holes: Int32Array;
  /** turns of 10 degrees or more */
  readonly corners: Int32Array;
  /** those of 30 degrees or more: a hole drawn as a 24-gon has none */
  readonly sharpCorners: Int32Array;
  /** thinnest region (`thinnestMm`); 0 where nothing is cut */
  readonly thinnestMm: Float64Array;
  /** layers whose outline had a gap, closed by a straight line: the surface is open there */
  readonly layersWithGaps: number;
}

/**
 * Cuts a body with a direction up into layers and measures each at its middle, in one sweep over the triangles.
 * The areas times the layer heights add up to about the volume (midpoint rule).
 * Example: a box of 60 x 40 x 20 mm in layers of 0.2 mm: 100 layers of 2400 mm2, 200 mm, one island, 4 corners, 40 mm.
 */
export function layerProfile(
  mesh: Mesh,
  up: Direction,
  layerHeightMm: number,
  edges: EdgePairs = pairEdges(mesh),
): LayerProfile {
  if (!(layerHeightMm > 0)) throw new RangeError(`layer height must be positive: ${layerHeightMm}`);
  const stood = standUp(mesh, up);
  const { min, max } = stood.box;
  const profile = emptyProfile(max.z - min.z, layerHeightMm);
  const leastMm = SMALLEST_SHARE * Math.max(-min.x, -min.y, -min.z, max.x, max.y, max.z);
  const cut = makeCutter(stood.mesh, edges.mates);
  const cutsMm = profile.zMm.map((zMm) => min.z + zMm);
  let layersWithGaps = 0;
  sweepLayers(stood.mesh, edges.mates, cutsMm, (layer, triangles, count) => {
    const outlines = cut(cutsMm[layer]!, triangles, count);
    if (outlines.gaps > 0) layersWithGaps++;
    measureCut(profile, layer, outlines, leastMm);
  });
  return { ...profile, layersWithGaps };
}

/** Outline edges shorter than this share of its largest coordinate are noise of the file: a 32-bit float keeps 24 bits. */
const SMALLEST_SHARE = 2e-6;

/** More layers than any build has: keeps a body in the wrong unit from filling the memory. */
const MOST_LAYERS = 200_000;

type Cuts = Omit<LayerProfile, "layersWithGaps">;

function emptyProfile(heightMm: number, layerHeightMm: number): Cuts {
  const layers = Math.max(1, Math.ceil(heightMm / layerHeightMm - ROUNDING_SLACK));
  if (!(layers <= MOST_LAYERS)) throw new RangeError(`too many layers: ${layers}, at most ${MOST_LAYERS}`);
  const zMm = Float64Array.from({ length: layers }, (_, layer) => (layer + 0.5) * layerHeightMm);
  zMm[layers - 1] = ((layers - 1) * layerHeightMm + heightMm) / 2;
  return {
    layerHeightMm,
    heightMm,
    zMm,
    areaMm2: new Float64Array(layers),
    perimeterMm: new Float64Array(layers),
    islands: new Int32Array(layers),
    holes: new Int32Array(layers),
    corners: new Int32Array(layers),
    sharpCorners: new Int32Array(layers),
    thinnestMm: new Float64Array(layers),
  };
}

/** Share of a layer below which the rest of a height is rounding and not another layer. */
const ROUNDING_SLACK = 1e-6;

function measureCut(profile: Cuts, layer: number, outlines: Outlines, leastMm: number): void {
  for (let loop = 0; loop < outlines.loops; loop++) {
    profile.areaMm2[layer]! += outlines.areaMm2[loop]!;
    profile.perimeterMm[layer]! += outlines.lengthMm[loop]!;
    if (isDust(outlines, loop, leastMm)) continue;
    const { all, sharp } = countCorners(outlines, loop, leastMm);
    profile.corners[layer]! += all;
    profile.sharpCorners[layer]! += sharp;
    if (outlines.areaMm2[loop]! > 0) profile.islands[layer]!++;
    else profile.holes[layer]!++;
  }
  profile.thinnestMm[layer] = thinnestMm(outlines, leastMm);
}

import type { Nozzle, Process } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import { beadAreaMm2 } from "./bead.ts";
import { layerKinds } from "./layer-kinds.ts";
import type { LayerKind } from "./layer-kinds.ts";
import { followedShare, layerPath } from "./layer-path.ts";
import type { LayerPath } from "./layer-path.ts";
import type { Outlines } from "./layer-work.ts";
import { overhangMm2, supportMm3 } from "./supports.ts";

/** A part stood up with one direction up, turned as it fills the platform best. */
export interface Standing {
  /** label of the direction of the part that points up */
  readonly up: string;
  /** turn about the vertical, counter-clockwise from above, degrees */
  readonly rotationDeg: number;
  readonly footprintMm: { readonly x: number; readonly y: number };
  readonly heightMm: number;
  /** most copies on the platform */
  readonly copies: number;
}

/** A bead that a nozzle may lay for a part. */
export interface Bead {
  readonly beadWidthMm: number;
  readonly layerHeightMm: number;
}

/** Layers of one kind with their path. */
export interface PathLayers extends Outlines {
  readonly count: number;
  readonly path: LayerPath;
  /** thickness of the wall that cools in such a layer, mm */
  readonly coolingMm: number;
}

/** What is laid down for one copy, whatever the feedstock and its speed. */
export interface Deposit {
  readonly standing: Standing;
  readonly bead: Bead;
  readonly nozzle: Nozzle;
  readonly layers: readonly PathLayers[];
  readonly layerCount: number;
  readonly volumeMm3: number;
  readonly supportMm3: number;
  /** surface that hangs over without support, mm2 */
  readonly unsupportedMm2: number;
  /** starts of the flow within layers, all layers of one copy */
  readonly starts: number;
  /** starts in each layer are its islands less this: a part alone goes on where the layer before ended */
  readonly continuing: number;
  readonly mostIslands: number;
  /** thickness that decides how fast layers cool, mm */
  readonly wallWidthMm: number;
}

/** What is laid down, for whom and how. */
interface DepositInput {
  readonly part: Part;
  readonly process: Process;
  readonly nozzle: Nozzle;
  readonly standing: Standing;
  readonly bead: Bead;
}

/**
 * Lays a part down in one way. Filament machines build supports, pellet machines build without.
 * Example: a box of 60 x 40 x 20 mm, bead 0.45 x 0.2, 2 walls, 20 %, 4 solid layers: 15 273.907 mm3 in 100 layers.
 */
export function deposit({ part, process, nozzle, standing, bead }: DepositInput): Deposit {
  const kinds = layerKinds(part, standing.up, bead.layerHeightMm);
  const { layers, layerCount, pathMm, islands, mostIslands, wallWidthMm } = knownPaths(part, kinds, bead);
  const overhang = overhangMm2(part, standing.up);
  const continuing = standing.copies === 1 ? 1 : 0;
  return {
    standing,
    bead,
    nozzle,
    layers,
    layerCount,
    volumeMm3: pathMm * beadAreaMm2(bead.beadWidthMm, bead.layerHeightMm),
    supportMm3: process === "filament" ? supportMm3(part, standing.up, standing.heightMm) : 0,
    unsupportedMm2: process === "filament" ? 0 : overhang,
    starts: islands - continuing * layerCount,
    continuing,
    mostIslands,
    wallWidthMm,
  };
}

/** Paths of all layers of a part with one bead width, and what they add up to for one copy. */
interface PartPaths {
  readonly layers: readonly PathLayers[];
  readonly layerCount: number;
  readonly pathMm: number;
  /** islands of all layers */
  readonly islands: number;
  readonly mostIslands: number;
  readonly wallWidthMm: number;
}

const pathsOf = new WeakMap<readonly LayerKind[], Map<number, PartPaths>>();

/** Paths of one part's layers, computed once for each bead width whichever machine asks: kinds of layers never change. */
function knownPaths(part: Part, kinds: readonly LayerKind[], bead: Bead): PartPaths {
  const ofKinds = pathsOf.get(kinds) ?? new Map<number, PartPaths>();
  pathsOf.set(kinds, ofKinds);
  const paths = ofKinds.get(bead.beadWidthMm) ?? partPaths(part, kinds, bead);
  ofKinds.set(bead.beadWidthMm, paths);
  return paths;
}

function partPaths(part: Part, kinds: readonly LayerKind[], bead: Bead): PartPaths {
  const layers = kinds.map((kind) => pathLayers(part, kind, bead));
  let [layerCount, pathMm, islands, mostIslands] = [0, 0, 0, -Infinity];
  for (const layer of layers) {
    layerCount += layer.count;
    pathMm += layer.count * (layer.path.wallMm + layer.path.infillMm);
    islands += layer.count * layer.islands;
    mostIslands = Math.max(mostIslands, layer.islands);
  }
  const wallWidthMm = coolingWidthMm(part, kinds, bead.beadWidthMm);
  return { layers, layerCount, pathMm, islands, mostIslands, wallWidthMm };
}

/** The path of one kind of layer. */
export function pathLayers(part: Part, { count, solid, cut }: LayerKind, bead: Bead): PathLayers {
  const density = solid ? 1 : part.infillPct / 100;
  const path = layerPath(cut, { beadWidthMm: bead.beadWidthMm, walls: part.shells, density });
  const { islands } = cut;
  const coolingMm = coolingOf(part, (2 * cut.areaMm2) / cut.perimeterMm, bead.beadWidthMm, density);
  if (cut.corners === undefined) return { count, islands, path, coolingMm };
  return {
    count,
    islands,
    path,
    coolingMm,
    corners: cut.corners * followedShare(cut, path, bead.beadWidthMm),
  };
}

/**
 * Thickness of the wall that cools, mm. A cut of area A and outline P is 2A/P thick; where its walls leave room between them
 * it lies between the walls alone (no infill) and the whole (filled solid), in proportion to the infill.
 */
function coolingWidthMm(part: Part, kinds: readonly LayerKind[], beadWidthMm: number): number {
  let [areaMm2, perimeterMm] = [0, 0];
  for (const { count, cut } of kinds) {
    areaMm2 += count * cut.areaMm2;
    perimeterMm += count * cut.perimeterMm;
  }
  return coolingOf(part, (2 * areaMm2) / perimeterMm, beadWidthMm, part.infillPct / 100);
}

function coolingOf(part: Part, wholeMm: number, beadWidthMm: number, density: number): number {
  const wallMm = part.shells * beadWidthMm;
  if (2 * wallMm >= wholeMm) return wholeMm;
  return wallMm + density * (wholeMm - wallMm);
}

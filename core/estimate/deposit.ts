import type { Nozzle, Process } from "../shop/machine.ts";
import type { Axis, Part } from "../shop/part.ts";
import { beadAreaMm2 } from "./bead.ts";
import type { LayerKind } from "./layer-kinds.ts";
import { layerPath } from "./layer-path.ts";
import type { LayerPath } from "./layer-path.ts";
import { overhangMm2, supportVolumeMm3 } from "./supports.ts";

/** A part stood up on one of its axes, turned as it fills the platform best. */
export interface Standing {
  readonly axis: Axis;
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
export interface PathLayers {
  readonly count: number;
  readonly islands: number;
  readonly path: LayerPath;
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
export interface DepositInput {
  readonly part: Part;
  readonly process: Process;
  readonly nozzle: Nozzle;
  readonly standing: Standing;
  readonly bead: Bead;
  /** the part's layers on that axis at that layer height */
  readonly kinds: readonly LayerKind[];
}

/**
 * Lays a part down in one way. Filament machines build supports, pellet machines build without.
 * Example: a box of 60 x 40 x 20 mm, bead 0.45 x 0.2, 2 walls, 20 %, 4 solid layers: 15 273.907 mm3 in 100 layers.
 */
export function deposit({ part, process, nozzle, standing, bead, kinds }: DepositInput): Deposit {
  const layers = kinds.map((kind) => pathLayers(part, kind, bead));
  const overhang = overhangMm2(part, standing.axis);
  const continuing = standing.copies === 1 ? 1 : 0;
  const pathMm = sum(layers, ({ path }) => path.wallMm + path.infillMm);
  return {
    standing,
    bead,
    nozzle,
    layers,
    layerCount: sum(layers, () => 1),
    volumeMm3: pathMm * beadAreaMm2(bead.beadWidthMm, bead.layerHeightMm),
    supportMm3: process === "filament" ? supportVolumeMm3(overhang, standing.heightMm) : 0,
    unsupportedMm2: process === "filament" ? 0 : overhang,
    starts: sum(layers, ({ islands }) => islands - continuing),
    continuing,
    mostIslands: Math.max(...layers.map(({ islands }) => islands)),
    wallWidthMm: coolingWidthMm(part, kinds, bead.beadWidthMm),
  };
}

function pathLayers(part: Part, kind: LayerKind, bead: Bead): PathLayers {
  const density = kind.solid ? 1 : part.infillPct / 100;
  const path = layerPath(kind.cut, { beadWidthMm: bead.beadWidthMm, walls: part.shells, density });
  return { count: kind.count, islands: kind.cut.islands, path };
}

/**
 * Thickness of the wall that cools, mm. A cut of area A and outline P is 2A/P thick; where its walls leave room between them
 * it lies between the walls alone (no infill) and the whole (filled solid), in proportion to the infill.
 */
function coolingWidthMm(part: Part, kinds: readonly LayerKind[], beadWidthMm: number): number {
  const area = kinds.reduce((total, { count, cut }) => total + count * cut.areaMm2, 0);
  const perimeter = kinds.reduce((total, { count, cut }) => total + count * cut.perimeterMm, 0);
  const wholeMm = (2 * area) / perimeter;
  const wallMm = part.shells * beadWidthMm;
  if (2 * wallMm >= wholeMm) return wholeMm;
  return wallMm + (part.infillPct / 100) * (wholeMm - wallMm);
}

function sum(layers: readonly PathLayers[], of: (layer: PathLayers) => number): number {
  return layers.reduce((total, layer) => total + layer.count * of(layer), 0);
}

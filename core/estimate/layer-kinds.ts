import type { Axis, Measures, Part } from "../shop/part.ts";
import { standUp } from "./fit.ts";
import { circleMm } from "./layer-path.ts";
import type { Cut } from "./layer-path.ts";

/** Layers of one part that are alike. */
export interface LayerKind {
  readonly count: number;
  /** filled to 100 %: one of the part's solid layers at its bottom or top */
  readonly solid: boolean;
  readonly cut: Cut;
}

/**
 * The layers of a part that stands on one of its axes, alike ones counted together. Along z they come from the cuts that were
 * measured, each layer taking the nearest cut. Without cuts, and along x and y, the body counts as a prism: mean area is
 * volume over height, and the outline is what is left of the surface over the height (at least that of a circle of the area).
 * The allowance grows each cut at its outer outline. Only the first and last `solidLayers` are solid.
 * Example: a box of 60 x 40 x 20 mm at 0.2 mm with 4 solid layers: 8 solid and 92 others of 2400 mm2 and 200 mm.
 */
export function layerKinds(part: Part, axis: Axis, layerHeightMm: number): LayerKind[] {
  const { measures } = part.geometry;
  const allowanceMm = part.finishing.allowanceMm;
  const { heightMm } = standUp(measures.boxMm, axis, allowanceMm);
  const layers = Math.max(1, Math.ceil(heightMm / layerHeightMm - DUST_LAYERS));
  const bare = standUp(measures.boxMm, axis, 0);
  const outline = { ...bare.footprintMm, allowanceMm };
  const cuts = measures.layers ?? [];
  if (axis !== "z" || !cuts.some(({ areaMm2 }) => areaMm2 > 0)) {
    return splitSolid(layers, part.solidLayers, grown(prismCut(measures, bare.heightMm), outline));
  }
  return fewer(cutLayers(part, cuts, layers, layerHeightMm, outline));
}

/** Footprint of the bare body and what is added to its outline, mm. */
interface Outline {
  readonly x: number;
  readonly y: number;
  readonly allowanceMm: number;
}

interface BareCut {
  readonly areaMm2: number;
  readonly perimeterMm: number;
  readonly islands: number;
}

function prismCut(measures: Measures, heightMm: number): BareCut {
  const areaMm2 = measures.volumeMm3 / heightMm;
  const aroundMm = (measures.areaMm2 - 2 * areaMm2) / heightMm;
  return { areaMm2, perimeterMm: aroundMm, islands: 1 };
}

function grown(cut: BareCut, { x, y, allowanceMm }: Outline): Cut {
  const shrinkPerMm = cut.areaMm2 >= FILLS_ITS_BOX * x * y ? 8 : 2 * Math.PI;
  const islands = Math.max(1, cut.islands);
  if (cut.areaMm2 === 0) return { areaMm2: 0, perimeterMm: 0, islands, shrinkPerMm };
  const perimeterMm = Math.max(cut.perimeterMm, circleMm(cut.areaMm2));
  const outerMm = Math.min(perimeterMm, 2 * (x + y));
  return {
    areaMm2: cut.areaMm2 + outerMm * allowanceMm + (shrinkPerMm / 2) * allowanceMm ** 2,
    perimeterMm: perimeterMm + shrinkPerMm * allowanceMm,
    islands,
    shrinkPerMm,
  };
}

function splitSolid(layers: number, solidLayers: number, cut: Cut): LayerKind[] {
  const solid = Math.min(layers, 2 * solidLayers);
  const kinds = [
    { count: solid, solid: true, cut },
    { count: layers - solid, solid: false, cut },
  ];
  return kinds.filter((kind) => kind.count > 0);
}

/** Counts for each cut the layers that are nearest to it, solid and not. */
function cutLayers(
  part: Part,
  cuts: readonly (BareCut & { readonly zMm: number })[],
  layers: number,
  layerHeightMm: number,
  outline: Outline,
): LayerKind[] {
  const solid = new Float64Array(cuts.length);
  const others = new Float64Array(cuts.length);
  let nearest = 0;
  for (let layer = 0; layer < layers; layer++) {
    const zMm = (layer + 0.5) * layerHeightMm - outline.allowanceMm;
    while (isNearer(cuts[nearest + 1], cuts[nearest], zMm)) nearest += 1;
    const isSolid = layer < part.solidLayers || layer >= layers - part.solidLayers;
    const counts = isSolid ? solid : others;
    counts[nearest] = (counts[nearest] ?? 0) + 1;
  }
  return cuts.flatMap((bare, index) => {
    const cut = grown(bare, outline);
    const kinds = [
      { count: solid[index] ?? 0, solid: true, cut },
      { count: others[index] ?? 0, solid: false, cut },
    ];
    return kinds.filter(({ count }) => count > 0);
  });
}

function isNearer(next: { zMm: number } | undefined, now: { zMm: number } | undefined, zMm: number): boolean {
  return next !== undefined && now !== undefined && Math.abs(next.zMm - zMm) <= Math.abs(now.zMm - zMm);
}

/** Puts layers of nearly the same cut together, so that a part of a thousand layers is some dozens of kinds. */
function fewer(kinds: readonly LayerKind[]): LayerKind[] {
  const alike = new Map<string, LayerKind>();
  for (const kind of kinds) {
    const { areaMm2, perimeterMm, islands, shrinkPerMm } = kind.cut;
    const key = [kind.solid, islands, shrinkPerMm, step(areaMm2), step(perimeterMm)].join(" ");
    const known = alike.get(key);
    alike.set(key, known ? together(known, kind) : kind);
  }
  return [...alike.values()];
}

/** Number of a value's step on a scale of equal ratios. */
function step(value: number): number {
  return Math.round(Math.log(value) / Math.log(STEP));
}

function together(a: LayerKind, b: LayerKind): LayerKind {
  const count = a.count + b.count;
  const mean = (of: (cut: Cut) => number): number => (a.count * of(a.cut) + b.count * of(b.cut)) / count;
  const cut = { ...a.cut, areaMm2: mean((c) => c.areaMm2), perimeterMm: mean((c) => c.perimeterMm) };
  return { count, solid: a.solid, cut };
}

/** A cut that takes this share of its box's footprint is a rectangle. */
const FILLS_ITS_BOX = 0.999;
/** Cuts whose areas and outlines fall into the same step of this ratio count as one. */
const STEP = 1.04;
/** Floating-point dust that must not cost a layer. */
const DUST_LAYERS = 1e-6;

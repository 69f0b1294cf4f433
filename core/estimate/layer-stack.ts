import { axisOf, measuredStanding } from "../shop/directions-up.ts";
import type { Measures, Part } from "../shop/part.ts";
import type { MeasuredCut } from "../shop/standing.ts";
import { standUp } from "./fit.ts";
import { circleMm } from "./layer-path.ts";
import type { Cut } from "./layer-path.ts";

/** Layers one above the other that are alike. */
interface LayerRun {
  /** place in the stack's cuts */
  readonly cut: number;
  /** filled to 100 %: among the part's solid layers at its bottom or top */
  readonly solid: boolean;
  readonly count: number;
}

/** The layers of a part with one direction up, in order. */
export interface LayerStack {
  /** allowance included, from the bottom up */
  readonly cuts: readonly Cut[];
  /** from the bottom up */
  readonly runs: readonly LayerRun[];
  readonly layers: number;
}

/** A cut as it was measured, without allowance. */
interface BareCut {
  readonly areaMm2: number;
  readonly perimeterMm: number;
  readonly islands: number;
  readonly holes?: number;
  /** sharp corners of its outline; none: not known */
  readonly corners?: number;
}

/**
 * The layers of a part with a direction up, one above the other. From a mesh each layer takes the cut that holds at its middle.
 * By measures alone there are cuts along z, of which each layer takes the nearest; without cuts, and along x and y, the body
 * counts as a prism: mean area is volume over height, and the outline is what is left of the surface over the height (at
 * least that of a circle of the area). The allowance grows each cut at its outer outline. Only the first and last
 * `solidLayers` are solid. Example: a box 20 mm high at 0.2 mm with 4 solid layers: 4 solid, 92 others, 4 solid.
 */
export function layerStack(part: Part, up: string, layerHeightMm: number): LayerStack {
  const ofPart = stacksOf.get(part) ?? new Map<string, LayerStack>();
  stacksOf.set(part, ofPart);
  const key = `${layerHeightMm} ${up}`;
  const stack = ofPart.get(key) ?? makeStack(part, up, layerHeightMm);
  ofPart.set(key, stack);
  return stack;
}

/** Each stack is made once, whichever machine asks: a part never changes, another version of it is another part. */
const stacksOf = new WeakMap<Part, Map<string, LayerStack>>();

function makeStack(part: Part, up: string, layerHeightMm: number): LayerStack {
  const measured = measuredStanding(part, up);
  const { measures } = part.geometry;
  const { allowanceMm } = part.finishing;
  if (measured) {
    const layers = layerCount(measured.heightMm + 2 * allowanceMm, layerHeightMm);
    const place = bandOf(measured.cuts);
    const cuts = grownCuts(part, measured.cuts);
    return { cuts, layers, runs: runsOf(part, layers, middles(layerHeightMm, allowanceMm), place) };
  }
  const box = standUp(measures.boxMm, axisOf(up), 0);
  const layers = layerCount(box.heightMm + 2 * allowanceMm, layerHeightMm);
  const { x, y } = box.footprintMm;
  const grow = (cut: BareCut): Cut =>
    grown(cut, allowanceMm, cut.areaMm2 >= FILLS_ITS_BOX * x * y ? 8 : 2 * Math.PI, 2 * (x + y));
  const bare = measures.layers ?? [];
  if (axisOf(up) !== "z" || !bare.some(({ areaMm2 }) => areaMm2 > 0)) {
    const cuts = [grow(prismCut(measures, box.heightMm))];
    return {
      cuts,
      layers,
      runs: runsOf(
        part,
        layers,
        () => 0,
        () => 0,
      ),
    };
  }
  return {
    cuts: bare.map(grow),
    layers,
    runs: runsOf(part, layers, middles(layerHeightMm, allowanceMm), nearestOf(bare)),
  };
}

const cutsOf = new WeakMap<Part, Map<readonly MeasuredCut[], readonly Cut[]>>();

/** The cuts of one direction up with the part's allowance, the same objects for every layer height. */
function grownCuts(part: Part, measured: readonly MeasuredCut[]): readonly Cut[] {
  const ofPart = cutsOf.get(part) ?? new Map<readonly MeasuredCut[], readonly Cut[]>();
  cutsOf.set(part, ofPart);
  const { allowanceMm } = part.finishing;
  const cuts = ofPart.get(measured) ?? measured.map((cut) => grown(cut, allowanceMm, 2 * Math.PI, Infinity));
  ofPart.set(measured, cuts);
  return cuts;
}

/** Cuts through a body at the middle of every layer of one height, as `layerProfile` of the geometry gives them. */
export interface ExactCuts {
  readonly layerHeightMm: number;
  readonly areaMm2: ArrayLike<number>;
  readonly perimeterMm: ArrayLike<number>;
  readonly islands: ArrayLike<number>;
  readonly holes?: ArrayLike<number>;
  readonly sharpCorners?: ArrayLike<number>;
}

/**
 * The layers of a part of a height (allowance included) from exact cuts, one for each layer. Layers of the allowance below and
 * above the body take its lowest and highest cut. Example: 100 cuts and no allowance: 100 layers.
 */
export function exactStack(part: Part, exact: ExactCuts, heightMm: number): LayerStack {
  const { allowanceMm } = part.finishing;
  const { layerHeightMm, areaMm2, perimeterMm, islands, holes, sharpCorners } = exact;
  const cuts = Array.from(areaMm2, (area, layer) => {
    const known = sharpCorners === undefined ? {} : { corners: sharpCorners[layer] ?? 0 };
    const loops = { islands: islands[layer] ?? 0, holes: holes?.[layer] ?? 0 };
    const bare = { areaMm2: area, perimeterMm: perimeterMm[layer] ?? 0, ...loops };
    return grown({ ...bare, ...known }, allowanceMm, 2 * Math.PI, Infinity);
  });
  const place = (zMm: number): number =>
    Math.min(cuts.length - 1, Math.max(0, Math.floor(zMm / layerHeightMm)));
  const layers = layerCount(heightMm, layerHeightMm);
  return { cuts, layers, runs: runsOf(part, layers, middles(layerHeightMm, allowanceMm), place) };
}

/** Layers of one height that a part takes. Example: 20 mm at 0.3 mm take 67. */
function layerCount(heightMm: number, layerHeightMm: number): number {
  return Math.max(1, Math.ceil(heightMm / layerHeightMm - DUST_LAYERS));
}

/**
 * A measured cut with the finishing allowance around it and the way in which its outline shortens inwards. Where its corners
 * are known each outline shortens as a regular polygon with its share of them does (8 mm per mm for a rectangle), and holes
 * lengthen as much; else by what is given.
 */
function grown(cut: BareCut, allowanceMm: number, shrink: number, outlineMm: number): Cut {
  const islands = Math.max(1, cut.islands);
  const { corners } = cut;
  const { holes = 0 } = cut;
  const inwards = (islands - holes) / islands;
  const shrinkPerMm = corners === undefined ? shrink : inwards * polygonShrink(corners / (islands + holes));
  const plain = grownOutline({ ...cut, islands }, allowanceMm, shrinkPerMm, outlineMm);
  return corners === undefined ? plain : { ...plain, corners };
}

function grownOutline(cut: BareCut, allowanceMm: number, shrinkPerMm: number, outlineMm: number): Cut {
  const { islands } = cut;
  if (cut.areaMm2 === 0) return { areaMm2: 0, perimeterMm: 0, islands, shrinkPerMm };
  const perimeterMm = Math.max(cut.perimeterMm, circleMm(cut.areaMm2));
  const outerMm = Math.min(perimeterMm, outlineMm);
  return {
    areaMm2: cut.areaMm2 + outerMm * allowanceMm + (shrinkPerMm / 2) * allowanceMm ** 2,
    perimeterMm: perimeterMm + shrinkPerMm * allowanceMm,
    islands,
    shrinkPerMm,
  };
}

/** How much the outline of a regular polygon shortens per mm of inward offset: 2 c tan(pi / c); below 3 corners a circle's. */
function polygonShrink(corners: number): number {
  return corners < 3 ? 2 * Math.PI : 2 * corners * Math.tan(Math.PI / corners);
}

function prismCut(measures: Measures, heightMm: number): BareCut {
  const areaMm2 = measures.volumeMm3 / heightMm;
  const aroundMm = (measures.areaMm2 - 2 * areaMm2) / heightMm;
  return { areaMm2, perimeterMm: aroundMm, islands: 1 };
}

/** Height of the middle of a layer in the bare body. */
function middles(layerHeightMm: number, allowanceMm: number): (layer: number) => number {
  return (layer) => (layer + 0.5) * layerHeightMm - allowanceMm;
}

/** Counts layers one above the other that take the same cut and filling. */
function runsOf(
  part: Part,
  layers: number,
  middleMm: (layer: number) => number,
  place: (zMm: number) => number,
): LayerRun[] {
  const runs: { cut: number; solid: boolean; count: number }[] = [];
  for (let layer = 0; layer < layers; layer++) {
    const cut = place(middleMm(layer));
    const solid = layer < part.solidLayers || layer >= layers - part.solidLayers;
    const last = runs.at(-1);
    if (last?.cut === cut && last.solid === solid) last.count += 1;
    else runs.push({ cut, solid, count: 1 });
  }
  return runs;
}

/** The cut that holds at a height, for heights that are asked for from the bottom up. */
function bandOf(cuts: readonly MeasuredCut[]): (zMm: number) => number {
  let at = 0;
  return (zMm) => {
    while (at < cuts.length - 1 && zMm > (cuts[at]?.zMm ?? 0)) at += 1;
    return at;
  };
}

/** The nearest cut to a height, for heights that are asked for from the bottom up. */
function nearestOf(cuts: readonly { readonly zMm: number }[]): (zMm: number) => number {
  let nearest = 0;
  const distance = (at: number, zMm: number): number => Math.abs((cuts[at]?.zMm ?? Infinity) - zMm);
  return (zMm) => {
    while (nearest < cuts.length - 1 && distance(nearest + 1, zMm) <= distance(nearest, zMm)) nearest += 1;
    return nearest;
  };
}

/** A cut that takes this share of its box's footprint is a rectangle. */
const FILLS_ITS_BOX = 0.999;
/** Floating-point dust that must not cost a layer. */
const DUST_LAYERS = 1e-6;

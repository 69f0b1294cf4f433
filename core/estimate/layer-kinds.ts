import type { Part } from "../shop/part.ts";
import type { Cut } from "./layer-path.ts";
import { layerStack } from "./layer-stack.ts";
import type { LayerStack } from "./layer-stack.ts";

/** Layers of one part that are alike, wherever they are. */
export interface LayerKind {
  readonly count: number;
  /** filled to 100 %: one of the part's solid layers at its bottom or top */
  readonly solid: boolean;
  readonly cut: Cut;
}

/**
 * The layers of layer-stack.ts, alike ones counted together whatever their height, so that a part of a thousand layers is some
 * dozens of kinds. Which layer is of which kind is left to the stack.
 * Example: a box of 60 x 40 x 20 mm at 0.2 mm with 4 solid layers: 8 solid and 92 others of 2400 mm2 and 200 mm.
 */
export function layerKinds(part: Part, up: string, layerHeightMm: number): readonly LayerKind[] {
  const stack = layerStack(part, up, layerHeightMm);
  const kinds = kindsOf.get(stack) ?? fewer(countAlike(stack));
  kindsOf.set(stack, kinds);
  return kinds;
}

/** Each stack's kinds are counted once, whichever machine asks. */
const kindsOf = new WeakMap<LayerStack, readonly LayerKind[]>();

/** Counts for each cut the layers that take it, solid and not. */
function countAlike({ cuts, runs }: LayerStack): LayerKind[] {
  const solid = new Float64Array(cuts.length);
  const others = new Float64Array(cuts.length);
  for (const run of runs) {
    const counts = run.solid ? solid : others;
    counts[run.cut] = (counts[run.cut] ?? 0) + run.count;
  }
  const kinds: LayerKind[] = [];
  cuts.forEach((cut, index) => {
    const [solidCount, otherCount] = [solid[index] ?? 0, others[index] ?? 0];
    if (solidCount > 0) kinds.push({ count: solidCount, solid: true, cut });
    if (otherCount > 0) kinds.push({ count: otherCount, solid: false, cut });
  });
  return kinds;
}

/** Puts layers of nearly the same cut together. */
function fewer(kinds: readonly LayerKind[]): readonly LayerKind[] {
  if (kinds.every(({ cut }) => cut === kinds[0]?.cut)) return kinds;
  const alike = new Map<string, LayerKind>();
  for (const kind of kinds) {
    const { areaMm2, perimeterMm, islands, shrinkPerMm, corners } = kind.cut;
    const outline = corners === undefined ? shrinkPerMm : step(corners);
    const key = `${kind.solid} ${islands} ${outline} ${step(areaMm2)} ${step(perimeterMm)}`;
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

/** Cuts whose areas and outlines fall into the same step of this ratio count as one. */
const STEP = 1.04;

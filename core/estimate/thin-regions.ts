import { measuredStanding } from "../shop/directions-up.ts";
import type { Part } from "../shop/part.ts";
import type { MeasuredCut } from "../shop/standing.ts";
import type { Deposit } from "./deposit.ts";
import { layerRanges, layersIn, layerWords } from "./layer-numbers.ts";
import type { LayerRange } from "./layer-numbers.ts";
import type { LayerRefusal } from "./layer-reasons.ts";
import { layerStack } from "./layer-stack.ts";
import { say } from "./say.ts";

/** Walls under half a bead on average get none; more such layers than this share are a refusal: common practice, no source. */
const NO_BEAD = 0.5;
const MOST_WITHOUT_BEAD = 0.1;
/** Fewer layers than this share with a spot under one bead are the tips that many bodies have: not worth a word. */
const TIPS = 0.02;
/** A wall of just one bead is measured a hair thinner. */
const DUST = 1e-3;

/**
 * Why a deposit's bead is too wide for the walls of its part, where a mesh tells how thin they are; null where it is not. What
 * counts is how thick a cut is on average, 2 A / P, since a sharp edge alone keeps no part away.
 * Example: walls of 1.2 mm in most layers and a bead of 4 mm.
 */
export function thinRefusal(part: Part, deposit: Deposit): LayerRefusal | null {
  const { beadWidthMm } = deposit.bead;
  const thin = thinLayers(part, deposit, meanThicknessMm, NO_BEAD * beadWidthMm);
  if (!thin || thin.share <= MOST_WITHOUT_BEAD) return null;
  const { up } = deposit.standing;
  const words = layerWords(thin.ranges);
  const sentence = `its walls are ${say(thin.thinnestMm)} mm thick on average in ${words} of ${thin.layers} with ${up} up, less than half a bead of ${say(beadWidthMm)} mm: a finer nozzle or another direction up would cure it.`;
  const values = { up, thinnestMm: thin.thinnestMm, beadWidthMm, layers: words };
  return { reason: { code: "feature-too-fine", sentence, values }, shortBy: beadWidthMm / thin.thinnestMm };
}

/**
 * Where walls have spots under one bead, as a caution. Example: "Walls down to 0.3 mm in layers 1 to 20 are thinner than the
 * bead of 0.45 mm: they come out thicker, or with gaps."
 */
export function thinCautions(part: Part, deposit: Deposit): string[] {
  const { beadWidthMm } = deposit.bead;
  const thin = thinLayers(part, deposit, ({ thinnestMm }) => thinnestMm, (1 - DUST) * beadWidthMm);
  if (!thin || thin.share <= TIPS) return [];
  const where = thin.share === 1 ? "" : ` in ${layerWords(thin.ranges)}`;
  return [
    `Walls down to ${say(thin.thinnestMm)} mm${where} are thinner than the bead of ${say(beadWidthMm)} mm: they come out thicker, or with gaps.`,
  ];
}

function meanThicknessMm({ areaMm2, perimeterMm }: MeasuredCut): number {
  return perimeterMm > 0 ? (2 * areaMm2) / perimeterMm : 0;
}

interface ThinLayers {
  readonly ranges: readonly LayerRange[];
  readonly layers: number;
  readonly share: number;
  readonly thinnestMm: number;
}

/** Layers thinner than a limit, allowance included; null: none, or not known. Empty cuts are not thin. */
function thinLayers(
  part: Part,
  { standing, bead }: Deposit,
  thicknessMm: (cut: MeasuredCut) => number,
  limitMm: number,
): ThinLayers | null {
  const measured = measuredStanding(part, standing.up);
  if (!measured) return null;
  const around = 2 * part.finishing.allowanceMm;
  const thickness = (cut: MeasuredCut): number => thicknessMm(cut) + around || Infinity;
  if (!measured.cuts.some((cut) => thickness(cut) < limitMm)) return null;
  const { runs, layers } = layerStack(part, standing.up, bead.layerHeightMm);
  let thinnestMm = Infinity;
  const ranges = layerRanges(runs, ({ cut: place }) => {
    const cut = measured.cuts[place];
    const mm = cut ? thickness(cut) : Infinity;
    if (mm >= limitMm) return false;
    thinnestMm = Math.min(thinnestMm, mm);
    return true;
  });
  if (ranges.length === 0) return null;
  return { ranges, layers, share: layersIn(ranges) / layers, thinnestMm };
}

import type { Nozzle } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import type { Bead } from "./deposit.ts";
import type { RouteReason } from "./route.ts";
import { say } from "./say.ts";

/** Beads worth trying: thick layers first, thinner ones only when no thick one will do; or why there are none. */
export interface BeadChoices {
  readonly thick: readonly Bead[];
  readonly thin: readonly Bead[];
  readonly reasons: readonly RouteReason[];
}

/** Bead width over bore that suits most work: common practice, no source. */
const USUAL_WIDTH = 1.15;
const THINNER = [0.75, 0.5];

/**
 * Beads that a nozzle may lay for a part: no wider than its smallest feature, no thicker than its surface may show, never
 * thicker than wide. Widths tried are the widest, the usual (1.15 bores) and the narrowest.
 * Example: bore 0.4 (0.36 to 0.6 wide, 0.1 to 0.3 thick), feature 0.8, layers up to 0.2: 0.6, 0.46 and 0.36 wide, 0.2 thick.
 */
export function beadChoices(part: Part, nozzle: Nozzle): BeadChoices {
  const widest = Math.min(nozzle.beadWidthMm.max, part.smallestFeatureMm);
  const thickest = Math.min(nozzle.layerHeightMm.max, part.maxLayerHeightMm);
  const reasons = [...featureReasons(part, nozzle, widest), ...layerReasons(part, nozzle, thickest)];
  if (reasons.length > 0) return { thick: [], thin: [], reasons };
  const usual = Math.max(nozzle.beadWidthMm.min, USUAL_WIDTH * nozzle.diameterMm);
  const widths = new Set([widest, Math.min(widest, usual), nozzle.beadWidthMm.min]);
  const beads = (layerHeightMm: number): Bead[] =>
    [...widths]
      .filter((beadWidthMm) => beadWidthMm >= nozzle.layerHeightMm.min)
      .map((beadWidthMm) => ({ beadWidthMm, layerHeightMm: Math.min(layerHeightMm, beadWidthMm) }));
  const thinner = new Set(THINNER.map((share) => Math.max(nozzle.layerHeightMm.min, share * thickest)));
  thinner.delete(thickest);
  return { thick: beads(thickest), thin: [...thinner].flatMap(beads), reasons };
}

function featureReasons(part: Part, nozzle: Nozzle, widest: number): RouteReason[] {
  const narrowest = Math.max(nozzle.beadWidthMm.min, nozzle.layerHeightMm.min);
  if (narrowest <= widest) return [];
  const values = { smallestFeatureMm: part.smallestFeatureMm, narrowestBeadMm: narrowest };
  const sentence = `smallest detail ${say(part.smallestFeatureMm)} mm, narrowest bead of nozzle ${nozzle.id} ${say(narrowest)} mm.`;
  return [{ code: "feature-too-fine", sentence, values }];
}

function layerReasons(part: Part, nozzle: Nozzle, thickest: number): RouteReason[] {
  const thinnest = nozzle.layerHeightMm.min;
  if (thinnest <= thickest) return [];
  const values = { maxLayerHeightMm: part.maxLayerHeightMm, thinnestLayerMm: thinnest };
  const sentence = `layers up to ${say(part.maxLayerHeightMm)} mm may show, thinnest layer of nozzle ${nozzle.id} ${say(thinnest)} mm.`;
  return [{ code: "layer-too-thick", sentence, values }];
}

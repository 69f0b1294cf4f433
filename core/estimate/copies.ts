import type { LayerGroup } from "./route.ts";

/** What limits how many copies of a part may share a build. */
export interface CopyLimits {
  readonly layerGroups: readonly LayerGroup[];
  readonly layerChangeS: number;
  readonly shortestLayerS: number;
  readonly longestLayerS: number;
  /** longest pause in one layer, s; Infinity: any */
  readonly longestWaitS: number;
  readonly platformCopies: number;
  /** so many of the quickest layers may wait longer than the machine bears, as the tip of a cone does; none: 0 */
  readonly borneQuickLayers?: number;
}

/**
 * Fewest copies in one build so that no layer waits longer than the machine bears: its quickest layer must last as long as
 * the shortest layer time less the longest pause. At least 1.
 * Example: work 4 s, change 1 s, shortest 20 s, longest pause 6 s: 4 copies (17 s, so a pause of 3 s; 3 copies would pause 7).
 */
export function fewestCopies(limits: CopyLimits): number {
  const neededS = limits.shortestLayerS - limits.longestWaitS - limits.layerChangeS;
  if (neededS <= 0) return 1;
  return Math.max(1, Math.ceil(neededS / quickestWorkS(limits) - DUST_COPIES));
}

/** Work of the quickest layer that counts, s: empty ones do not, nor the few quickest that are borne. Example: 4 s. */
export function quickestWorkS({ layerGroups, borneQuickLayers = 0 }: CopyLimits): number {
  const worked = layerGroups.filter(({ workS }) => workS > 0);
  if (borneQuickLayers === 0) return Math.min(...worked.map(({ workS }) => workS));
  let passed = 0;
  for (const { workS, count } of worked.toSorted((a, b) => a.workS - b.workS)) {
    passed += count;
    if (passed > borneQuickLayers) return workS;
  }
  return Number.POSITIVE_INFINITY;
}

/**
 * Most copies whose slowest layer is over before it is too cold to bond, the platform aside; 0: not even one; Infinity: no
 * limit. Example: work 4 s, change 1 s, longest 20 s: 4 copies (17 s).
 */
export function mostBondingCopies(limits: CopyLimits): number {
  if (limits.longestLayerS === Number.POSITIVE_INFINITY) return Number.POSITIVE_INFINITY;
  const slowestS = Math.max(...limits.layerGroups.map(({ workS }) => workS));
  const roomS = limits.longestLayerS - limits.layerChangeS;
  return roomS <= 0 ? 0 : Math.floor(roomS / slowestS + DUST_COPIES);
}

/** Floating-point dust that must not cost a copy. */
const DUST_COPIES = 1e-9;

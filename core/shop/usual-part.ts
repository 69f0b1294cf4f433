import type { Measures, Part } from "./part.ts";

/** Detail taken of a part whose body says nothing of it, mm. */
const USUAL_DETAIL_MM = 1.2;
/** No surface is asked for, so any nozzle's thickest layer may show. */
const ANY_LAYER_MM = 100;
/** How much of the height may be thinner than what counts as the smallest detail: tips and edges always are. */
const THIN_SHARE = 0.1;

/**
 * A part of which only the body is known: two walls, four solid layers below and above, a fifth filled, any polymer, any layer,
 * any side up, supports allowed, no finishing. Common practice, no source; for people to overwrite. Example: a box of
 * 60 x 40 x 20 mm without cuts: smallest detail 1.2 mm.
 */
export function usualPart(named: Pick<Part, "id" | "name">, geometry: Part["geometry"]): Part {
  return {
    ...named,
    geometry,
    families: [],
    needs: {},
    smallestFeatureMm: smallestDetailMm(geometry.measures),
    maxLayerHeightMm: ANY_LAYER_MM,
    shells: 2,
    solidLayers: 4,
    infillPct: 20,
    supportAllowed: true,
    toolPathsReady: [],
    finishing: { labourMin: 0, machiningMin: 0, machiningPerH: 0, allowanceMm: 0 },
  };
}

/** What nine tenths of the height are at least as thick as, mm; the usual detail where no cuts were measured. */
function smallestDetailMm({ standings, boxMm }: Measures): number {
  const cuts = standings?.find(({ up }) => up === "z")?.cuts ?? [];
  const heightMm = cuts.at(-1)?.zMm ?? 0;
  const thick = cuts
    .map(({ zMm, thinnestMm }, at) => ({ thinnestMm, heightMm: zMm - (cuts[at - 1]?.zMm ?? 0) }))
    .filter(({ thinnestMm }) => thinnestMm > 0)
    .toSorted((a, b) => a.thinnestMm - b.thinnestMm);
  let belowMm = 0;
  const found = thick.find((cut) => (belowMm += cut.heightMm) > THIN_SHARE * heightMm);
  return Math.min(found?.thinnestMm ?? USUAL_DETAIL_MM, boxMm.x, boxMm.y, boxMm.z);
}

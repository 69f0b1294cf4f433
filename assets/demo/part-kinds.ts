import type { Part } from "../../core/shop/part.ts";

/** A part before its mesh is measured. */
export type PartPlan = Omit<Part, "geometry">;

type Wishes = Partial<Omit<PartPlan, "id" | "name" | "finishing">> & {
  /** an operator's finishing work on one copy, min */
  readonly finishMin?: number;
  /** machining of one copy, min, with the rate below and 3 mm left on every side */
  readonly machiningMin?: number;
};

const MACHINING_PER_H = 85;

/** A part printed as it stands: fine surface, two walls, a fifth filled, tool paths known for filament, unless it says other. */
export function part(id: string, name: string, wishes: Wishes): PartPlan {
  const { finishMin = 1, machiningMin = 0, ...own } = wishes;
  return {
    id,
    name,
    families: [],
    needs: {},
    smallestFeatureMm: 1.2,
    maxLayerHeightMm: 0.3,
    shells: 2,
    solidLayers: 4,
    infillPct: 20,
    supportAllowed: true,
    orientations: ["+z"],
    toolPathsReady: ["filament"],
    finishing: {
      labourMin: finishMin,
      machiningMin,
      machiningPerH: MACHINING_PER_H,
      allowanceMm: machiningMin > 0 ? 3 : 0,
    },
    ...own,
  };
}

/** Thin-walled and large: the wall is all there is, thick layers may show, tool paths known for pellets. */
export function shell(id: string, name: string, wishes: Wishes): PartPlan {
  return part(id, name, {
    smallestFeatureMm: 4,
    maxLayerHeightMm: 2.4,
    shells: 2,
    solidLayers: 0,
    infillPct: 100,
    toolPathsReady: ["pellet"],
    finishMin: 10,
    ...wishes,
  });
}

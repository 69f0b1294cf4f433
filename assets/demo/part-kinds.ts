import type { Measures, Part } from "../../core/shop/part.ts";

type Wishes = Partial<Omit<Part, "id" | "name" | "geometry" | "finishing">> & {
  /** an operator's finishing work on one copy, min */
  readonly finishMin?: number;
  /** machining of one copy, min, with the rate below and 3 mm left on every side */
  readonly machiningMin?: number;
};

const MACHINING_PER_H = 85;

/** A part printed as it stands: fine surface, two walls, a fifth filled, tool paths known for filament, unless it says other. */
export function part(id: string, name: string, measures: Measures, wishes: Wishes): Part {
  const { finishMin = 1, machiningMin = 0, ...own } = wishes;
  return {
    id,
    name,
    geometry: { kind: "measures", measures },
    families: [],
    needs: {},
    smallestFeatureMm: 1.2,
    maxLayerHeightMm: 0.3,
    shells: 2,
    solidLayers: 4,
    infillPct: 20,
    supportAllowed: true,
    orientations: ["z"],
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
export function shell(id: string, name: string, measures: Measures, wishes: Wishes): Part {
  return part(id, name, measures, {
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

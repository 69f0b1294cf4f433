import {
  angle,
  bar,
  bentSheet,
  block,
  channel,
  openBox,
  sleeve,
  taperedSleeve,
  tube,
} from "./simple-bodies.ts";
import type { Measures, Part } from "../../core/shop/part.ts";
import type { Random } from "../../core/units/random.ts";
import { between, pick } from "./draw.ts";

/** Kinds of part by how they are usually made. */
export const PART_KINDS = ["small", "warm", "middle", "large", "mould"] as const;

export type PartKind = (typeof PART_KINDS)[number];

/** One random part of a kind; every measure follows from its shape. */
export function randomPart(id: string, kind: PartKind, random: Random): Part {
  const recipe = RECIPES[kind];
  const { measures, ...wishes } = recipe(random);
  return {
    ...PLAIN,
    id,
    name: `${kind} ${id} (invented)`,
    geometry: { kind: "measures", measures },
    finishing: {
      labourMin: Math.round(between(random, 0, 6)),
      machiningMin: 0,
      machiningPerH: 80,
      allowanceMm: 0,
    },
    ...wishes,
  };
}

type Recipe = (random: Random) => { measures: Measures } & Partial<Part>;

const PLAIN = {
  families: [],
  needs: {},
  smallestFeatureMm: 1,
  maxLayerHeightMm: 0.35,
  shells: 2,
  solidLayers: 4,
  infillPct: 20,
  supportAllowed: true,
  orientations: ["z"],
  toolPathsReady: ["filament"],
} satisfies Partial<Part>;

const RECIPES: Record<PartKind, Recipe> = {
  small: (random) => ({
    measures: smallBody(random),
    families: pick([["PLA"], ["PETG"], ["PLA", "PETG"]], random),
    smallestFeatureMm: between(random, 0.7, 1.4),
    infillPct: pick([15, 20, 30, 60], random),
  }),
  warm: (random) => ({
    measures: smallBody(random),
    families: pick([["ASA"], ["ASA", "ABS"], ["PA6-CF"], ["ASA", "PC"]], random),
    smallestFeatureMm: between(random, 0.9, 1.6),
    infillPct: pick([20, 40, 100], random),
  }),
  middle: (random) => ({
    ...thinWalled(random, { size: [200, 480], height: [80, 320], wallMm: pick([3.2, 4.4, 5], random) }),
    families: pick([["PETG"], ["PETG", "ASA"], ["PETG", "PLA"]], random),
    smallestFeatureMm: 2.2,
    maxLayerHeightMm: 1,
    toolPathsReady: pick([["filament", "pellet"], ["filament", "pellet"], ["filament"]], random),
  }),
  large: (random) => ({
    ...thinWalled(random, { size: [350, 950], height: [200, 700], wallMm: pick([8.6, 9, 9.6], random) }),
    families: pick([["PETG", "PETG-GF"], ["PETG-GF", "PP-GF"], ["PETG"], ["ABS"]], random),
    smallestFeatureMm: 4,
    maxLayerHeightMm: 2.4,
    toolPathsReady: pick([["filament", "pellet"], ["pellet"]], random),
  }),
  mould: (random) => ({
    ...thinWalled(random, { size: [900, 2300], height: [200, 600], wallMm: pick([14, 18, 22], random) }),
    families: pick([["ABS-CF"], ["ABS-CF", "PP-GF"], ["ABS-CF", "PETG-GF"]], random),
    smallestFeatureMm: 13,
    maxLayerHeightMm: 5,
    toolPathsReady: pick([["pellet"], []], random),
  }),
};

function smallBody(random: Random): Measures {
  const x = whole(random, 25, 150);
  const y = whole(random, 20, 110);
  const z = whole(random, 10, 80);
  const shapes: (() => Measures)[] = [
    () => block(x, y, Math.min(z, 40)),
    () => bar(x / 2, z),
    () => tube(x, z, Math.min(6, x / 6)),
    () => angle(x, y, z, Math.min(6, z / 2)),
    () => channel(x, y, z, Math.min(5, z / 3, x / 6)),
    () => openBox(x + 20, y + 20, z, 2.4),
  ];
  return pick(shapes, random)();
}

interface ThinWalled {
  readonly size: readonly [number, number];
  readonly height: readonly [number, number];
  readonly wallMm: number;
}

function thinWalled(random: Random, { size, height, wallMm }: ThinWalled) {
  const x = whole(random, size[0], size[1]);
  const y = whole(random, size[0] * 0.6, Math.min(1300, size[1] * 0.75));
  const z = whole(random, height[0], height[1]);
  const taper = 0.7 + 0.3 * random();
  const shapes: (() => Measures)[] = [
    () => sleeve(x, y, z, wallMm),
    () => taperedSleeve({ x, y }, { x: Math.round(x * taper), y: Math.round(y * taper) }, z, wallMm, 6),
    () => tube(y, z, wallMm),
    () => bentSheet(1.6 * x, wallMm, x, y, z),
  ];
  return { measures: pick(shapes, random)(), solidLayers: 0, infillPct: 100 };
}

function whole(random: Random, min: number, max: number): number {
  return Math.round(between(random, min, max));
}

import type { Measures, Part } from "../../core/shop/part.ts";
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
  withOverhang,
} from "./bodies.ts";

type Wishes = Partial<Omit<Part, "id" | "name" | "geometry" | "finishing">> & {
  /** an operator's finishing work on one copy, min */
  readonly finishMin?: number;
  /** machining of one copy, min, with the rate below and 3 mm left on every side */
  readonly machiningMin?: number;
};

const MACHINING_PER_H = 85;

/** A part printed as it stands: fine surface, two walls, a fifth filled, tool paths known for filament, unless it says other. */
function part(id: string, name: string, measures: Measures, wishes: Wishes): Part {
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
function shell(id: string, name: string, measures: Measures, wishes: Wishes): Part {
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

const SMALL: Part[] = [
  part("clip", "Cable clip", channel(12, 32, 10, 2), {
    families: ["PLA", "PETG"],
    smallestFeatureMm: 0.8,
    maxLayerHeightMm: 0.2,
    infillPct: 100,
    finishMin: 0.3,
  }),
  part("cable-guide", "Cable guide", channel(30, 60, 25, 3), { families: ["PLA", "PETG"], finishMin: 0.5 }),
  part("knob", "Ribbed knob", bar(38, 22), {
    families: ["PLA", "PETG"],
    smallestFeatureMm: 0.9,
    maxLayerHeightMm: 0.2,
    finishMin: 0.5,
  }),
  part("label-holder", "Label holder", angle(70, 40, 30, 3), { families: ["PLA", "PETG"], finishMin: 0.5 }),
  part("spacer", "Spacer ring", tube(40, 12, 6), {
    families: ["PLA", "PETG"],
    infillPct: 60,
    finishMin: 0.3,
  }),
  part("gauge", "Go and no-go gauge", block(120, 40, 15), {
    families: ["PLA"],
    maxLayerHeightMm: 0.15,
    smallestFeatureMm: 0.8,
    finishMin: 3,
  }),
  part("drill-template", "Drill template", block(160, 90, 8), {
    families: ["PLA"],
    infillPct: 30,
    finishMin: 2,
    orientations: ["z"],
  }),
  part("stencil", "Paint stencil", block(240, 180, 3), {
    families: ["PLA"],
    smallestFeatureMm: 0.8,
    infillPct: 100,
    finishMin: 2,
  }),
  part("handle", "Drawer handle", block(140, 28, 32), {
    families: ["PLA", "PETG"],
    loadAxis: "x",
    orientations: ["y", "z"],
    finishMin: 2,
    buyOut: { pricePerPiece: 11, leadTimeDays: 6 },
  }),
  part("lens-hood", "Lamp hood", tube(90, 70, 2.4), {
    families: ["PETG"],
    solidLayers: 0,
    infillPct: 100,
    finishMin: 1,
  }),
  part("seal-form", "Sealing ring", tube(120, 8, 6), { families: ["TPU"], infillPct: 100, finishMin: 1 }),
  part("bumper-foot", "Bumper foot", bar(45, 25), { families: ["TPU"], infillPct: 40, finishMin: 0.5 }),
  part("grommet", "Grommet", tube(30, 18, 6), {
    families: ["TPU"],
    infillPct: 100,
    finishMin: 0.5,
    buyOut: { pricePerPiece: 4.2, leadTimeDays: 5 },
  }),
];

const WARM: Part[] = [
  part("sensor-bracket", "Sensor bracket", angle(60, 45, 50, 5), {
    needs: { heatDeflectionC: 85 },
    families: ["ASA", "ABS", "PC"],
    infillPct: 40,
  }),
  part("terminal-cover", "Terminal cover", openBox(120, 80, 45, 2.4), {
    needs: { flameClass: "V-0" },
    maxLayerHeightMm: 0.4,
    infillPct: 100,
    smallestFeatureMm: 1.2,
  }),
  part("relay-housing", "Relay housing", openBox(160, 110, 60, 2.4), {
    needs: { flameClass: "V-0" },
    infillPct: 100,
  }),
  part("busbar-guard", "Busbar guard", channel(90, 220, 50, 4.5), {
    needs: { flameClass: "V-0", heatDeflectionC: 80 },
    infillPct: 100,
    smallestFeatureMm: 2.2,
    maxLayerHeightMm: 1.2,
    toolPathsReady: ["filament", "pellet"],
  }),
  part("duct-adaptor", "Duct adaptor", tube(125, 110, 3.2), {
    families: ["ASA"],
    needs: { heatDeflectionC: 80 },
    solidLayers: 0,
    infillPct: 100,
  }),
  part("fan-shroud", "Fan shroud", withOverhang(sleeve(180, 180, 60, 3.2), 900), {
    needs: { heatDeflectionC: 85 },
    families: ["ASA", "ABS"],
    solidLayers: 0,
    infillPct: 100,
    finishMin: 4,
  }),
  part("lamp-socket", "Lamp socket", tube(60, 55, 4), {
    needs: { heatDeflectionC: 120, tensileStrengthMPa: 50 },
    solidLayers: 0,
    infillPct: 100,
  }),
  part("gripper-finger", "Gripper finger", block(90, 28, 20), {
    needs: { tensileModulusMPa: 6000, tensileStrengthMPa: 70 },
    loadAxis: "z",
    orientations: ["x", "y"],
    infillPct: 60,
    finishMin: 3,
  }),
  part("fixture-plate", "Fixture plate", block(200, 150, 14), {
    needs: { heatDeflectionC: 140, tensileModulusMPa: 4500 },
    infillPct: 30,
    machiningMin: 6,
    finishMin: 5,
  }),
  part("manifold", "Suction manifold", block(180, 120, 40), {
    families: ["ASA", "ABS"],
    infillPct: 25,
    machiningMin: 8,
    finishMin: 6,
    buyOut: { pricePerPiece: 43, leadTimeDays: 5 },
  }),
];

const MIDDLE: Part[] = [
  part("small-bin", "Small bin", openBox(200, 150, 120, 2.4), {
    families: ["PETG", "PLA"],
    maxLayerHeightMm: 0.5,
    infillPct: 100,
    finishMin: 1,
  }),
  part("tray", "Sorting tray", openBox(340, 260, 60, 2.8), {
    families: ["PETG"],
    maxLayerHeightMm: 0.6,
    infillPct: 100,
    finishMin: 2,
  }),
  part("pipe-saddle", "Pipe saddle", channel(120, 80, 70, 8), {
    families: ["PETG"],
    maxLayerHeightMm: 0.6,
    infillPct: 30,
    finishMin: 1,
  }),
  part("display-form", "Display form", taperedSleeve({ x: 240, y: 200 }, { x: 180, y: 140 }, 300, 2.8, 6), {
    families: ["PLA", "PETG"],
    maxLayerHeightMm: 0.5,
    solidLayers: 0,
    infillPct: 100,
    finishMin: 5,
  }),
  part("storage-bin", "Storage bin sleeve", sleeve(400, 300, 220, 4.4), {
    families: ["PETG"],
    smallestFeatureMm: 2.2,
    maxLayerHeightMm: 1.2,
    solidLayers: 0,
    infillPct: 100,
    finishMin: 3,
  }),
  part("machine-cover", "Machine cover", taperedSleeve({ x: 480, y: 420 }, { x: 420, y: 360 }, 350, 4.4, 8), {
    families: ["PETG", "ASA"],
    smallestFeatureMm: 2.2,
    maxLayerHeightMm: 1.2,
    solidLayers: 0,
    infillPct: 100,
    finishMin: 8,
    buyOut: { pricePerPiece: 320, leadTimeDays: 7 },
  }),
  part("signage-letter", "Signage letter", sleeve(500, 350, 90, 5), {
    families: ["PETG"],
    smallestFeatureMm: 2.4,
    maxLayerHeightMm: 1,
    solidLayers: 0,
    infillPct: 100,
    finishMin: 6,
    toolPathsReady: ["filament", "pellet"],
  }),
];

const LARGE: Part[] = [
  shell("planter", "Planter sleeve", taperedSleeve({ x: 420, y: 420 }, { x: 360, y: 360 }, 450, 8.8, 9), {
    families: ["PETG", "PETG-GF"],
  }),
  shell("long-planter", "Long planter sleeve", sleeve(1000, 420, 480, 9), {
    families: ["PETG", "PETG-GF", "PP-GF"],
  }),
  shell("chair-shell", "Chair shell", bentSheet(1150, 9, 520, 480, 780), {
    families: ["PETG-GF"],
    needs: { tensileModulusMPa: 4000 },
    finishMin: 25,
  }),
  shell("lamp-column", "Lamp column", tube(180, 880, 4.6), {
    families: ["PETG"],
    shells: 1,
    maxLayerHeightMm: 2,
  }),
  shell(
    "duct-transition",
    "Duct transition",
    taperedSleeve({ x: 420, y: 320 }, { x: 260, y: 260 }, 420, 8.8, 8),
    { needs: { flameClass: "V-0" } },
  ),
  shell("bollard-cap", "Bollard cap", tube(64, 140, 8.6), {
    families: ["PP-GF"],
    finishMin: 2,
    maxLayerHeightMm: 2,
  }),
  shell("foundry-pattern", "Foundry pattern", sleeve(700, 500, 180, 14), {
    needs: { heatDeflectionC: 95, tensileModulusMPa: 4500 },
    smallestFeatureMm: 6,
    machiningMin: 35,
    finishMin: 20,
    maxLayerHeightMm: 3,
  }),
  shell("trim-jig", "Trim jig", sleeve(1400, 500, 250, 15), {
    families: ["ABS-CF"],
    smallestFeatureMm: 7,
    machiningMin: 60,
    finishMin: 40,
    maxLayerHeightMm: 3,
  }),
  shell("tank-mould", "Tank mould", taperedSleeve({ x: 1500, y: 900 }, { x: 1300, y: 700 }, 500, 22, 10), {
    families: ["ABS-CF"],
    toolPathsReady: [],
    machiningMin: 180,
    finishMin: 90,
    maxLayerHeightMm: 5,
    smallestFeatureMm: 12,
  }),
  shell(
    "boat-mould-half",
    "Boat-mould half",
    taperedSleeve({ x: 2400, y: 1100 }, { x: 1500, y: 200 }, 600, 24, 12),
    {
      families: ["ABS-CF"],
      toolPathsReady: [],
      machiningMin: 300,
      finishMin: 180,
      maxLayerHeightMm: 5,
      smallestFeatureMm: 13,
      buyOut: { pricePerPiece: 7400, leadTimeDays: 18 },
    },
  ),
];

/** Forty invented parts, from clip to boat-mould half. */
export const PARTS: Part[] = [...SMALL, ...WARM, ...MIDDLE, ...LARGE];

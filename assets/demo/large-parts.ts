import type { Part } from "../../core/shop/part.ts";
import { bentSheet, channel, openBox, sleeve, taperedSleeve, tube } from "./bodies.ts";
import { part, shell } from "./part-kinds.ts";

/** Parts that filament and pellet machines can both make. */
export const MIDDLE: Part[] = [
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

/** Parts for pellet machines. */
export const LARGE: Part[] = [
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

import { type PartPlan, part, shell } from "./part-kinds.ts";

/** Parts that filament and pellet machines can both make. */
export const MIDDLE: readonly PartPlan[] = [
  part("small-bin", "Small bin", {
    families: ["PETG", "PLA"],
    maxLayerHeightMm: 0.5,
    infillPct: 100,
    finishMin: 1,
  }),
  part("clip-tray", "Clip tray", {
    families: ["PETG"],
    maxLayerHeightMm: 0.6,
    infillPct: 100,
    finishMin: 2,
  }),
  part("pipe-saddle", "Pipe saddle", {
    families: ["PETG"],
    maxLayerHeightMm: 0.6,
    infillPct: 30,
    finishMin: 1,
  }),
  part("display-form", "Display form", {
    families: ["PLA", "PETG"],
    maxLayerHeightMm: 0.5,
    solidLayers: 0,
    infillPct: 100,
    finishMin: 5,
  }),
  part("storage-bin", "Storage bin sleeve", {
    families: ["PETG"],
    smallestFeatureMm: 2.2,
    maxLayerHeightMm: 1.2,
    solidLayers: 0,
    infillPct: 100,
    finishMin: 3,
  }),
  part("machine-cover", "Machine cover", {
    families: ["PETG", "ASA"],
    smallestFeatureMm: 2.2,
    maxLayerHeightMm: 1.2,
    solidLayers: 0,
    infillPct: 100,
    finishMin: 8,
    buyOut: { pricePerPiece: 320, leadTimeDays: 7 },
  }),
  part("signage-letter", "Signage letter", {
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
export const LARGE: readonly PartPlan[] = [
  shell("planter", "Planter sleeve", {
    families: ["PETG", "PETG-GF"],
  }),
  shell("long-planter", "Long planter sleeve", {
    families: ["PETG", "PETG-GF", "PP-GF"],
  }),
  shell("chair-shell", "Chair shell", {
    families: ["PETG-GF"],
    needs: { tensileModulusMPa: 4000 },
    finishMin: 25,
  }),
  shell("lamp-column", "Lamp column", {
    families: ["PETG"],
    shells: 1,
    maxLayerHeightMm: 2,
  }),
  shell("duct-transition", "Duct transition", { needs: { flameClass: "V-0" } }),
  shell("bollard-cap", "Bollard cap", {
    families: ["PP-GF"],
    finishMin: 2,
    maxLayerHeightMm: 2,
  }),
  shell("foundry-pattern", "Foundry pattern", {
    needs: { heatDeflectionC: 95, tensileModulusMPa: 4500 },
    smallestFeatureMm: 6,
    machiningMin: 35,
    finishMin: 20,
    maxLayerHeightMm: 3,
  }),
  shell("trim-jig", "Trim jig", {
    families: ["ABS-CF"],
    smallestFeatureMm: 7,
    machiningMin: 60,
    finishMin: 40,
    maxLayerHeightMm: 3,
  }),
  shell("tank-mould", "Tank mould", {
    families: ["ABS-CF"],
    toolPathsReady: [],
    machiningMin: 180,
    finishMin: 90,
    maxLayerHeightMm: 5,
    smallestFeatureMm: 12,
  }),
  shell("boat-mould-half", "Boat-mould half", {
    families: ["ABS-CF"],
    toolPathsReady: [],
    machiningMin: 300,
    finishMin: 180,
    maxLayerHeightMm: 5,
    smallestFeatureMm: 13,
    buyOut: { pricePerPiece: 7400, leadTimeDays: 18 },
  }),
];

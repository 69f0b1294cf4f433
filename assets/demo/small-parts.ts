import { type PartPlan, part } from "./part-kinds.ts";

/** Small parts of everyday grades, in filament. */
export const SMALL: readonly PartPlan[] = [
  part("clip", "Cable clip", {
    families: ["PLA", "PETG"],
    smallestFeatureMm: 0.8,
    maxLayerHeightMm: 0.2,
    infillPct: 100,
    finishMin: 0.3,
  }),
  part("cable-guide", "Cable guide", {
    families: ["PLA", "PETG"],
    finishMin: 0.5,
  }),
  part("impeller-blank", "Impeller blank", {
    families: ["PLA", "PETG"],
    smallestFeatureMm: 0.9,
    maxLayerHeightMm: 0.2,
    finishMin: 0.5,
  }),
  part("nameplate", "Nameplate", {
    families: ["PLA", "PETG"],
    finishMin: 0.5,
  }),
  part("spacer", "Spacer ring", {
    families: ["PLA", "PETG"],
    infillPct: 60,
    finishMin: 0.3,
  }),
  part("gauge", "Go and no-go gauge", {
    families: ["PLA"],
    maxLayerHeightMm: 0.15,
    smallestFeatureMm: 0.8,
    finishMin: 3,
  }),
  part("drill-template", "Drill template", {
    families: ["PLA"],
    infillPct: 30,
    finishMin: 2,
  }),
  part("stencil", "Paint stencil", {
    families: ["PLA"],
    smallestFeatureMm: 0.8,
    infillPct: 100,
    finishMin: 2,
  }),
  part("handle", "Drawer handle", {
    families: ["PLA", "PETG"],
    loadAxis: "x",
    orientations: ["y", "z"],
    finishMin: 2,
    buyOut: { pricePerPiece: 11, leadTimeDays: 6 },
  }),
  part("lens-hood", "Lamp hood", {
    families: ["PETG"],
    solidLayers: 0,
    infillPct: 100,
    finishMin: 1,
  }),
  part("seal-form", "Sealing ring", { families: ["TPU"], infillPct: 100, finishMin: 1 }),
  part("bumper-foot", "Bumper foot", { families: ["TPU"], infillPct: 40, finishMin: 0.5 }),
  part("grommet", "Grommet", {
    families: ["TPU"],
    infillPct: 100,
    finishMin: 0.5,
    buyOut: { pricePerPiece: 4.2, leadTimeDays: 5 },
  }),
];

/** Parts of warmer grades, in filament: for heat, flame, load or machining. */
export const WARM: readonly PartPlan[] = [
  part("sensor-bracket", "Sensor bracket", {
    needs: { heatDeflectionC: 85 },
    families: ["ASA", "ABS", "PC"],
    orientations: ["x", "y", "z"],
    infillPct: 40,
  }),
  part("terminal-cover", "Terminal cover", {
    needs: { flameClass: "V-0" },
    maxLayerHeightMm: 0.4,
    infillPct: 100,
    smallestFeatureMm: 1.2,
  }),
  part("relay-housing", "Relay housing", {
    needs: { flameClass: "V-0" },
    infillPct: 100,
  }),
  part("busbar-guard", "Busbar guard", {
    needs: { flameClass: "V-0", heatDeflectionC: 80 },
    infillPct: 100,
    smallestFeatureMm: 2.2,
    maxLayerHeightMm: 1.2,
    toolPathsReady: ["filament", "pellet"],
  }),
  part("duct-elbow", "Duct elbow", {
    families: ["ASA"],
    needs: { heatDeflectionC: 80 },
    solidLayers: 0,
    infillPct: 100,
  }),
  part("fan-shroud", "Fan shroud", {
    needs: { heatDeflectionC: 85 },
    families: ["ASA", "ABS"],
    solidLayers: 0,
    infillPct: 100,
    finishMin: 4,
  }),
  part("lamp-socket", "Lamp socket", {
    needs: { heatDeflectionC: 120, tensileStrengthMPa: 50 },
    solidLayers: 0,
    infillPct: 100,
  }),
  part("gripper-finger", "Gripper finger", {
    needs: { tensileModulusMPa: 6000, tensileStrengthMPa: 70 },
    loadAxis: "z",
    orientations: ["x", "y"],
    infillPct: 60,
    finishMin: 3,
  }),
  part("fixture-plate", "Fixture plate", {
    needs: { heatDeflectionC: 140, tensileModulusMPa: 4500 },
    infillPct: 30,
    machiningMin: 6,
    finishMin: 5,
  }),
  part("manifold", "Suction manifold", {
    families: ["ASA", "ABS"],
    infillPct: 25,
    machiningMin: 8,
    finishMin: 6,
    buyOut: { pricePerPiece: 43, leadTimeDays: 5 },
  }),
];

import type { Part } from "../../core/shop/part.ts";
import { angle, bar, block, channel, openBox, sleeve, tube, withOverhang } from "./bodies.ts";
import { part } from "./part-kinds.ts";

/** Small parts of everyday grades, in filament. */
export const SMALL: Part[] = [
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

/** Parts of warmer grades, in filament: for heat, flame, load or machining. */
export const WARM: Part[] = [
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

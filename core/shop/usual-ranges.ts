import type { Feedstock } from "./feedstock.ts";
import type { Machine, Nozzle } from "./machine.ts";
import type { Part } from "./part.ts";
import { type Plausible, range } from "./plausible.ts";

/*
 * First the usual, then the possible range. Usual: common practice of the trade, no source. Possible: so wide that a number
 * outside can only be a slip, most often of the unit.
 */

/** From filament desktop machines to pellet gantries of some metres. */
export const MACHINE_RANGES: readonly Plausible<Machine>[] = [
  range("envelopeMm/x", "the build envelope in x", "mm", (m) => m.envelopeMm.x, [50, 12_000], [5, 100_000]),
  range("envelopeMm/y", "the build envelope in y", "mm", (m) => m.envelopeMm.y, [50, 12_000], [5, 100_000]),
  range("envelopeMm/z", "the build envelope in z", "mm", (m) => m.envelopeMm.z, [50, 12_000], [5, 100_000]),
  range("maxNozzleC", "the hottest nozzle", "degC", (m) => m.maxNozzleC, [180, 500], [60, 1000]),
  range("maxPlatformC", "the hottest platform", "degC", (m) => m.maxPlatformC, [0, 250], [0, 500]),
  range("chamberC", "the air around the part", "degC", (m) => m.chamberC, [10, 200], [-50, 400]),
  range("maxSpeedMmPerS", "the fastest speed", "mm/s", (m) => m.maxSpeedMmPerS, [10, 1000], [0.1, 5000]),
  range(
    "accelerationMmPerS2",
    "acceleration",
    "mm/s2",
    (m) => m.accelerationMmPerS2,
    [50, 50_000],
    [1, 500_000],
  ),
  range("warmUpMin", "warming up", "min", (m) => m.warmUpMin, [0, 240], [0, 2880]),
  range("coolDownMin", "cooling down", "min", (m) => m.coolDownMin, [0, 1440], [0, 10_080]),
  range("setUpMin", "setting up", "min", (m) => m.setUpMin, [1, 240], [0, 1440]),
  range("unloadMin", "unloading", "min", (m) => m.unloadMin, [1, 240], [0, 1440]),
  range("timeFactor", "the time factor", "", (m) => m.timeFactor, [0.5, 2], [0.05, 20]),
  range("failuresPer1000H", "failures per 1000 h", "", (m) => m.failuresPer1000H, [0, 100], [0, 10_000]),
];

/** From fine filament nozzles to large pellet extruders. */
export const NOZZLE_RANGES: readonly Plausible<Nozzle>[] = [
  range("nozzles", "the bore of a nozzle", "mm", (n) => n.diameterMm, [0.1, 12], [0.02, 50]),
  range(
    "nozzles",
    "the melt limit of a nozzle",
    "cm3/h",
    (n) => n.flowCm3PerH,
    [5, 60_000],
    [0.1, 1_000_000],
  ),
];

/** Thermoplastics with and without fillers; nothing solid is heavier than osmium, 22,600 kg/m3. */
export const FEEDSTOCK_RANGES: readonly Plausible<Feedstock>[] = [
  range("densityKgPerM3", "density", "kg/m3", (f) => f.densityKgPerM3, [700, 4000], [100, 23_000]),
  range("nozzleC/min", "the lowest nozzle temperature", "degC", (f) => f.nozzleC.min, [120, 450], [40, 1000]),
  range(
    "nozzleC/max",
    "the highest nozzle temperature",
    "degC",
    (f) => f.nozzleC.max,
    [120, 500],
    [40, 1000],
  ),
  range("platformC", "the platform", "degC", (f) => f.platformC, [0, 200], [0, 500]),
  range("dryC", "the drying temperature", "degC", (f) => f.dryC, [0, 180], [0, 300]),
  range("dryH", "the drying time", "h", (f) => f.dryH, [0, 24], [0, 240]),
  range("flowFactor", "the flow factor", "", (f) => f.flowFactor, [0.2, 3], [0.01, 100]),
  range(
    "specificHeatJPerKgK",
    "specific heat",
    "J/(kg K)",
    (f) => f.specificHeatJPerKgK,
    [700, 3500],
    [100, 10_000],
  ),
  range(
    "conductivityWPerMK",
    "conductivity",
    "W/(m K)",
    (f) => f.conductivityWPerMK,
    [0.05, 20],
    [0.01, 500],
  ),
  range(
    "properties/heatDeflectionC",
    "heat deflection temperature",
    "degC",
    (f) => f.properties.heatDeflectionC,
    [20, 350],
    [-100, 1000],
  ),
  range(
    "properties/tensileModulusMPa",
    "tensile modulus",
    "MPa",
    (f) => f.properties.tensileModulusMPa,
    [5, 40_000],
    [0.1, 500_000],
  ),
  range(
    "properties/tensileStrengthMPa",
    "tensile strength",
    "MPa",
    (f) => f.properties.tensileStrengthMPa,
    [3, 400],
    [0.1, 5000],
  ),
];

/** From a clip to a boat mould; a side outside was most likely given in inches or metres. */
export const PART_RANGES: readonly Plausible<Part>[] = [
  range("geometry/measures/boxMm", "its longest side", "mm", longestSideMm, [3, 20_000], [0.1, 200_000]),
  range(
    "smallestFeatureMm",
    "its smallest feature",
    "mm",
    (p) => p.smallestFeatureMm,
    [0.2, 200],
    [0.01, 10_000],
  ),
  range("maxLayerHeightMm", "its thickest layer", "mm", (p) => p.maxLayerHeightMm, [0.05, 20], [0.01, 100]),
  range("shells", "the number of walls", "", (p) => p.shells, [1, 20], [1, 1000]),
];

function longestSideMm({ geometry }: Part): number {
  const { x, y, z } = geometry.measures.boxMm;
  return Math.max(x, y, z);
}

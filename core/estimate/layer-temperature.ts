import { KELVIN_AT_0_C } from "../units/conversions.ts";

/** A wall that grows layer by layer while it loses heat on both sides and at its top. */
export interface GrowingWall {
  readonly layerHeightMm: number;
  /** thickness of the wall; Infinity: no heat leaves at its sides */
  readonly wallWidthMm: number;
  readonly depositC: number;
  readonly platformC: number;
  /** air and surroundings */
  readonly airC: number;
  readonly densityKgPerM3: number;
  readonly specificHeatJPerKgK: number;
  readonly conductivityWPerMK: number;
  readonly convectionWPerM2K: number;
  readonly emissivity: number;
}

/** How finely it is computed. */
export interface WallGrid {
  readonly layers: number;
  readonly cellsPerLayer: number;
  readonly stepsPerLayer: number;
}

/**
 * Mean temperature of the top layer just before the next one is laid on it, degC, when a layer takes `layerS` seconds.
 * One-dimensional heat conduction up the wall with convection and radiation from its sides and top and the platform's
 * temperature at its foot, by implicit finite volumes. The structure follows Compton, Post, Duty, Love and Kunc (2017,
 * Additive Manufacturing 17:77-86), as given in a published reproduction of the paper; the radiating top is ours.
 * Example: 20 % carbon fibre ABS laid at 200 degC, wall 20 mm, layer 4.064 mm, 40 s a layer in air of 18 degC: 172.8 degC.
 */
export function topLayerMeanC(wall: GrowingWall, layerS: number, grid: WallGrid): number {
  const cells = grid.layers * grid.cellsPerLayer;
  const temperature = new Float64Array(cells);
  const scratch = { across: new Float64Array(cells), carried: new Float64Array(cells) };
  const step = cellNumbers(wall, layerS / grid.stepsPerLayer, grid.cellsPerLayer);
  for (let layer = 0; layer < grid.layers; layer++) {
    const first = layer * grid.cellsPerLayer;
    temperature.fill(wall.depositC, first, first + grid.cellsPerLayer);
    for (let n = 0; n < grid.stepsPerLayer; n++) {
      advance(temperature, first + grid.cellsPerLayer, step, scratch);
    }
  }
  let sum = 0;
  for (let cell = cells - grid.cellsPerLayer; cell < cells; cell++) sum += temperature[cell] ?? 0;
  return sum / grid.cellsPerLayer;
}

/**
 * Heat that a surface radiates to its surroundings for each kelvin between them, W/(m2 K): e s (T^2 + Ta^2)(T + Ta), after
 * the law of Stefan and Boltzmann. Example: emissivity 0.87, 473.15 K (200 degC) in 293.15 K: 11.71.
 */
export function radiativeWPerM2K(emissivity: number, surfaceK: number, aroundK: number): number {
  return emissivity * STEFAN_BOLTZMANN * (surfaceK * surfaceK + aroundK * aroundK) * (surfaceK + aroundK);
}

/** Coefficients of one cell and one time step, per m2 of cross-section. */
interface CellNumbers {
  readonly storage: number;
  readonly conduction: number;
  /** side surface over cross-section */
  readonly sides: number;
  /** half a cell's resistance under the top surface, m2K/W */
  readonly halfCell: number;
  readonly convection: number;
  readonly emissivity: number;
  readonly platformC: number;
  readonly airC: number;
}

function cellNumbers(wall: GrowingWall, stepS: number, cellsPerLayer: number): CellNumbers {
  const cellM = wall.layerHeightMm / 1000 / cellsPerLayer;
  return {
    storage: (wall.densityKgPerM3 * wall.specificHeatJPerKgK * cellM) / stepS,
    conduction: wall.conductivityWPerMK / cellM,
    sides: (2 * cellM) / (wall.wallWidthMm / 1000),
    halfCell: cellM / (2 * wall.conductivityWPerMK),
    convection: wall.convectionWPerM2K,
    emissivity: wall.emissivity,
    platformC: wall.platformC,
    airC: wall.airC,
  };
}

interface Scratch {
  readonly across: Float64Array;
  readonly carried: Float64Array;
}

/** One implicit step of the first `count` cells: radiation linearised at the old temperature, tridiagonal elimination. */
function advance(temperature: Float64Array, count: number, step: CellNumbers, scratch: Scratch): void {
  const { across, carried } = scratch;
  const { storage, conduction, airC } = step;
  const airK = airC + KELVIN_AT_0_C;
  let acrossBelow = 0;
  let carriedBelow = 0;
  for (let cell = 0; cell < count; cell++) {
    const old = temperature[cell] ?? 0;
    const loss = step.convection + radiativeWPerM2K(step.emissivity, old + KELVIN_AT_0_C, airK);
    const side = loss * step.sides;
    let diagonal = storage + side;
    let given = storage * old + side * airC;
    if (cell === 0) {
      diagonal += 2 * conduction;
      given += 2 * conduction * step.platformC;
    } else {
      diagonal += conduction * (1 - acrossBelow);
      given += conduction * carriedBelow;
    }
    if (cell === count - 1) {
      const top = 1 / (1 / loss + step.halfCell);
      diagonal += top;
      given += top * airC;
      acrossBelow = 0;
    } else {
      diagonal += conduction;
      acrossBelow = conduction / diagonal;
    }
    carriedBelow = given / diagonal;
    across[cell] = acrossBelow;
    carried[cell] = carriedBelow;
  }
  let above = 0;
  for (let cell = count - 1; cell >= 0; cell--) {
    above = (carried[cell] ?? 0) + (across[cell] ?? 0) * above;
    temperature[cell] = above;
  }
}

/** W/(m2 K4), CODATA 2018 (from memory). */
const STEFAN_BOLTZMANN = 5.670374419e-8;

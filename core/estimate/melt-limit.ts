import type { Feedstock } from "../shop/feedstock.ts";
import type { Nozzle } from "../shop/machine.ts";
import { S_PER_H } from "../units/conversions.ts";

const MM3_PER_CM3 = 1000;

/**
 * Most volume per second that a nozzle melts of a feedstock, mm3/s: the nozzle's limit with the reference polymer times the
 * feedstock's factor. Example: 36 cm3/h with factor 1.2 gives 12 mm3/s.
 */
export function flowLimitMm3PerS(nozzle: Nozzle, feedstock: Feedstock): number {
  return (nozzle.flowCm3PerH * feedstock.flowFactor * MM3_PER_CM3) / S_PER_H;
}

/** What the melt zone of a filament nozzle and its polymer are like. */
export interface MeltZone {
  readonly nozzleDiameterMm: number;
  readonly meltLengthMm: number;
  readonly conductivityWPerMK: number;
  readonly densityKgPerM3: number;
  readonly specificHeatJPerKgK: number;
}

/**
 * A first guess of a filament nozzle's melt limit where nobody has measured it, mm3/s: conduction to the core of a rod that
 * moves through a hot channel, Q = pi a L / Fo*, in which the radius cancels. Fo* = 0.25 up to 0.6 mm bore and 0.15 from
 * 1 mm (between them a straight line) is fitted to maxima published by Wüst, Kattinger, Dahmen, Spiehl, Bonten and Blaeser
 * (2026, JMMP 10(7) 233, Table 1), read in a summary. Good to about 30 %. The idea that the core limits the rate: Go,
 * Schiffres, Stevens and Hart (2017, Additive Manufacturing 16:1-11), abstract.
 * Example: PLA (a = 8.0645e-8 m2/s), 0.4 mm bore, 12.5 mm melt length: 12.67 mm3/s.
 */
export function coreMeltingLimitMm3PerS(zone: MeltZone): number {
  const diffusivityMm2PerS =
    (zone.conductivityWPerMK / (zone.densityKgPerM3 * zone.specificHeatJPerKgK)) * M2_TO_MM2;
  return (Math.PI * diffusivityMm2PerS * zone.meltLengthMm) / neededFourierNumber(zone.nozzleDiameterMm);
}

function neededFourierNumber(nozzleDiameterMm: number): number {
  const share = Math.min(1, Math.max(0, (nozzleDiameterMm - FINE_BORE_MM) / (WIDE_BORE_MM - FINE_BORE_MM)));
  return FINE_FOURIER + share * (WIDE_FOURIER - FINE_FOURIER);
}

/** Heater of a hot end and the heat that its polymer takes up. */
export interface MeltHeat {
  readonly heaterW: number;
  /** share of the heater's power that reaches the polymer; 0.6 is common practice */
  readonly efficiency: number;
  readonly densityKgPerM3: number;
  readonly specificHeatJPerKgK: number;
  readonly riseK: number;
  /** heat of melting, J/kg; 0 for amorphous polymers */
  readonly meltingJPerKg: number;
}

/**
 * Most volume per second that a heater can melt, mm3/s: its useful power over the heat that a volume takes up.
 * Example: 40 W at 0.6, 1240 kg/m3, 1700 J/(kg K), 190 K, no heat of melting: 59.92 mm3/s.
 */
export function heaterLimitMm3PerS(heat: MeltHeat): number {
  const joulePerMm3 =
    heat.densityKgPerM3 * (heat.specificHeatJPerKgK * heat.riseK + heat.meltingJPerKg) * MM3_TO_M3;
  return (heat.efficiency * heat.heaterW) / joulePerMm3;
}

/** Metering zone of an extruder screw. */
export interface Screw {
  readonly diameterMm: number;
  readonly channelDepthMm: number;
  readonly revolutionsPerMin: number;
}

/**
 * Drag flow of a square-pitched screw, mm3/s: Q = pi^2 D^2 N H sin(phi) cos(phi) / 2 with phi = 17.66 degrees (Tadmor and
 * Gogos; Rauwendaal; from memory). Back pressure and slip take 10 to 40 % of it (common practice).
 * Example: 25 mm, 1.5 mm deep, 100 per min: 2228.9 mm3/s, about 8 kg/h.
 */
export function screwDragFlowMm3PerS(screw: Screw): number {
  const perS = screw.revolutionsPerMin / 60;
  const angle = (SQUARE_PITCH_DEG * Math.PI) / 180;
  const turn = Math.sin(angle) * Math.cos(angle);
  return 0.5 * Math.PI ** 2 * screw.diameterMm ** 2 * perS * screw.channelDepthMm * turn;
}

/** Helix angle of a screw whose pitch is its diameter: atan(1 / pi), rounded as handbooks give it. */
const SQUARE_PITCH_DEG = 17.66;
const M2_TO_MM2 = 1e6;
const MM3_TO_M3 = 1e-9;
const FINE_BORE_MM = 0.6;
const WIDE_BORE_MM = 1;
const FINE_FOURIER = 0.25;
const WIDE_FOURIER = 0.15;

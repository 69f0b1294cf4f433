import { z } from "zod";
import { id, name, notNegative, percent, positive, range } from "./fields.ts";

/** UL 94 flame classes, from least to most resistant. */
export const FLAME_CLASSES = ["HB", "V-2", "V-1", "V-0", "5VB", "5VA"] as const;

export const flameClass = z.enum(FLAME_CLASSES);

export const propertiesSchema = z.strictObject({
  heatDeflectionC: z.number().describe("heat deflection temperature at 0.45 MPa, degC"),
  tensileModulusMPa: positive.describe("tensile modulus along the bead, MPa"),
  tensileStrengthMPa: positive.describe("tensile strength along the bead, MPa"),
  acrossLayersPct: percent.describe("strength across the layers as % of strength along the bead"),
  flameClass: flameClass.optional().describe("flame class by UL 94"),
});

/** One purchasable grade in one form. */
export const feedstockSchema = z.strictObject({
  id: id.describe("id, unique in the list"),
  name: name.describe("name, as shown"),
  family: name.describe("polymer family: PLA, PETG, ABS, PA6, ..."),
  form: z.enum(["filament", "pellet"]).describe("form"),
  densityKgPerM3: positive.describe("density of the solid, kg/m3"),
  pricePerKg: notNegative.nullable().describe("price, currency per kg; null: not known yet"),
  packKg: positive.describe("mass of one pack as sold, kg"),
  stockKg: notNegative.describe("in stock now, kg"),
  leadTimeDays: notNegative.describe("days from order to delivery"),
  wastePct: percent.describe("lost at the start and end of a pack and in handling, % of the mass used"),
  nozzleC: range.describe("lowest and highest nozzle temperature, degC"),
  platformC: notNegative.describe("platform temperature, degC"),
  needsChamberC: z.number().optional().describe("lowest air temperature around the part that it needs, degC"),
  dryC: notNegative.describe("drying temperature, degC"),
  dryH: notNegative.describe("drying time before use, h; 0: none"),
  abrasive: z.boolean().describe("true: wears nozzles that are not hardened"),
  flowFactor: positive.describe("melt limit relative to the reference polymer"),
  bondC: z.number().describe("coldest surface to which the next layer still bonds, degC"),
  carryC: z.number().describe("hottest layer that still carries the next, degC"),
  specificHeatJPerKgK: positive.describe("specific heat, J/(kg K)"),
  conductivityWPerMK: positive.describe("thermal conductivity, W/(m K)"),
  minLayerS: positive
    .optional()
    .describe("the shop's own shortest layer time, s; overrules the computed one"),
  maxLayerS: positive.optional().describe("the shop's own longest layer time, s; overrules the computed one"),
  properties: propertiesSchema.describe("what a part made of it can bear"),
  recycledPct: percent.optional().describe("recycled content, %"),
  meltCycles: z.int().min(0).describe("times melted before it is printed; pellets once less than filament"),
});

export type Feedstock = z.infer<typeof feedstockSchema>;
export type FlameClass = z.infer<typeof flameClass>;

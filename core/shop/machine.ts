import { z } from "zod";
import { box, id, instant, name, notNegative, percent, positive, range } from "./fields.ts";

export const nozzleSchema = z.strictObject({
  id: id.describe("id, unique on the machine; equal machines use equal ids"),
  diameterMm: positive.describe("bore, mm"),
  beadWidthMm: range.describe("narrowest and widest bead it lays, mm"),
  layerHeightMm: range.describe("thinnest and thickest layer it lays, mm"),
  flowCm3PerH: positive.describe(
    "melt limit: most volume per hour with the reference polymer (flowFactor 1), cm3/h",
  ),
});

/** Inputs of the machine-hour rate (VDI 3258 style; the formula is in core/cost/machine-hour-rate.ts). */
export const hourRateInputsSchema = z.strictObject({
  purchasePrice: notNegative.describe("purchase price, currency"),
  residualValue: notNegative.describe("value at the end of its life, currency"),
  lifeYears: positive.describe("useful life, years"),
  floorM2: notNegative.describe("floor area with working space, m2"),
  powerKW: notNegative.describe("mean drawn power while in use, kW"),
  maintenancePctPerYear: percent.describe("maintenance, % of purchase price per year"),
  plannedHoursPerYear: positive.describe("hours in use per year, by which the fixed part is divided, h"),
});

export const changeoverSchema = z.strictObject({
  sameFamilyMin: notNegative.describe("time to change to another grade of the same polymer family, min"),
  newFamilyMin: notNegative.describe("time to change to another polymer family, min"),
  nozzleMin: notNegative.describe("time to change the nozzle, min, added to the feedstock's"),
  purgeKg: notNegative.describe("new feedstock purged at a change of feedstock, kg"),
});

/** One physical AM machine. Two equal machines are two entries. */
export const machineSchema = z.strictObject({
  id: id.describe("id, unique in the list"),
  name: name.describe("name, as shown"),
  process: z.enum(["filament", "pellet"]).describe("form of feedstock it takes"),
  calendarId: id.describe("calendar of the people who serve it"),
  envelopeMm: box.describe("build envelope, mm"),
  edgeMarginMm: notNegative.describe("strip along the platform's edge that stays free, mm"),
  partGapMm: notNegative.describe("smallest gap between parts on the platform, mm"),
  mixedPlatform: z.boolean().describe("true: copies of different orders may share one build"),
  nozzles: z.array(nozzleSchema).min(1, "has no nozzle").describe("nozzles it can use"),
  maxNozzleC: positive.describe("hottest nozzle, degC"),
  maxPlatformC: notNegative.describe("hottest platform, degC"),
  chamberC: z.number().describe("temperature of the air around the part, degC"),
  hardened: z.boolean().describe("true: nozzle and screw or drive stand abrasive feedstock"),
  maxSpeedMmPerS: positive.describe("fastest deposition speed, mm/s"),
  accelerationMmPerS2: positive.describe("acceleration, mm/s2"),
  cornerDeviationMm: positive.describe("how far a path may cut a corner, mm"),
  layerChangeS: notNegative.describe("time lost at each change of layer, s"),
  travelS: notNegative.describe("time lost at each move to another island of a layer, s"),
  startPurgeG: notNegative.describe("feedstock lost at each start of the flow within a layer, g"),
  maxWaitPerLayerS: notNegative
    .optional()
    .describe(
      "longest pause for cooling in one layer that the machine bears without oozing, s; none: any pause",
    ),
  warmUpMin: notNegative.describe("heating before the first layer, blocks the machine, min"),
  coolDownMin: notNegative.describe("cooling before the part can be taken off, blocks the machine, min"),
  setUpMin: notNegative.describe("an operator's work before a build starts, min"),
  unloadMin: notNegative.describe("an operator's work to take a finished build off, min"),
  unattended: z
    .boolean()
    .describe(
      "true: the person responsible approved running with nobody there; false is the default for every machine",
    ),
  unattendedMaxH: positive
    .optional()
    .describe("longest stretch with nobody there that was approved, h; none: any"),
  changeover: changeoverSchema.describe("time and feedstock to change feedstock or nozzle"),
  failuresPer1000H: notNegative.describe("builds that fail per 1000 h of printing"),
  timeFactor: positive.describe("actual over estimated print time, 1 until calibrated"),
  hourRate: z
    .union([notNegative, hourRateInputsSchema])
    .describe("machine-hour rate, currency per h, or the inputs it is computed from"),
  loaded: z
    .strictObject({
      feedstockId: id.describe("feedstock in the machine"),
      nozzleId: id.describe("nozzle in the machine"),
    })
    .nullable()
    .describe("what the machine has loaded now; null: nothing"),
  outOfService: z
    .array(
      z.strictObject({
        from: instant.describe("start, instant"),
        to: instant.describe("end, instant"),
        reason: z.string().describe("why, as shown"),
      }),
    )
    .describe("times at which it cannot be used"),
});

export type Nozzle = z.infer<typeof nozzleSchema>;
export type HourRateInputs = z.infer<typeof hourRateInputsSchema>;
export type Machine = z.infer<typeof machineSchema>;
export type Process = Machine["process"];

import { z } from "zod";
import { LENGTH_UNITS } from "../geometry/length-unit.ts";
import { directionName, ownLabel } from "./direction.ts";
import { flameClass } from "./feedstock.ts";
import { box, id, name, notNegative, percent, positive } from "./fields.ts";
import { standingSchema } from "./standing.ts";

export const layerSchema = z.strictObject({
  zMm: notNegative.describe("height of the cut above the part's bottom, mm"),
  areaMm2: notNegative.describe("area of the cut, mm2"),
  perimeterMm: notNegative.describe("outline of the cut with holes, mm"),
  islands: z.int().min(0).describe("separate regions of the cut"),
});

/** What a part is as a body, in its own axes. Measured, never typed, where a mesh is given. */
export const measuresSchema = z.strictObject({
  volumeMm3: positive.describe("solid volume of the body, mm3"),
  areaMm2: positive.describe("surface of the body, mm2"),
  boxMm: box.describe("bounding box, mm"),
  overhangAreaMm2: notNegative
    .optional()
    .describe("surface that needs support when built along its z axis, mm2"),
  layers: z.array(layerSchema).optional().describe("cuts along its z axis, from the bottom up"),
  standings: z
    .array(standingSchema)
    .min(1, "is empty")
    .optional()
    .describe(
      "what its mesh gave for each direction that may point up; overrules overhangAreaMm2 and layers",
    ),
});

export const geometrySchema = z.union([
  z.strictObject({
    kind: z.literal("mesh"),
    file: name.describe("mesh file, relative to the shop file"),
    sha256: z
      .string()
      .regex(/^[0-9a-f]{64}$/, "must be 64 hexadecimal digits")
      .describe("SHA-256 of the file"),
    unit: z.enum(LENGTH_UNITS).describe("unit of the file"),
    measures: measuresSchema.describe("what was measured on it"),
  }),
  z.strictObject({
    kind: z.literal("measures"),
    measures: measuresSchema.describe("measures given by hand"),
  }),
]);

export const needsSchema = z.strictObject({
  heatDeflectionC: z.number().optional().describe("heat it must bear, degC"),
  tensileModulusMPa: positive.optional().describe("stiffness it needs along the load, MPa"),
  tensileStrengthMPa: positive.optional().describe("strength it needs along the load, MPa"),
  acrossLayersMPa: positive.optional().describe("strength it needs across the layers, MPa"),
  flameClass: flameClass.optional().describe("flame class by UL 94 it needs"),
});

export const finishingSchema = z.strictObject({
  labourMin: notNegative.describe("an operator's work on each good copy, min"),
  machiningMin: notNegative.describe("machining of each good copy, min"),
  machiningPerH: notNegative.describe("rate of the machining, currency per h"),
  allowanceMm: notNegative.describe("extra left on machined faces, mm; added on every side of the box"),
});

/** What is to be made. */
export const partSchema = z.strictObject({
  id: id.describe("id, unique in the list"),
  name: name.describe("name, as shown"),
  geometry: geometrySchema.describe("the body"),
  families: z.array(name).describe("polymer families the customer accepts; empty: any that meets the needs"),
  needs: needsSchema.describe("what the material must bear"),
  smallestFeatureMm: positive.describe("thinnest wall or smallest detail, mm: no bead may be wider"),
  maxLayerHeightMm: positive.describe("thickest layer the surface may show, mm"),
  shells: z.int().min(1, "must be at least 1").describe("walls around the outline"),
  solidLayers: z.int().min(0).describe("solid layers at the bottom and as many at the top"),
  infillPct: percent.describe("density of the filling, %"),
  loadAxis: z
    .enum(["x", "y", "z"])
    .optional()
    .describe("the part's own axis that must never be built vertically, nor within 30 degrees of it"),
  orientations: z
    .array(directionName)
    .min(1, "names no orientation")
    .optional()
    .describe(
      'directions that may point up: an axis either way up ("x", "y", "z"), one way only ("+z", "-z", ...), or a label of buildDirections; none given: all',
    ),
  buildDirections: z
    .array(
      z.strictObject({
        label: ownLabel.describe("what it is called"),
        x: z.number().describe("along the part's x axis"),
        y: z.number().describe("along the part's y axis"),
        z: z.number().describe("along the part's z axis"),
      }),
    )
    .optional()
    .describe("more directions that may point up, beside the part's axes; measured with its mesh"),
  supportAllowed: z.boolean().describe("true: support structures may touch it"),
  toolPathsReady: z
    .array(z.enum(["filament", "pellet"]))
    .describe("processes whose tool paths exist already"),
  finishing: finishingSchema.describe("work after the build"),
  buyOut: z
    .strictObject({
      pricePerPiece: notNegative.describe("price of one copy made elsewhere, currency"),
      leadTimeDays: notNegative.describe("days from order to delivery"),
    })
    .optional()
    .describe("having it made elsewhere"),
});

export type Part = z.infer<typeof partSchema>;
export type Measures = z.infer<typeof measuresSchema>;
export type PartNeeds = z.infer<typeof needsSchema>;
export type Axis = "x" | "y" | "z";

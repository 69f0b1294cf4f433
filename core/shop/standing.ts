import { z } from "zod";
import { directionLabel } from "./direction.ts";
import { notNegative, positive } from "./fields.ts";

/** Most corners of a hull and most cuts of one direction that a document carries: it stays small and quick to plan with. */
export const MOST_HULL_CORNERS = 24;
export const MOST_CUTS = 200;

/** A band of height in which a part's cut is much the same. */
const cutSchema = z.strictObject({
  zMm: positive.describe(
    "the cut holds up to this height above the part's bottom, from that of the cut before, mm",
  ),
  areaMm2: notNegative.describe("area of the cut, mean over that band, mm2"),
  perimeterMm: notNegative.describe("outline of the cut with holes, mean over that band, mm"),
  islands: z.int().min(0).describe("separate regions of the cut, at most"),
  holes: z.int().min(0).describe("holes in them, at most"),
  corners: z.int().min(0).describe("corners of the outline (turns of 30 degrees or more), on average"),
  thinnestMm: notNegative.describe("thinnest region of the cut, at its thinnest, mm; 0: empty"),
});

/** What a mesh gave for one direction up: enough to plan and to check a plan with the document alone. */
export const standingSchema = z.strictObject({
  up: directionLabel.describe(
    'which way is up: "x", "-x", "y", "-y", "z", "-z" of the part\'s own axes, or a label of its buildDirections',
  ),
  vector: z
    .strictObject({
      x: z.number().describe("along the part's x axis"),
      y: z.number().describe("along the part's y axis"),
      z: z.number().describe("along the part's z axis"),
    })
    .optional()
    .describe("the direction that was measured, in the part's own axes; none where it is one of them"),
  heightMm: positive.describe("height so, mm"),
  hullMm: z
    .array(z.tuple([z.number(), z.number()]))
    .min(3, "has fewer than 3 corners")
    .max(MOST_HULL_CORNERS, `has more than ${MOST_HULL_CORNERS} corners`)
    .describe(
      "convex outline of the footprint seen from above, x and y of each corner, counter-clockwise, mm",
    ),
  overhangAreaMm2: notNegative.describe("surface that needs support so, mm2"),
  supportVolumeMm3: notNegative.describe("space between that surface and the platform, mm3"),
  cuts: z
    .array(cutSchema)
    .min(1, "has no cut")
    .max(MOST_CUTS, `has more than ${MOST_CUTS} cuts`)
    .describe("cuts from the bottom up"),
});

export type MeasuredStanding = z.infer<typeof standingSchema>;
export type MeasuredCut = z.infer<typeof cutSchema>;

/**
 * Area inside a counter-clockwise outline, mm2, by the shoelace formula. Example: (0, 0), (60, 0), (60, 40), (0, 40) give 2400.
 */
export function areaInside(outline: MeasuredStanding["hullMm"]): number {
  let sum = 0;
  for (let at = 0; at < outline.length; at++) {
    const corner = outline[at]!;
    const next = outline[(at + 1) % outline.length]!;
    sum += (corner[0] * next[1] - next[0] * corner[1]) / 2;
  }
  return sum;
}

import { z } from "zod";
import { directionLabel } from "./direction.ts";
import { id, instant, notNegative, positive } from "./fields.ts";

export const buildItemSchema = z.strictObject({
  orderId: id.describe("order"),
  copies: z.int().min(1, "must be at least 1").describe("copies in this build"),
  rotationDeg: z
    .number()
    .optional()
    .describe(
      "how far each copy is turned about the vertical, counter-clockwise from above, degrees; none: 0",
    ),
});

/** One build cycle: set-up, print, unload, on one machine. */
export const buildSchema = z.strictObject({
  id: id.describe("id, unique in the list"),
  machineId: id.describe("machine"),
  nozzleId: id.describe("nozzle"),
  feedstockId: id.describe("feedstock"),
  layerHeightMm: positive.describe("layer height, mm"),
  beadWidthMm: positive.describe("bead width, mm"),
  orientation: directionLabel.describe(
    'which way of the parts is up: "x", "-x", "y", "-y", "z", "-z" of their own axes, or a label of their buildDirections',
  ),
  items: z.array(buildItemSchema).min(1, "makes nothing").describe("what it makes"),
  setUpStart: instant.describe("set-up starts, instant"),
  printStart: instant.describe("printing (warm-up) starts, instant"),
  printEnd: instant.describe("printing and cooling end, instant"),
  unloadEnd: instant.describe("taken off, instant"),
  state: z.enum(["planned", "committed", "running", "done", "failed"]).describe("state"),
  actual: z
    .strictObject({
      printStart: instant.optional().describe("printing started, instant"),
      printEnd: instant.optional().describe("printing ended, instant"),
      goodCopies: z.int().min(0).optional().describe("good copies"),
      failedCopies: z.int().min(0).optional().describe("failed copies"),
      massKg: notNegative.optional().describe("feedstock used, kg"),
    })
    .optional()
    .describe("what happened"),
});

export type Build = z.infer<typeof buildSchema>;
export type BuildItem = z.infer<typeof buildItemSchema>;

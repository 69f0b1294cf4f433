import { z } from "zod";
import { about, type Finding } from "./finding.ts";

/**
 * What an unreadable build takes with it: nobody knows when its machine is free or how many copies are still to be made, so
 * the machine and the orders that it names are set aside too. A build that was only planned takes nothing with it.
 */
export function buildShadows(raw: unknown, buildName: string): Finding[] {
  const { state, machineId, items } = tracesSchema.parse(raw);
  if (state === "planned") return [];
  const isOver = state === "done" || state === "failed";
  const machine =
    machineId === undefined || isOver
      ? []
      : [
          about("machines", machineId).error(
            "",
            "build-unreadable",
            `nobody can tell when it is free until build ${buildName} is corrected`,
          ),
        ];
  const orders = items.flatMap(({ orderId }) => (orderId === undefined ? [] : [orderId]));
  const orderFindings = orders.map((orderId) =>
    about("orders", orderId).error(
      "",
      "build-unreadable",
      `nobody can tell how many copies are still to be made until build ${buildName} is corrected`,
    ),
  );
  return [...machine, ...orderFindings];
}

/** Reads of a broken build what can be read and passes over the rest. */
const text = z.string().optional().catch(undefined);
const tracesSchema = z
  .object({
    state: text,
    machineId: text,
    items: z.array(z.object({ orderId: text }).catch({ orderId: undefined })).catch([]),
  })
  .catch({ state: undefined, machineId: undefined, items: [] });

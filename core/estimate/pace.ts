import type { Feedstock } from "../shop/feedstock.ts";
import type { Machine } from "../shop/machine.ts";
import type { Part } from "../shop/part.ts";
import { speedMmPerS } from "./bead.ts";
import type { Deposit } from "./deposit.ts";
import { pathLayers } from "./deposit.ts";
import { layerWork } from "./layer-groups.ts";
import type { LayerStack } from "./layer-stack.ts";
import { flowLimitMm3PerS } from "./melt-limit.ts";

/**
 * Speed at which a machine lays a deposit's bead, mm/s: its own fastest, or what the melt limit allows.
 * Example: 180 mm/s and 10 mm3/s in 0.45 x 0.2 mm: 111 mm/s.
 */
export function paceMmPerS(machine: Machine, feedstock: Feedstock, { nozzle, bead }: Deposit): number {
  const flowLimit = flowLimitMm3PerS(nozzle, feedstock);
  return Math.min(machine.maxSpeedMmPerS, speedMmPerS(flowLimit, bead.beadWidthMm, bead.layerHeightMm));
}

/** Layers one above the other that take equally long. */
interface TimedRun {
  readonly count: number;
  /** deposition and travel in one such layer for one copy, s */
  readonly workS: number;
}

/** What a deposit is made of and by. */
export interface PaceInput {
  readonly part: Part;
  readonly machine: Machine;
  readonly feedstock: Feedstock;
}

/**
 * The layers of a stack in order with the time that each takes, unmerged. Their sum is that of the deposit's groups but for
 * what merging nearly equal layers costs, well under 1 %.
 * Example: the box of layer-work.ts at 60 mm/s: 4 layers of 94.6695 s, 92 of 24.4275 s, 4 of 94.6695 s.
 */
export function timedRuns(input: PaceInput, deposit: Deposit, stack: LayerStack): TimedRun[] {
  const { part, machine, feedstock } = input;
  const work = layerWork(machine, deposit, paceMmPerS(machine, feedstock, deposit));
  return stack.runs.map(({ cut: place, solid, count }) => {
    const cut = stack.cuts[place];
    if (!cut) throw new RangeError(`a layer without a cut: ${place}`);
    return { count, workS: work(pathLayers(part, { count, solid, cut }, deposit.bead)) };
  });
}

import type { Process } from "../shop/machine.ts";

/** Layers that take equally long. */
export interface LayerGroup {
  /** how many layers of this kind the part has */
  readonly count: number;
  /** deposition and travel in one such layer for one copy, s */
  readonly workS: number;
}

/**
 * One feasible way to make a part: machine, nozzle, feedstock, bead, layer height and orientation, with what it takes as a
 * function of the copies in one build. Plain data; times come from `print-time.ts`. Valid for every machine that is alike.
 */
export interface Route {
  readonly partId: string;
  readonly machineId: string;
  readonly process: Process;
  readonly nozzleId: string;
  readonly feedstockId: string;
  readonly layerHeightMm: number;
  readonly beadWidthMm: number;
  /** label of the direction of the part that points up: "x", "-x", ... of its own axes, or one of its own */
  readonly orientation: string;
  /** turn of each copy about the vertical, counter-clockwise from above, degrees; none: as it was measured */
  readonly rotationDeg?: number;
  /** space one copy takes on the platform, mm (allowance included, gap and margin not) */
  readonly footprintMm: { readonly x: number; readonly y: number };
  readonly heightMm: number;
  /** fewest copies in one build: below it a layer is over too soon and the machine cannot wait so long */
  readonly copiesMin: number;
  /** most copies in one build: the platform is full, or a layer would take too long to bond */
  readonly copiesMax: number;
  readonly layerGroups: readonly LayerGroup[];
  /** lost at each change of layer, once for the build, s */
  readonly layerChangeS: number;
  /** shortest layer time, s; shorter layers wait */
  readonly shortestLayerS: number;
  /** longest layer time, s; Infinity where no limit applies */
  readonly longestLayerS: number;
  /** the machine's factor of actual over estimated time */
  readonly timeFactor: number;
  /** warm-up and cool-down of one build, min */
  readonly fixedMin: number;
  /** part with supports and losses at starts, one copy, kg */
  readonly massKgPerCopy: number;
  /** the part of `massKgPerCopy` that is support, kg */
  readonly supportKgPerCopy: number;
  /** volume flow while depositing, cm3/h */
  readonly flowCm3PerH: number;
  /** what a person should know: waiting, supports, many islands, temperature model at its edge */
  readonly cautions: readonly string[];
}

/** Why a part cannot be made in one way: a code, the numbers, and a sentence for people. */
export interface RouteReason {
  readonly code: RouteReasonCode;
  readonly sentence: string;
  readonly values: Readonly<Record<string, number | string>>;
}

export type RouteReasonCode =
  | "form"
  | "pinned"
  | "family"
  | "heat-deflection"
  | "stiffness"
  | "strength"
  | "strength-across-layers"
  | "flame-class"
  | "nozzle-temperature"
  | "platform-temperature"
  | "chamber-temperature"
  | "abrasive"
  | "feature-too-fine"
  | "layer-too-thick"
  | "too-large"
  | "orientation"
  | "support"
  | "layer-too-slow"
  | "layer-too-fast"
  | "no-price";

/** The answer for one machine, nozzle and feedstock: the best route, or every reason why there is none. */
export type RouteAnswer =
  | { readonly status: "route"; readonly route: Route }
  | {
      readonly status: "refused";
      readonly machineId: string;
      readonly nozzleId: string;
      readonly feedstockId: string;
      readonly reasons: readonly RouteReason[];
    };

import type { Finding } from "../../core/units/finding.ts";
import type { RouteReason, Route } from "../../core/estimate/route.ts";
import type { LengthUnit } from "../../core/geometry/length-unit.ts";
import type { Measures, Part } from "../../core/shop/part.ts";
import type { Shop } from "../../core/shop/shop.ts";

/** What the worker of bodies and ways is asked. */
export type BodyQuestion =
  | {
      readonly kind: "measure";
      readonly bytes: Uint8Array;
      readonly fileName: string;
      /** null: the file's own, else a guess */
      readonly unit: LengthUnit | null;
      readonly buildDirections: Part["buildDirections"];
    }
  | {
      readonly kind: "shape";
      readonly bytes: Uint8Array;
      readonly fileName: string;
      readonly unit: LengthUnit;
      /** the direction of the body that points up */
      readonly up: { readonly x: number; readonly y: number; readonly z: number };
    }
  | { readonly kind: "ways"; readonly shop: Shop; readonly partId: string; readonly wanted: number };

/** A measured file; without measures its findings say why. */
export interface MeasuredFile {
  readonly kind: "measure";
  readonly measures: Measures | null;
  readonly unit: LengthUnit;
  /** true: neither the file nor the person told the unit */
  readonly unitIsGuess: boolean;
  readonly findings: readonly Finding[];
}

/** A body that stands: corners of its triangles, x, y and z one after the other, lowest point at 0, centred. */
export interface StoodShape {
  readonly kind: "shape";
  readonly cornersMm: Float32Array | null;
  readonly findings: readonly Finding[];
}

/** One machine (or several alike) with one nozzle and one feedstock: the ways, the cheapest first, or why there is none. */
export interface Way {
  readonly machineIds: readonly string[];
  readonly nozzleId: string;
  readonly feedstockId: string;
  readonly routes: readonly PricedRoute[];
  readonly reasons: readonly RouteReason[];
}

export interface PricedRoute {
  readonly route: Route;
  /** by copies in one build, from the fewest to the most that go */
  readonly builds: readonly PricedBuild[];
  /** a copy in a build of as many as are wanted; Infinity: it would never succeed */
  readonly costPerCopy: number;
  readonly copies: number;
}

export interface PricedBuild {
  readonly copies: number;
  readonly runMin: number;
  readonly costPerCopy: number;
}

export interface PartWays {
  readonly kind: "ways";
  readonly ways: readonly Way[];
}

export type BodyAnswer = MeasuredFile | StoodShape | PartWays;
export type BodyNews = { readonly run: number } & (
  | { readonly answer: BodyAnswer }
  | { readonly fault: string }
);

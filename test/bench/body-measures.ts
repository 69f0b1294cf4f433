import { AXIS_DIRECTIONS } from "../../core/geometry/direction.ts";
import { layerProfile } from "../../core/geometry/layer-profile.ts";
import { measureBody } from "../../core/geometry/measure.ts";
import { footprintHull, overhang } from "../../core/geometry/standing.ts";
import { torus } from "../fixtures/bodies.ts";
import { atMost, type BenchCall, type BenchRow, told } from "./bench-row.ts";

const LAYERS = 400;
const SECTION_MM = 30;
const GROWTH = [125_000, 250_000, 500_000, 1_000_000];

interface Times {
  readonly measureMs: number;
  readonly profileMs: number;
  readonly standingMs: number;
}

/** Measuring rings of up to a million triangles and cutting them into 400 layers; the first and largest is met cold. */
export function benchBodyMeasures({ quick, say }: BenchCall): BenchRow[] {
  const cold = timesOf(1_000_000);
  const rounds = quick ? 1 : 3;
  const warm = GROWTH.map((triangles) => shortest(Array.from({ length: rounds }, () => timesOf(triangles))));
  GROWTH.forEach((triangles, place) => say(`${triangles} triangles warm: ${JSON.stringify(warm[place])}`));
  const growth = (name: keyof Times): number => Math.round((100 * warm.at(-1)![name]) / warm[0]![name]) / 100;
  return [
    told("1 000 000 triangles measured", cold.measureMs, "ms"),
    atMost("1 000 000 triangles cut into 400 layers", cold.profileMs, "ms", 1500),
    told("1 000 000 triangles, overhang and footprint of one direction up", cold.standingMs, "ms"),
    atMost("measuring 8 times the triangles", growth("measureMs"), "times", 12),
    atMost("cutting 8 times the triangles", growth("profileMs"), "times", 12),
  ];
}

function timesOf(triangles: number): Times {
  const mesh = torus(triangles, 100, SECTION_MM);
  const up = AXIS_DIRECTIONS.z;
  const measureMs = msOf(() => measureBody(mesh));
  const profileMs = msOf(() => layerProfile(mesh, up, (2 * SECTION_MM) / LAYERS));
  const standingMs = msOf(() => [overhang(mesh, up), footprintHull(mesh, up)]);
  return { measureMs, profileMs, standingMs };
}

function shortest(times: readonly Times[]): Times {
  const least = (name: keyof Times): number => Math.min(...times.map((time) => time[name]));
  return { measureMs: least("measureMs"), profileMs: least("profileMs"), standingMs: least("standingMs") };
}

function msOf(act: () => unknown): number {
  const startMs = performance.now();
  act();
  return Math.round(performance.now() - startMs);
}

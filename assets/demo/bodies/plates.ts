import { block, bore, joined, pin, rectangle, upright, without, type Solid, type Vec2 } from "./kit.ts";

/** Points of a grid about the middle. */
function grid(columns: number, rows: number, pitchX: number, pitchY: number): Vec2[] {
  return Array.from({ length: columns * rows }, (_, index) => [
    ((index % columns) - (columns - 1) / 2) * pitchX,
    (Math.floor(index / columns) - (rows - 1) / 2) * pitchY,
  ]);
}

/** Gauge with a slot at either end: one that must go over the work, one that must not. */
export function gauge(): Solid {
  const goes = block(40, 12.2, 40).translate([56, 0, -10]);
  const stays = block(40, 12, 40).translate([-56, 0, -10]);
  return without(upright(rectangle(120, 40, 6), 15), goes, stays);
}

export function drillTemplate(): Solid {
  const holes = grid(6, 3, 24, 24).map((at) => pin(8, at, -1, 12));
  return without(upright(rectangle(160, 90, 5), 8), ...holes);
}

/** Stencil of two signs, each held by bridges. */
export function stencil(): Solid {
  const zero = joined(
    opening(14, 46, [-76, 29]),
    opening(14, 46, [-76, -29]),
    opening(14, 46, [-24, 29]),
    opening(14, 46, [-24, -29]),
    opening(24, 14, [-50, 62]),
    opening(24, 14, [-50, -62]),
  );
  const seven = joined(opening(60, 14, [50, 62]), opening(14, 50, [73, 25]), opening(14, 58, [73, -37]));
  return without(upright(rectangle(240, 180, 10), 3), zero, seven);
}

/** An opening right through a thin plate. */
function opening(x: number, y: number, [atX, atY]: Vec2): Solid {
  return block(x, y, 8).translate([atX, atY, -2]);
}

/** Plate of a fixture with a grid of holes and two grooves for clamps. */
export function fixturePlate(): Solid {
  const holes = grid(6, 4, 30, 30).map((at) => pin(8, at, -1, 18));
  const grooves = [-60, 60].map((y) => block(220, 8, 6).translate([0, y, 9]));
  return without(upright(rectangle(200, 150, 6), 14), ...holes, ...grooves);
}

/** Manifold for suction: a long bore with a roof that carries itself, four ports upwards, four holes for screws. */
export function suctionManifold(): Solid {
  const main = bore(18, 170).rotate([0, 0, 90]).translate([-6, 0, 18]);
  const ports = [-60, -20, 20, 60].map((x) => pin(12, [x, 0], 18, 24));
  const screws = grid(2, 2, 160, 100).map((at) => pin(8, at, -1, 44));
  return without(upright(rectangle(180, 120, 6), 40), main, ...ports, ...screws);
}

import loadManifold, { type CrossSection as Outline, type Manifold as Solid, type Vec2 } from "manifold-3d";

const wasm = await loadManifold();
wasm.setup();
const { CrossSection, Manifold } = wasm;

export type { Outline, Solid, Vec2 };

/** Sides of a circle: an eighth of its diameter in mm, from 16 to 96, so that files stay small. */
function sidesOf(diameterMm: number): number {
  return Math.min(96, Math.max(16, 8 * Math.round(diameterMm / 8)));
}

/** All bodies stand on z = 0 with their middle on the z axis. Lengths are in mm. */
export function disc(diameterMm: number, sides = sidesOf(diameterMm)): Outline {
  return CrossSection.circle(diameterMm / 2, sides);
}

/** A rectangle with rounded corners. */
export function rectangle(xMm: number, yMm: number, cornerMm = 0): Outline {
  if (cornerMm === 0) return CrossSection.square([xMm, yMm], true);
  const inner = CrossSection.square([xMm - 2 * cornerMm, yMm - 2 * cornerMm], true);
  return inner.offset(cornerMm, "Round", 2, CORNER_SIDES);
}

const CORNER_SIDES = 32;

/** An outline through points, counter-clockwise. */
export function outline(points: readonly Vec2[]): Outline {
  return CrossSection.ofPolygons([[...points]]);
}

/** The outline moved in by so many mm, corners kept. */
export function inset(shape: Outline, byMm: number): Outline {
  return shape.offset(-byMm, "Miter", 4);
}

export function upright(shape: Outline, heightMm: number): Solid {
  return shape.extrude(heightMm);
}

/** A section in x (across) and z (up), drawn out along y. */
export function along(section: Outline, lengthMm: number): Solid {
  return section
    .extrude(lengthMm)
    .rotate([90, 0, 0])
    .translate([0, lengthMm / 2, 0]);
}

/** A section in radius and height, turned about the z axis. */
export function turned(section: readonly Vec2[], sides: number): Solid {
  return outline(section).revolve(sides);
}

export function block(xMm: number, yMm: number, zMm: number): Solid {
  return Manifold.cube([xMm, yMm, zMm], true).translate([0, 0, zMm / 2]);
}

/** A vertical pin or, taken away, a vertical hole from zMm upwards. */
export function pin(diameterMm: number, [xMm, yMm]: Vec2, zMm: number, heightMm: number): Solid {
  return disc(diameterMm).extrude(heightMm).translate([xMm, yMm, zMm]);
}

/**
 * A level bore along y with a pointed roof that carries itself: a circle with sides rising at 40 degrees from the vertical
 * where it would hang over.
 */
export function bore(diameterMm: number, lengthMm: number): Solid {
  const radius = diameterMm / 2;
  const touch = (40 * Math.PI) / 180;
  const roof: Vec2[] = [
    [radius * Math.cos(touch), radius * Math.sin(touch)],
    [0, radius / Math.sin(touch)],
    [-radius * Math.cos(touch), radius * Math.sin(touch)],
  ];
  return along(disc(diameterMm).add(outline(roof)), lengthMm);
}

/** Convex body between a foot outline at z = from and a top outline at z = to. */
export function loft(foot: Outline, top: Outline, fromMm: number, toMm: number): Solid {
  return Manifold.hull([...pointsAt(foot, fromMm), ...pointsAt(top, toMm)]);
}

function pointsAt(shape: Outline, zMm: number): [number, number, number][] {
  return shape
    .toPolygons()
    .flat()
    .map(([x, y]) => [x, y, zMm]);
}

/** Everything in one body. */
export function joined(...solids: Solid[]): Solid {
  return Manifold.union(solids);
}

/** A body less others. */
export function without(solid: Solid, ...less: Solid[]): Solid {
  return Manifold.difference([solid, ...less]);
}

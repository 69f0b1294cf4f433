import {
  disc,
  inset,
  loft,
  outline,
  rectangle,
  without,
  type Outline,
  type Solid,
  type Vec2,
} from "./kit.ts";

/** How far the inside reaches beyond either end, as a share of the height. */
const BEYOND = 0.01;

/** A wall between a foot and a top outline, measured level, no floor and no roof. Both outlines are convex. */
function taper(foot: Outline, top: Outline, height: number, wall: number): Solid {
  const outside = loft(foot, top, 0, height);
  const inside = loft(inset(foot, wall), inset(top, wall), 0, height);
  const below = loft(inset(foot, wall), inset(foot, wall), -BEYOND * height, 0);
  const above = loft(inset(top, wall), inset(top, wall), height, (1 + BEYOND) * height);
  return without(outside, inside, below, above);
}

export function displayForm(): Solid {
  return taper(rectangle(240, 200, 20), rectangle(180, 140, 14), 300, 2.8);
}

export function machineCover(): Solid {
  return taper(rectangle(480, 420, 25), rectangle(420, 360, 20), 350, 4.4);
}

/** Shell of a planter with eight sides. */
export function planter(): Solid {
  return taper(eightSides(420, 50), eightSides(360, 42), 450, 8.8);
}

/** A square with its corners cut off. */
function eightSides(across: number, cut: number): Outline {
  const [half, short] = [across / 2, across / 2 - cut];
  return outline([
    [-short, -half],
    [short, -half],
    [half, -short],
    [half, short],
    [short, half],
    [-short, half],
    [-half, short],
    [-half, -short],
  ]);
}

/** Transition of a duct from a rectangle to a circle. */
export function ductTransition(): Solid {
  return taper(rectangle(420, 320, 16), disc(260, 64), 420, 8.8);
}

export function tankMould(): Solid {
  return taper(rectangle(1500, 900, 80), rectangle(1300, 700, 60), 500, 22);
}

/** Half of a boat's mould along the keel: straight at the keel, bowed at the side, blunt at the stern. */
export function boatMouldHalf(): Solid {
  const foot = halfHull(2400, 1100);
  const top = halfHull(1750, 560).translate([250, 0]);
  return taper(foot, top, 600, 24).translate([-1200, -550, 0]);
}

/** Outline of half a hull: keel along x from the stern, fullest at two fifths of its length. */
function halfHull(length: number, width: number): Outline {
  const fullest = 0.4 * length;
  const side: Vec2[] = Array.from({ length: 21 }, (_, step) => {
    const x = length - (length * step) / 20;
    const reach = x > fullest ? (x - fullest) / (length - fullest) : (fullest - x) / (2 * length);
    return [x, width * (1 - reach ** 2.6) + (x === length ? 60 : 0)];
  });
  return outline([[0, 0], [length, 0], ...side]);
}

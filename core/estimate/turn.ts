import { fitsRotated } from "../geometry/turned-box.ts";
import type { FlatPoint } from "../geometry/flat-point.ts";
import type { Machine } from "../shop/machine.ts";
import type { Measures } from "../shop/part.ts";
import { areaInside } from "../shop/standing.ts";
import type { MeasuredStanding } from "../shop/standing.ts";
import { excess, fillPlatform, usableMm } from "./fit.ts";
import type { Box, PlatformFill, StandingBox } from "./fit.ts";

/** A footprint turned about the vertical, and how many of it stand on a platform. */
interface TurnedFill extends PlatformFill {
  /** turn, counter-clockwise from above, 0 up to 180 degrees; whole quarter turns are left to the platform */
  readonly rotationDeg: number;
}

/** A measured direction of a body, with what its finishing adds on every side. */
interface TurnedBody {
  readonly standing: MeasuredStanding;
  readonly boxMm: Measures["boxMm"];
  readonly allowanceMm: number;
}

/** Less than this share of the box is worth a turn even where it gains no copy. */
const SMALLER = 0.9;
const RAD_PER_DEG = Math.PI / 180;

/**
 * Stands a measured footprint on a platform: as it was measured, or turned about the vertical where that takes more copies or
 * a box smaller by a tenth; an outline that fills nine tenths of its box is left as it is. Turns tried are those that lay an edge of the outline along the platform; where none of them
 * fits, the one across the diagonal.
 * Example: a beam of 300 x 20 mm on 240 x 240 mm turns by 45 degrees and takes 226.3 x 226.3 mm.
 */
export function turnToFit(body: TurnedBody, machine: Machine): TurnedFill {
  const fillAt = (rotationDeg: number): TurnedFill => {
    return { ...fillPlatform(turnedBox(body, rotationDeg), machine), rotationDeg };
  };
  const asMeasured = fillAt(0);
  const turns = fillsItsFootprint(body, asMeasured) ? [] : edgeTurnsDeg(body.standing.hullMm);
  const best = turns.map(fillAt).reduce((known, next) => (isBetter(next, known) ? next : known), asMeasured);
  if (best.copies > 0) return best;
  const usable = usableMm(machine);
  const around = 2 * body.allowanceMm;
  const room = { x: usable.x - around, y: usable.y - around, z: usable.z - around };
  if (isHopeless(body.standing, room)) return best;
  const diagonal = fitsRotated(pointsOf(body), room.x, room.y);
  return diagonal ? fillAt(diagonal.angleDeg) : best;
}

/** Says quickly of most footprints that fit no way that they do not: too high, too large, or longer than the diagonal. */
function isHopeless({ heightMm, hullMm }: MeasuredStanding, room: Box): boolean {
  if (heightMm > room.z + DUST_MM || areaInside(hullMm) > room.x * room.y + DUST_MM) return true;
  const [firstX, firstY] = hullMm[0] ?? [0, 0];
  const reachMm = Math.max(...hullMm.map(([x, y]) => Math.hypot(x - firstX, y - firstY)));
  return reachMm > Math.hypot(room.x, room.y) + DUST_MM;
}

/** Floating-point dust that must not keep a part off a platform. */
const DUST_MM = 1e-6;

/** The turn by whole degrees in which a footprint comes closest to fitting, and by what factor it is too long then. */
export function closestTurn(
  body: TurnedBody,
  machine: Machine,
): { readonly standing: StandingBox; readonly excess: number } {
  const spans = wholeDegreeSpans(body.standing.hullMm);
  const tried = spans.map((span, rotationDeg) => {
    const standing = boxAround(body, span, rotationDeg);
    return { standing, excess: excess(standing, machine) };
  });
  return tried.reduce((best, next) => (next.excess < best.excess ? next : best));
}

/** Worked out once for each outline, whichever machine is too small for it. */
const spansOf = new WeakMap<Outline, readonly Span[]>();

function wholeDegreeSpans(hullMm: Outline): readonly Span[] {
  const spans =
    spansOf.get(hullMm) ?? Array.from({ length: QUARTER_DEG }, (_, turnDeg) => spanAt(hullMm, turnDeg));
  spansOf.set(hullMm, spans);
  return spans;
}

const QUARTER_DEG = 90;

/**
 * Box around a turned footprint with the allowance on every side. The outline may be a little outside the body; unturned and
 * with an axis of its own up a body's box is known exactly. Example: 60 x 40 mm turned by 90 degrees is 40 x 60.
 */
function turnedBox(body: TurnedBody, rotationDeg: number): StandingBox {
  return boxAround(body, spanAt(body.standing.hullMm, rotationDeg), rotationDeg);
}

function boxAround(
  { standing, boxMm, allowanceMm }: TurnedBody,
  span: Span,
  rotationDeg: number,
): StandingBox {
  const exact = rotationDeg === 0 ? acrossOf(boxMm, standing.up) : null;
  const x = Math.min(span.acrossMm, exact?.x ?? Infinity) + 2 * allowanceMm;
  const y = Math.min(span.alongMm, exact?.y ?? Infinity) + 2 * allowanceMm;
  return { footprintMm: { x, y }, heightMm: standing.heightMm + 2 * allowanceMm };
}

type Outline = MeasuredStanding["hullMm"];

/** How wide and how deep a turned outline is, mm. */
interface Span {
  readonly acrossMm: number;
  readonly alongMm: number;
}

function spanAt(hullMm: Outline, rotationDeg: number): Span {
  const cos = Math.cos(rotationDeg * RAD_PER_DEG);
  const sin = Math.sin(rotationDeg * RAD_PER_DEG);
  let [left, right, front, back] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let at = 0; at < hullMm.length; at++) {
    const corner = hullMm[at]!;
    const across = corner[0] * cos - corner[1] * sin;
    const along = corner[0] * sin + corner[1] * cos;
    if (across < left) left = across;
    if (across > right) right = across;
    if (along < front) front = along;
    if (along > back) back = along;
  }
  return { acrossMm: right - left, alongMm: back - front };
}

/** How wide a body's own box is on the platform with an axis up: the turned axes are those of `standUp` of the geometry. */
function acrossOf({ x, y, z }: Box, up: string): { x: number; y: number } | null {
  switch (up.replace("-", "")) {
    case "z":
      return { x, y };
    case "y":
      return { x, y: z };
    case "x":
      return { x: z, y };
    default:
      return null;
  }
}

/** Then no turn makes the box clearly smaller: none can be smaller than the outline inside it. */
function fillsItsFootprint({ standing, allowanceMm }: TurnedBody, { footprintMm }: TurnedFill): boolean {
  const boxMm2 = (footprintMm.x - 2 * allowanceMm) * (footprintMm.y - 2 * allowanceMm);
  return areaInside(standing.hullMm) >= SMALLER * boxMm2;
}

/** Turns that lay an edge of the outline along the platform's front, as far as they differ from none. */
function edgeTurnsDeg(hullMm: MeasuredStanding["hullMm"]): number[] {
  const turns = hullMm.map(([x, y], at) => {
    const [nextX, nextY] = hullMm[(at + 1) % hullMm.length] ?? [x, y];
    return withinQuarter(-Math.atan2(nextY - y, nextX - x) / RAD_PER_DEG);
  });
  return [...new Set(turns)].filter((turn) => turn !== 0);
}

/** Rounded to what an operator can set, so that a straight edge with some dust needs no turn. */
function withinQuarter(angleDeg: number): number {
  const rounded = Math.round(angleDeg * STEPS_PER_DEG) / STEPS_PER_DEG;
  return ((rounded % QUARTER_DEG) + QUARTER_DEG) % QUARTER_DEG;
}

const STEPS_PER_DEG = 100;

function isBetter(next: TurnedFill, known: TurnedFill): boolean {
  if (next.copies !== known.copies) return next.copies > known.copies;
  const area = ({ footprintMm }: TurnedFill): number => footprintMm.x * footprintMm.y;
  return area(next) < SMALLER * area(known);
}

function pointsOf({ standing }: TurnedBody): FlatPoint[] {
  return standing.hullMm.map(([x, y]) => ({ x, y }));
}

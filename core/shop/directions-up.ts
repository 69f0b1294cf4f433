import { angleToAxisDeg, standsFor, vectorUp } from "./direction.ts";
import type { Axis, Part } from "./part.ts";
import type { MeasuredStanding } from "./standing.ts";

const AXES: readonly Axis[] = ["z", "y", "x"];

/** A load nearer to vertical than this pulls the layers apart: common practice, no source. */
export const NEAR_VERTICAL_DEG = 30;

/**
 * Labels of the directions of a part that may point up: those it names (all if it names none), but none with the axis of its
 * load within 30 degrees of vertical, since layers are weakest across. A part from a mesh has the directions that were
 * measured; one known by measures alone has its three axes, z first, as either way up is the same to it.
 * Example: load along x, none named, by measures alone: z and y.
 */
export function directionsUp(part: Part): string[] {
  const { standings } = part.geometry.measures;
  if (standings) return standings.filter((standing) => mayPointUp(part, standing)).map(({ up }) => up);
  return AXES.filter((axis) => axis !== part.loadAxis).flatMap((axis) => {
    const label = [axis, `-${axis}`].find((way) => isNamed(part.orientations, way));
    return label === undefined ? [] : [label];
  });
}

/** What was measured of a part with a direction up; null where it is known by measures alone. */
export function measuredStanding(part: Part, up: string): MeasuredStanding | null {
  return part.geometry.measures.standings?.find((standing) => standing.up === up) ?? null;
}

/** The axis of a direction, for a part known by measures alone. Example: "-x" gives "x". */
export function axisOf(up: string): Axis {
  const axis = AXES.find((candidate) => candidate === up.replace("-", ""));
  if (!axis) throw new RangeError(`no axis of a part known by measures alone: ${up}`);
  return axis;
}

function mayPointUp(part: Part, standing: MeasuredStanding): boolean {
  if (!isNamed(part.orientations, standing.up)) return false;
  const direction = vectorUp(standing);
  return !part.loadAxis || !direction || angleToAxisDeg(direction, part.loadAxis) >= NEAR_VERTICAL_DEG;
}

/** Whether a direction is among those a part names; all are, if it names none. Example: "z" names "-z". */
export function isNamed(orientations: Part["orientations"], up: string): boolean {
  return orientations === undefined || orientations.some((name) => standsFor(name, up));
}

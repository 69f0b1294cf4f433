import type { Axis, Part } from "../shop/part.ts";

const AXES: readonly Axis[] = ["z", "y", "x"];

/**
 * The part's own axes that may be vertical, its z axis first: those it names (all three if it names none) but never the axis
 * of its load, since layers are weakest across. Example: load along x, none named: z and y.
 */
export function verticalAxes(part: Part): Axis[] {
  const named = part.orientations ?? AXES;
  return AXES.filter((axis) => named.includes(axis) && axis !== part.loadAxis);
}

import { at } from "../at.ts";
import { goesInto, takeOut } from "./free-rectangles.ts";
import type { Rectangle } from "./free-rectangles.ts";
import { covered, turnsOf } from "./packing-task.ts";
import type { PackingTask, PlacedPiece, Size } from "./packing-task.ts";

/**
 * Complete search. Any arrangement can be pushed to the lower left until every piece lies in the corner of a maximal free
 * rectangle left by those before it. So the lowest corner either gets one of the pieces, one way or the other, or none: then
 * it is closed for good. Every arrangement comes up once, whatever the order of its pieces.
 */
export function searchPacking(task: PackingTask): PlacedPiece[] | null {
  const search: Search = { task, places: [], stepsLeft: MOST_STEPS };
  const left = task.sizes.map((_, index) => index);
  return placeRest(search, left, [task.whole], []) ? search.places : null;
}

const MOST_STEPS = 200;

interface Search {
  readonly task: PackingTask;
  readonly places: PlacedPiece[];
  stepsLeft: number;
}

interface Corner {
  readonly x: number;
  readonly y: number;
}

function placeRest(
  search: Search,
  left: readonly number[],
  free: readonly Rectangle[],
  closed: readonly Corner[],
): boolean {
  if (left.length === 0) return true;
  if (search.stepsLeft-- <= 0 || !eachStillFits(search.task, left, free)) return false;
  const corner = lowestCorner(free, closed);
  if (!corner) return false;
  const here = free.filter(({ x, y }) => x === corner.x && y === corner.y);
  for (const [position, index] of left.entries()) {
    const size = at(search.task.sizes, index);
    if (isRepeated(search.task, left, position, size)) continue;
    for (const turned of waysInto(here, size)) {
      const place = { ...corner, turned };
      search.places[index] = place;
      const rest = left.filter((other) => other !== index);
      if (placeRest(search, rest, takeOut(free, covered(size, place)), closed)) return true;
    }
  }
  return placeRest(search, left, free, [...closed, corner]);
}

function lowestCorner(free: readonly Rectangle[], closed: readonly Corner[]): Corner | null {
  let best: Corner | null = null;
  for (const { x, y } of free) {
    const isLower = !best || y < best.y || (y === best.y && x < best.x);
    if (isLower && !closed.some((corner) => corner.x === x && corner.y === y)) best = { x, y };
  }
  return best;
}

function eachStillFits(task: PackingTask, left: readonly number[], free: readonly Rectangle[]): boolean {
  return left.every((index) => waysInto(free, at(task.sizes, index)).length > 0);
}

/** Equal pieces need trying only once at each step. */
function isRepeated(task: PackingTask, left: readonly number[], position: number, { x, y }: Size): boolean {
  return left.slice(0, position).some((index) => {
    const before = at(task.sizes, index);
    return before.x === x && before.y === y;
  });
}

/** How a piece may lie in one of some free rectangles: straight, turned, both or not at all. */
function waysInto(free: readonly Rectangle[], { x, y }: Size): boolean[] {
  return turnsOf({ x, y }).filter((turned) =>
    free.some((rectangle) => goesInto(rectangle, turned ? y : x, turned ? x : y)),
  );
}

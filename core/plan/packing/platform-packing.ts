import { at } from "../at.ts";
import { FIT_SLACK_MM, goesInto, takeOut } from "./free-rectangles.ts";
import type { Rectangle } from "./free-rectangles.ts";
import { searchPacking } from "./packing-search.ts";
import { covered, turnsOf } from "./packing-task.ts";
import type { PackingTask, PlacedPiece, Size } from "./packing-task.ts";

/**
 * Finds places for all pieces on one platform, with a gap between neighbours (none towards the edge: the platform is given
 * inside its margin), pieces turned by 90 degrees where that helps. Answers in the order of the pieces, or null where no
 * arrangement was found. Equal pieces are tried in rows; greedy filling in several orders by several rules comes next; up
 * to a handful of pieces it is followed by a complete search with a limit on its steps, so that "null" is then mostly
 * a proof. Whether an arrangement is found does not depend on the order or turn in which pieces are given.
 * Example: pieces of 60 x 40 and 40 x 60 with gap 5 fit a platform of 85 x 60 side by side.
 */
export function packPlatform(pieces: readonly Size[], platform: Size, gapMm: number): PlacedPiece[] | null {
  const order = pieces
    .map((_, index) => index)
    .toSorted((a, b) => compareSizes(at(pieces, a), at(pieces, b)) || a - b);
  const sorted = order.map((index) => at(pieces, index));
  const places = pack(taskOf(sorted, platform, gapMm));
  if (!places) return null;
  const result: PlacedPiece[] = [];
  order.forEach((index, position) => {
    const { x, y } = at(pieces, index);
    const place = at(places, position);
    result[index] = { ...place, turned: place.turned !== x < y };
  });
  return result;
}

/** Larger pieces first, whichever way they are turned. */
function compareSizes(a: Size, b: Size): number {
  return Math.max(b.x, b.y) - Math.max(a.x, a.y) || Math.min(b.x, b.y) - Math.min(a.x, a.y);
}

function pack(task: PackingTask): PlacedPiece[] | null {
  if (!mayFit(task)) return null;
  const inRows = isOneSize(task.sizes) ? (rows(task, false) ?? rows(task, true)) : null;
  if (inRows) return inRows;
  const orders = ordersOf(task.sizes);
  for (const rule of RULES) {
    for (const order of orders) {
      const placed = fill(task, order, rule);
      if (placed) return placed;
    }
  }
  return task.sizes.length <= MOST_SEARCHED ? searchPacking(task) : null;
}

/** Beyond so many pieces the complete search would not get far within its steps. */
const MOST_SEARCHED = 7;

function taskOf(pieces: readonly Size[], platform: Size, gapMm: number): PackingTask {
  const sizes = pieces.map(({ x, y }) => ({ x: Math.max(x, y) + gapMm, y: Math.min(x, y) + gapMm }));
  return { sizes, whole: { x: 0, y: 0, width: platform.x + gapMm, height: platform.y + gapMm } };
}

function mayFit({ sizes, whole }: PackingTask): boolean {
  let areaMm2 = 0;
  for (const size of sizes) {
    if (!goesInto(whole, size.x, size.y) && !goesInto(whole, size.y, size.x)) return false;
    areaMm2 += size.x * size.y;
  }
  return areaMm2 <= (whole.width + FIT_SLACK_MM) * (whole.height + FIT_SLACK_MM);
}

function isOneSize(sizes: readonly Size[]): boolean {
  return sizes.length > 0 && sizes.every(({ x, y }) => x === sizes[0]?.x && y === sizes[0]?.y);
}

/** Equal pieces in rows and columns, all turned the same way. */
function rows({ sizes, whole }: PackingTask, turned: boolean): PlacedPiece[] | null {
  const first = sizes[0] ?? { x: 0, y: 0 };
  const { x, y } = turned ? { x: first.y, y: first.x } : first;
  const perRow = Math.floor((whole.width + FIT_SLACK_MM) / x);
  const rowCount = Math.floor((whole.height + FIT_SLACK_MM) / y);
  if (perRow * rowCount < sizes.length) return null;
  return sizes.map((_, index) => ({ x: (index % perRow) * x, y: Math.floor(index / perRow) * y, turned }));
}

/** The smaller, the better a piece of this size lies in this free rectangle. */
type Rule = (free: Rectangle, width: number, height: number) => number;

const lowest: Rule = (free, _width, height) => (free.y + height) * LEXICAL + free.x;
const shortSide: Rule = (free, width, height) => {
  const restX = free.width - width;
  const restY = free.height - height;
  return Math.min(restX, restY) * LEXICAL + Math.max(restX, restY);
};
const leastArea: Rule = (free, width, height) =>
  (free.width * free.height - width * height) * LEXICAL + Math.min(free.width - width, free.height - height);

const RULES: readonly Rule[] = [lowest, shortSide, leastArea];

/** Puts the first figure of a rule before the second one. */
const LEXICAL = 1e5;

function ordersOf(sizes: readonly Size[]): number[][] {
  const keys: readonly ((size: Size) => number)[] = [
    ({ x, y }) => x * LEXICAL + y,
    ({ x, y }) => x * y,
    ({ x, y }) => y * LEXICAL + x,
    ({ x, y }) => x + y,
  ];
  const orders = keys.map((key) => {
    const values = sizes.map(key);
    return sizes.map((_, index) => index).toSorted((a, b) => (values[b] ?? 0) - (values[a] ?? 0) || a - b);
  });
  const known = new Map(orders.map((order) => [order.join(), order]));
  return [...known.values()];
}

function fill(task: PackingTask, order: readonly number[], rule: Rule): PlacedPiece[] | null {
  const places: PlacedPiece[] = [];
  let free: readonly Rectangle[] = [task.whole];
  for (const index of order) {
    const size = at(task.sizes, index);
    const place = bestPlace(free, size, rule);
    if (!place) return null;
    places[index] = place;
    free = takeOut(free, covered(size, place));
  }
  return places;
}

function bestPlace(free: readonly Rectangle[], { x, y }: Size, rule: Rule): PlacedPiece | null {
  let best: PlacedPiece | null = null;
  let bestValue = Number.POSITIVE_INFINITY;
  for (const rectangle of free) {
    for (const turned of turnsOf({ x, y })) {
      const width = turned ? y : x;
      const height = turned ? x : y;
      if (!goesInto(rectangle, width, height)) continue;
      const value = rule(rectangle, width, height);
      if (value >= bestValue) continue;
      bestValue = value;
      best = { x: rectangle.x, y: rectangle.y, turned };
    }
  }
  return best;
}

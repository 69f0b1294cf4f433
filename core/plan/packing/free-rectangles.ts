/** An axis-parallel rectangle, mm: its lower left corner and its size. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Floating-point dust: a piece may be this much larger than the space it goes into, mm. */
export const FIT_SLACK_MM = 1e-6;

/** Says whether a piece of this size goes into a free rectangle as it lies. Example: 5 x 3 fits into 5 x 4, not into 4 x 5. */
export function goesInto(free: Rectangle, width: number, height: number): boolean {
  return width <= free.width + FIT_SLACK_MM && height <= free.height + FIT_SLACK_MM;
}

/**
 * Takes a rectangle out of free space. Free space is kept as all its maximal free rectangles, which may overlap: none can
 * be made larger and none lies inside another (the "maximal rectangles" of packing; the idea from memory).
 * Example: taking the lower left 4 x 3 out of one free 10 x 8 leaves 6 x 8 at its right and 10 x 5 above it.
 */
export function takeOut(free: readonly Rectangle[], taken: Rectangle): Rectangle[] {
  const untouched: Rectangle[] = [];
  const cut: Rectangle[] = [];
  for (const rectangle of free) {
    if (overlap(rectangle, taken)) addRemains(cut, rectangle, taken);
    else untouched.push(rectangle);
  }
  const kept = cut.filter((rectangle, index) => !isCovered(rectangle, index, cut, untouched));
  return untouched.concat(kept);
}

/** Says whether two rectangles overlap by more than dust. Example: two squares that share an edge do not. */
function overlap(a: Rectangle, b: Rectangle): boolean {
  return (
    a.x + a.width > b.x + FIT_SLACK_MM &&
    b.x + b.width > a.x + FIT_SLACK_MM &&
    a.y + a.height > b.y + FIT_SLACK_MM &&
    b.y + b.height > a.y + FIT_SLACK_MM
  );
}

/** What is left of a free rectangle to the left, right, below and above of what is taken. */
function addRemains(remains: Rectangle[], free: Rectangle, taken: Rectangle): void {
  const { x, y, width, height } = free;
  const right = x + width;
  const top = y + height;
  const takenRight = taken.x + taken.width;
  const takenTop = taken.y + taken.height;
  if (taken.x > x + FIT_SLACK_MM) remains.push({ x, y, width: taken.x - x, height });
  if (takenRight < right - FIT_SLACK_MM)
    remains.push({ x: takenRight, y, width: right - takenRight, height });
  if (taken.y > y + FIT_SLACK_MM) remains.push({ x, y, width, height: taken.y - y });
  if (takenTop < top - FIT_SLACK_MM) remains.push({ x, y: takenTop, width, height: top - takenTop });
}

/** Of two equal rectangles the later one counts as covered. */
function isCovered(
  inner: Rectangle,
  index: number,
  cut: readonly Rectangle[],
  untouched: readonly Rectangle[],
): boolean {
  if (untouched.some((outer) => covers(outer, inner))) return true;
  return cut.some((outer, other) => {
    if (other === index || !covers(outer, inner)) return false;
    return other < index || !covers(inner, outer);
  });
}

function covers(outer: Rectangle, inner: Rectangle): boolean {
  return (
    outer.x <= inner.x + FIT_SLACK_MM &&
    outer.y <= inner.y + FIT_SLACK_MM &&
    outer.x + outer.width >= inner.x + inner.width - FIT_SLACK_MM &&
    outer.y + outer.height >= inner.y + inner.height - FIT_SLACK_MM
  );
}

import type { Ghost } from "./ghost.ts";
import type { WeekColours } from "./colours.ts";
import type { Hatches } from "./hatches.ts";
import type { RowPlaces } from "./row-places.ts";
import type { Ground } from "./shades.ts";
import type { TimeScale } from "./time-scale.ts";
import type { WeekPicture } from "./week-picture.ts";

/** Everything that one picture is drawn from. Sizes are px of the page, before the density of the screen. */
export interface Painting {
  readonly context: CanvasRenderingContext2D;
  readonly colours: WeekColours;
  readonly hatches: Hatches;
  readonly picture: WeekPicture;
  readonly grounds: ReadonlyMap<string, Ground>;
  readonly scale: TimeScale;
  readonly rows: RowPlaces;
  readonly timeZone: string;
  /** body of the picture, right of the names and below the head */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly headPx: number;
  readonly nowMin: number;
  readonly chosenId: string | null;
  readonly hoveredId: string | null;
  /** where a build would stand that is being moved */
  readonly ghost: Ghost | null;
  /** font of the page and the size of its root over the usual 15 px */
  readonly font: string;
  readonly sizeFactor: number;
}

/** A rectangle from one x to another, cut to the picture; false: nothing of it is in sight. */
export function fillSpan(
  { context, widthPx }: Painting,
  fill: string | CanvasPattern,
  span: {
    readonly leftPx: number;
    readonly rightPx: number;
    readonly topPx: number;
    readonly heightPx: number;
  },
): boolean {
  const left = Math.max(-2, span.leftPx);
  const right = Math.min(widthPx + 2, span.rightPx);
  if (right <= left) return false;
  context.fillStyle = fill;
  context.fillRect(left, span.topPx, right - left, span.heightPx);
  return true;
}

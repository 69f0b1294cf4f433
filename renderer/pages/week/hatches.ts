import { type FamilyMark, hatchPath } from "../../../core/report/family-marks.ts";
import type { WeekColours } from "./colours.ts";

/** Fills of the picture that are more than a colour. */
export interface Hatches {
  readonly family: (mark: FamilyMark) => CanvasPattern | string;
  readonly change: CanvasPattern | string;
  readonly shut: CanvasPattern | string;
  readonly outOfService: CanvasPattern | string;
  readonly refused: CanvasPattern | string;
}

interface Tile {
  readonly sizePx: number;
  readonly back: string | null;
  readonly line: string;
  readonly path: string;
  readonly widthPx?: number;
}

const INK = "#10181b";

/** Draws the tiles of all fills once for a theme and a density of the screen. */
export function makeHatches(
  context: CanvasRenderingContext2D,
  colours: WeekColours,
  density: number,
): Hatches {
  const pattern = (tile: Tile): CanvasPattern | string => patternOf(context, tile, density);
  const families = new Map<string, CanvasPattern | string>();
  return {
    family: (mark) => {
      const known = families.get(mark.family);
      if (known) return known;
      const made = pattern({ sizePx: 8, back: mark.colour, line: INK, path: hatchPath(mark) });
      families.set(mark.family, made);
      return made;
    },
    change: pattern({
      sizePx: 4,
      back: colours.surface,
      line: colours.barEdge,
      path: "M-1 1l2-2M0 4l4-4M3 5l2-2",
    }),
    shut: pattern({ sizePx: 10, back: null, line: colours.edge, path: "M-2 2l4-4M0 10l10-10M8 12l4-4" }),
    outOfService: pattern({ sizePx: 9, back: null, line: colours.alarm, path: "M0 0l9 9M0 9l9-9" }),
    refused: pattern({
      sizePx: 8,
      back: null,
      line: colours.alarm,
      path: "M-2 2l4-4M0 8l8-8M6 10l4-4",
      widthPx: 2,
    }),
  };
}

function patternOf(context: CanvasRenderingContext2D, tile: Tile, density: number): CanvasPattern | string {
  const canvas = document.createElement("canvas");
  const side = Math.max(1, Math.round(tile.sizePx * density));
  canvas.width = side;
  canvas.height = side;
  const draw = canvas.getContext("2d");
  if (!draw) return tile.back ?? tile.line;
  draw.scale(side / tile.sizePx, side / tile.sizePx);
  if (tile.back) {
    draw.fillStyle = tile.back;
    draw.fillRect(0, 0, tile.sizePx, tile.sizePx);
  }
  draw.strokeStyle = tile.line;
  draw.lineWidth = tile.widthPx ?? 1;
  draw.stroke(new Path2D(tile.path));
  const made = context.createPattern(canvas, "repeat");
  made?.setTransform(new DOMMatrix().scale(tile.sizePx / side));
  return made ?? tile.back ?? tile.line;
}

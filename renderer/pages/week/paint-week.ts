import { paintBars } from "./paint-bars.ts";
import { paintGround, paintHead } from "./paint-ground.ts";
import { paintMarks } from "./paint-marks.ts";
import type { Painting } from "./paint-parts.ts";

/** Draws the whole picture anew: ground, bars and marks below the head, the head last so that nothing runs into it. */
export function paintWeek(painting: Painting, density: number): void {
  const { context, widthPx, heightPx, headPx, colours } = painting;
  context.setTransform(density, 0, 0, density, 0, 0);
  context.fillStyle = colours.surface;
  context.fillRect(0, 0, widthPx, heightPx + headPx);
  context.save();
  context.translate(0, headPx);
  context.beginPath();
  context.rect(0, 0, widthPx, heightPx);
  context.clip();
  paintGround(painting);
  paintBars(painting);
  paintMarks(painting);
  context.restore();
  paintHead(painting);
}

import { fillSpan, type Painting } from "./paint-parts.ts";
import { rowsInSight, topOf } from "./row-places.ts";
import { ticksInSight } from "./ticks-in-sight.ts";
import { xOf } from "./time-scale.ts";
import type { DayTick } from "./time-ticks.ts";

/** Rows with staffed time, closures and times out of service, then the lines of days and hours over all of them. */
export function paintGround(painting: Painting): void {
  const { context, rows, picture, heightPx, widthPx, colours } = painting;
  context.fillStyle = colours.unstaffed;
  context.fillRect(0, 0, widthPx, Math.min(heightPx, rows.count * rows.heightPx - rows.scrollPx));
  const { first, end } = rowsInSight(rows, heightPx);
  for (let row = first; row < end; row++) paintRowGround(painting, row, picture.rows[row]?.machineId ?? "");
  paintTimeLines(painting);
}

function paintRowGround(painting: Painting, row: number, machineId: string): void {
  const { context, colours, hatches, rows, scale, widthPx } = painting;
  const ground = painting.grounds.get(machineId);
  const topPx = topOf(rows, row);
  const heightPx = rows.heightPx - 1;
  const fill = (stretch: { startMin: number; endMin: number }, look: string | CanvasPattern): void => {
    const span = {
      leftPx: xOf(scale, stretch.startMin),
      rightPx: xOf(scale, stretch.endMin),
      topPx,
      heightPx,
    };
    fillSpan(painting, look, span);
  };
  for (const stretch of ground?.staffed ?? []) fill(stretch, colours.staffed);
  for (const stretch of ground?.shut ?? []) fill(stretch, hatches.shut);
  for (const stretch of ground?.outOfService ?? []) fill(stretch, hatches.outOfService);
  context.fillStyle = colours.rule;
  context.fillRect(0, topPx + heightPx, widthPx, 1);
}

function paintTimeLines(painting: Painting): void {
  const { context, scale, heightPx, colours } = painting;
  const ticks = ticksInSight(painting);
  context.fillStyle = colours.rule;
  if (ticks.hours.length > 0) {
    for (const { atMin } of ticks.hours) context.fillRect(Math.round(xOf(scale, atMin)), 0, 1, heightPx);
  }
  context.fillStyle = colours.edge;
  const isCrowded = scale.pxPerMin * 1440 < 8;
  for (const { atMin, isMonday } of ticks.days) {
    if (isCrowded && !isMonday) continue;
    context.fillRect(Math.round(xOf(scale, atMin)), 0, 1, heightPx);
  }
}

/** The head above the rows: names of days, hours where they have room, and where clocks change. */
export function paintHead(painting: Painting): void {
  const { context, scale, widthPx, headPx, colours, font, sizeFactor } = painting;
  const ticks = ticksInSight(painting);
  const dayPx = scale.pxPerMin * 1440;
  context.fillStyle = colours.surface;
  context.fillRect(0, 0, widthPx, headPx);
  context.textBaseline = "middle";
  context.font = `${11.5 * sizeFactor}px ${font}`;
  context.textAlign = "center";
  context.fillStyle = colours.quiet;
  if (ticks.hours.length > 0) {
    for (const { atMin, label } of ticks.hours) {
      const x = Math.round(xOf(scale, atMin));
      context.fillRect(x, headPx - 4, 1, 4);
      context.fillText(label, x, headPx - 12 * sizeFactor);
    }
  }
  context.textAlign = "left";
  for (const day of ticks.days) paintDayName(painting, day, dayPx);
  context.fillStyle = colours.edge;
  context.fillRect(0, headPx - 1, widthPx, 1);
}

/** A day's name where it has room: in full, short, in two lines, or on Mondays alone. */
function paintDayName(painting: Painting, day: DayTick, dayPx: number): void {
  const { context, scale, headPx, colours, font, sizeFactor } = painting;
  const roomPx = dayPx / sizeFactor;
  const isNamed = roomPx >= STACKED_NAME_PX;
  if (!isNamed && !day.isMonday) return;
  const isStacked = isNamed && roomPx < SHORT_NAME_PX;
  const isShort = roomPx >= SHORT_NAME_PX && roomPx < FULL_NAME_PX;
  const start = Math.round(xOf(scale, day.atMin));
  const isOdd = day.hours !== 24;
  const [weekday = "", date = ""] = day.label.split(" ");
  const words = isShort ? `${weekday} ${date}` : isStacked ? weekday : day.label;
  const label = isOdd && dayPx > 150 ? `${words}, ${day.hours} h: clocks change` : words;
  context.fillStyle = colours.edge;
  if (start >= 0) context.fillRect(start, 2, 1, headPx - 2);
  context.fillStyle = isOdd ? colours.heed : colours.ink;
  context.font = `600 ${12.5 * sizeFactor}px ${font}`;
  // The name of the day at the left edge stays in sight as long as the day has room for it.
  const right = start + (isNamed ? dayPx : 7 * dayPx);
  const left = Math.min(Math.max(0, start) + 6, right - context.measureText(label).width - 4);
  if (left < 0) return;
  context.fillText(label, left, 12 * sizeFactor);
  if (isStacked) context.fillText(date, left, headPx - 12 * sizeFactor);
}

const FULL_NAME_PX = 88;
const SHORT_NAME_PX = 56;
const STACKED_NAME_PX = 36;

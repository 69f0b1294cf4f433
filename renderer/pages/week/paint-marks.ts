import { barBox } from "./paint-bars.ts";
import type { Painting } from "./paint-parts.ts";
import { rowsInSight, topOf } from "./row-places.ts";
import { xOf } from "./time-scale.ts";
import type { WeekBuild } from "./week-picture.ts";

/** Fewer px for a day than this leave no room for marks of due dates. */
const LEAST_DAY_PX = 14;

/** Due marks of all rows in sight, the chosen build's ring and its fellows, the build on its way, the line of now. */
export function paintMarks(painting: Painting): void {
  paintDues(painting);
  paintFellows(painting);
  paintGhost(painting);
  paintNow(painting);
}

function paintDues(painting: Painting): void {
  const { picture, rows, heightPx, scale } = painting;
  if (scale.pxPerMin * 1440 < LEAST_DAY_PX) return;
  const { first, end } = rowsInSight(rows, heightPx);
  for (let row = first; row < end; row++)
    for (const entry of picture.rows[row]?.builds ?? [])
      for (const { dueMin } of entry.dues) paintDue(painting, entry, dueMin);
}

/** An empty diamond where an order is due; where it is late a broken line to a filled triangle at its end. */
function paintDue(
  { context, colours, scale, rows, widthPx }: Painting,
  entry: WeekBuild,
  dueMin: number,
): void {
  const y = Math.round(topOf(rows, entry.row) + rows.heightPx * 0.11) + 0.5;
  const x = xOf(scale, dueMin);
  const endX = xOf(scale, entry.endMin);
  const isLate = entry.endMin > dueMin;
  if (Math.max(x, endX) < -8 || x > widthPx + 8) return;
  if (isLate) {
    context.strokeStyle = colours.alarm;
    context.lineWidth = 1.5;
    context.setLineDash([4, 3]);
    context.beginPath();
    context.moveTo(Math.max(x, -8), y);
    context.lineTo(Math.min(endX, widthPx + 8), y);
    context.stroke();
    context.setLineDash([]);
    context.fillStyle = colours.alarm;
    drawShape(context, [endX - 6, y - 4, endX + 6, y - 4, endX, y + 5]);
    context.fill();
  }
  context.fillStyle = colours.surface;
  context.strokeStyle = isLate ? colours.alarm : colours.ink;
  context.lineWidth = 1.3;
  drawShape(context, [x, y - 4.5, x + 4.5, y, x, y + 4.5, x - 4.5, y]);
  context.fill();
  context.stroke();
}

function drawShape(context: CanvasRenderingContext2D, corners: readonly number[]): void {
  context.beginPath();
  for (let at = 0; at < corners.length; at += 2) {
    const [x = 0, y = 0] = [corners[at], corners[at + 1]];
    if (at === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  }
  context.closePath();
}

/** A ring round the chosen build, a thinner broken one round the other builds of its orders, a faint one under the pointer. */
function paintFellows(painting: Painting): void {
  const { picture, chosenId, hoveredId, colours } = painting;
  const chosen = chosenId === null ? undefined : picture.byId.get(chosenId);
  const hovered = hoveredId === null ? undefined : picture.byId.get(hoveredId);
  if (hovered && hovered !== chosen)
    ring(painting, hovered, { colour: colours.quiet, widthPx: 1.5, dash: [] });
  if (!chosen) return;
  const fellows = new Set(chosen.build.items.flatMap(({ orderId }) => picture.byOrder.get(orderId) ?? []));
  for (const fellow of fellows)
    if (fellow !== chosen) ring(painting, fellow, { colour: colours.accent, widthPx: 2, dash: [3, 3] });
  ring(painting, chosen, { colour: colours.accent, widthPx: 3, dash: [] });
}

function ring(
  painting: Painting,
  entry: WeekBuild,
  look: { readonly colour: string; readonly widthPx: number; readonly dash: number[] },
): void {
  const { context, scale, widthPx } = painting;
  const { topPx, heightPx } = barBox(painting, entry.row);
  const left = Math.max(-8, xOf(scale, entry.setUpMin)) - 2;
  const right = Math.min(widthPx + 8, xOf(scale, entry.endMin)) + 2;
  if (right < 0 || left > widthPx) return;
  context.strokeStyle = look.colour;
  context.lineWidth = look.widthPx;
  context.setLineDash(look.dash);
  context.strokeRect(left, topPx - 2, Math.max(5, right - left), heightPx + 4);
  context.setLineDash([]);
}

function paintGhost(painting: Painting): void {
  const { ghost, context, scale, colours, hatches } = painting;
  if (!ghost) return;
  const { topPx, heightPx } = barBox(painting, ghost.row);
  const [left, right] = [xOf(scale, ghost.setUpMin), xOf(scale, ghost.endMin)];
  context.globalAlpha = 0.82;
  context.fillStyle = colours.surface;
  context.fillRect(left, topPx, right - left, heightPx);
  context.fillStyle = colours.barPrint;
  context.fillRect(
    xOf(scale, ghost.printMin),
    topPx,
    (ghost.doneMin - ghost.printMin) * scale.pxPerMin,
    heightPx,
  );
  if (!ghost.isAllowed) {
    context.fillStyle = hatches.refused;
    context.fillRect(left, topPx, right - left, heightPx);
  }
  context.globalAlpha = 1;
  context.strokeStyle = ghost.isAllowed ? colours.accent : colours.alarm;
  context.lineWidth = 2.5;
  context.setLineDash(ghost.isAllowed ? [] : [6, 4]);
  context.strokeRect(left, topPx, Math.max(4, right - left), heightPx);
  context.setLineDash([]);
}

function paintNow({ context, scale, widthPx, heightPx, colours, nowMin }: Painting): void {
  const x = Math.round(xOf(scale, nowMin)) + 0.5;
  if (x < 0 || x > widthPx) return;
  context.strokeStyle = colours.alarm;
  context.fillStyle = colours.alarm;
  context.lineWidth = 1.5;
  context.beginPath();
  context.moveTo(x, 0);
  context.lineTo(x, heightPx);
  context.stroke();
  drawShape(context, [x - 5, 0, x + 5, 0, x, 7]);
  context.fill();
}

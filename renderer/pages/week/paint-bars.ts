import type { PlannedBuild } from "../../../core/plan/plan-document.ts";
import { shortText } from "../../../core/report/plain-text.ts";
import { barLabel } from "./bar-label.ts";
import { firstEndingAfter } from "./hit-test.ts";
import { fillSpan, type Painting } from "./paint-parts.ts";
import { rowsInSight, topOf } from "./row-places.ts";
import { minuteAt, xOf } from "./time-scale.ts";
import type { WeekBuild } from "./week-picture.ts";

/** Parts of a row, as shares of its height: marks of due dates above, then the bar, its foot with the family's hatch. */
const BAR_TOP = 0.22;
const BAR_HEIGHT = 0.7;
const FOOT = 0.26;
/** Narrower bars are drawn as one piece, and those up to the second width without hatches and edges, px. */
const PIECE_PX = 5;
const DETAIL_PX = 14;
const LABEL_PX = 26;

/** Where the bar of a row lies, px. Example: a row of 50 px at 100: bar from 111 on, 35 px high. */
export function barBox(
  painting: Painting,
  row: number,
): { readonly topPx: number; readonly heightPx: number } {
  const { rows } = painting;
  return {
    topPx: Math.round(topOf(rows, row) + BAR_TOP * rows.heightPx),
    heightPx: Math.round(BAR_HEIGHT * rows.heightPx),
  };
}

/** All bars in sight, then the names on them. */
export function paintBars(painting: Painting): void {
  const { picture, rows, heightPx, scale, widthPx, context } = painting;
  const { first, end } = rowsInSight(rows, heightPx);
  const [fromMin, toMin] = [minuteAt(scale, -4), minuteAt(scale, widthPx + 4)];
  const named: WeekBuild[] = [];
  for (let row = first; row < end; row++) {
    const builds = picture.rows[row]?.builds ?? [];
    for (let at = firstEndingAfter(builds, fromMin); at < builds.length; at++) {
      const entry = builds[at];
      if (!entry || entry.setUpMin > toMin) break;
      const lengthPx = (entry.endMin - entry.setUpMin) * scale.pxPerMin;
      if (lengthPx >= DETAIL_PX) paintBar(painting, entry);
      else if (lengthPx >= PIECE_PX) paintSmall(painting, entry);
      else paintSliver(painting, entry);
      if ((entry.doneMin - entry.printMin) * scale.pxPerMin >= LABEL_PX) named.push(entry);
    }
  }
  context.textBaseline = "middle";
  context.textAlign = "left";
  for (const entry of named) paintName(painting, entry);
}

/** A bar too narrow for pieces: the family's colour alone, an alarm's where it is late. */
function paintSliver(painting: Painting, entry: WeekBuild): void {
  const { scale, colours } = painting;
  const { topPx, heightPx } = barBox(painting, entry.row);
  const leftPx = xOf(scale, entry.setUpMin);
  const rightPx = Math.max(leftPx + 1, xOf(scale, entry.endMin) - 0.5);
  fillSpan(painting, entry.mark.colour, { leftPx, rightPx, topPx, heightPx });
  if (entry.lateMin > 0)
    fillSpan(painting, colours.alarm, { leftPx, rightPx, topPx, heightPx: heightPx / 4 });
}

/** A small bar: its print with the family's colour at the foot, its end, a corner where it is late. */
function paintSmall(painting: Painting, entry: WeekBuild): void {
  const { scale, colours } = painting;
  const { topPx, heightPx } = barBox(painting, entry.row);
  const [leftPx, rightPx] = [xOf(scale, entry.setUpMin), xOf(scale, entry.endMin)];
  const footPx = Math.round(FOOT * heightPx);
  const isMarked = entry.build.state !== "planned";
  fillSpan(painting, isMarked ? colours.quiet : colours.barPrint, { leftPx, rightPx, topPx, heightPx });
  const foot = { leftPx, rightPx, topPx: topPx + heightPx - footPx, heightPx: footPx };
  fillSpan(painting, entry.mark.colour, foot);
  fillSpan(painting, colours.barEdge, { leftPx: rightPx - 1, rightPx, topPx, heightPx });
  if (entry.lateMin > 0) paintLateCorner(painting, rightPx, topPx, heightPx);
}

function paintBar(painting: Painting, entry: WeekBuild): void {
  const { scale, colours, hatches, context, widthPx } = painting;
  const { topPx, heightPx } = barBox(painting, entry.row);
  const footPx = Math.max(5, Math.round(FOOT * heightPx));
  const piece = (fromMin: number, toMin: number, fill: string | CanvasPattern): void => {
    fillSpan(painting, fill, { leftPx: xOf(scale, fromMin), rightPx: xOf(scale, toMin), topPx, heightPx });
  };
  piece(entry.setUpMin, entry.changedMin, hatches.change);
  piece(entry.changedMin, entry.printMin, colours.edge);
  piece(entry.printMin, entry.doneMin, colours.barPrint);
  piece(entry.doneMin, entry.unloadMin, colours.barWait);
  piece(entry.unloadMin, entry.endMin, colours.edge);
  fillSpan(painting, hatches.family(entry.mark), {
    leftPx: xOf(scale, entry.printMin),
    rightPx: xOf(scale, entry.doneMin),
    topPx: topPx + heightPx - footPx,
    heightPx: footPx,
  });
  const left = Math.max(-3, xOf(scale, entry.setUpMin));
  const right = Math.min(widthPx + 3, xOf(scale, entry.endMin));
  context.strokeStyle = colours.barEdge;
  context.lineWidth = entry.build.state === "planned" ? 1 : 2;
  if (entry.isMoved) context.setLineDash([5, 3]);
  context.strokeRect(left + 0.5, topPx + 0.5, Math.max(1, right - left - 1), heightPx - 1);
  if (entry.isMoved) context.setLineDash([]);
  if (entry.lateMin > 0) paintLateCorner(painting, right, topPx, heightPx);
  if (entry.isPinned) paintPin(painting, left, topPx);
}

/** A notch cut into the end of a late build, and filled: it is seen without its colour. */
function paintLateCorner(
  { context, colours }: Painting,
  right: number,
  topPx: number,
  heightPx: number,
): void {
  const size = Math.min(11, heightPx / 2.5);
  context.fillStyle = colours.alarm;
  context.beginPath();
  context.moveTo(right - size, topPx);
  context.lineTo(right, topPx);
  context.lineTo(right, topPx + size * 1.6);
  context.closePath();
  context.fill();
}

/** A round head on a short leg at the bar's upper left corner: an order of it is pinned. */
function paintPin({ context, colours, sizeFactor }: Painting, left: number, topPx: number): void {
  const radius = 3.5 * sizeFactor;
  const x = Math.max(left, 0) + radius + 1;
  context.fillStyle = colours.ink;
  context.strokeStyle = colours.surface;
  context.lineWidth = 1;
  context.beginPath();
  context.arc(x, topPx - radius * 0.4, radius, 0, Math.PI * 2);
  context.fill();
  context.stroke();
  context.fillRect(x - 0.75, topPx + radius * 0.6, 1.5, radius * 1.6);
}

/** Orders above, letter of the family and the feedstock below, as far as they fit the print. */
function paintName(painting: Painting, entry: WeekBuild): void {
  const { scale, colours, context, widthPx, sizeFactor, font } = painting;
  const { topPx, heightPx } = barBox(painting, entry.row);
  const left = Math.max(0, xOf(scale, entry.printMin));
  const right = Math.min(widthPx, xOf(scale, entry.doneMin)) - (entry.lateMin > 0 ? 8 : 0);
  const charPx = 6.6 * sizeFactor;
  const chars = Math.floor((right - left - 6) / charPx);
  if (chars < 1) return;
  context.fillStyle = colours.ink;
  context.font = `600 ${11.5 * sizeFactor}px ${font}`;
  const label = keptLabel(entry.build, chars);
  const bodyPx = heightPx * (1 - FOOT);
  const room = bodyPx > 23 * sizeFactor;
  context.fillText(label, left + 4, topPx + (room ? bodyPx * 0.3 : bodyPx * 0.52));
  if (!room) return;
  context.font = `${10.5 * sizeFactor}px ${font}`;
  const below =
    chars > 5 ? `${entry.mark.letter}  ${shortText(entry.build.id, chars - 3)}` : entry.mark.letter;
  context.fillText(below, left + 4, topPx + bodyPx * 0.76);
}

/** The last label of each build: a picture that is pushed about asks for the same ones in every frame. */
const labels = new WeakMap<PlannedBuild, { readonly chars: number; readonly label: string }>();

function keptLabel(build: PlannedBuild, chars: number): string {
  const known = labels.get(build);
  if (known?.chars === chars) return known.label;
  const label = barLabel(build, chars);
  labels.set(build, { chars, label });
  return label;
}

import type { PlannedBuild } from "../plan/plan-document.ts";
import type { Stretch } from "../plan/plan-problem.ts";
import type { Machine } from "../shop/machine.ts";
import { type Html, html, nothing } from "./html-escape.ts";
import { shortText } from "./plain-text.ts";
import { percent, type SheetContext } from "./sheet-parts.ts";
import { position } from "./timeline-marks.ts";
import { itemsText } from "./week-facts.ts";

/** Height of a bar and of the hatched band at its foot, and the bar's top in its row, px. */
const BAR = { top: 10, height: 35, band: 8 } as const;

/** Narrowest width at which a week is drawn, px: labels that fit there fit everywhere. */
const NARROWEST_PX = 1030;
const CHARACTER_PX = 6.2;
const PADDING_PX = 5;
/** Less of a name than this tells nothing. */
const FEWEST_CHARS = 6;

/** One build drawn to scale: changeover, set-up, print, waiting for somebody to take it off, unload. */
export function buildBar(
  build: PlannedBuild,
  machine: Machine | null,
  week: Stretch,
  context: SheetContext,
): Html {
  const { display, markOf } = context;
  const setUpMin = display.minute(build.setUpStart);
  const printMin = display.minute(build.printStart);
  const doneMin = display.minute(build.printEnd);
  const endMin = display.minute(build.unloadEnd);
  const unloadMin = Math.max(doneMin, endMin - (machine?.unloadMin ?? 0));
  const pieces = [
    piece(setUpMin, setUpMin + build.changeoverMin, "change", week),
    piece(setUpMin + build.changeoverMin, printMin, "set-up", week),
    piece(printMin, doneMin, "print", week),
    band(printMin, doneMin, markOf(build.feedstockId).patternId, week),
    piece(doneMin, unloadMin, "waiting", week),
    piece(unloadMin, endMin, "unload", week),
    piece(setUpMin, endMin, `whole ${build.state}${isLate(build, context) ? " is-late" : ""}`, week),
    label(build, { startMin: printMin, endMin: doneMin }, week, context),
  ];
  return html`<g class="build"><title>${describe(build, context)}</title>${pieces}</g>`;
}

function isLate(build: PlannedBuild, { outcomeOf }: SheetContext): boolean {
  return build.items.some((item) => (outcomeOf(item.orderId)?.lateMin ?? 0) > 0);
}

function piece(fromMin: number, toMin: number, look: string, week: Stretch): Html {
  const from = Math.max(0, position(fromMin, week));
  const to = Math.min(100, position(toMin, week));
  if (to <= from) return nothing;
  return html`<rect class="${look}" x="${percent(from)}" y="${BAR.top}" width="${percent(to - from)}" height="${BAR.height}"/>`;
}

function band(fromMin: number, toMin: number, patternId: string, week: Stretch): Html {
  const from = Math.max(0, position(fromMin, week));
  const to = Math.min(100, position(toMin, week));
  if (to <= from) return nothing;
  return html`<rect class="band" x="${percent(from)}" y="${BAR.top + BAR.height - BAR.band}" width="${percent(to - from)}" height="${BAR.band}" fill="url(#${patternId})"/>`;
}

/** Orders above, letter of the family and part below, as much of them as fits the narrowest drawing. */
function label(build: PlannedBuild, print: Stretch, week: Stretch, { names, markOf }: SheetContext): Html {
  const from = Math.max(0, position(print.startMin, week));
  const width = Math.min(100, position(print.endMin, week)) - from;
  const chars = Math.floor(((width / 100) * NARROWEST_PX - PADDING_PX) / CHARACTER_PX);
  if (chars < 1) return nothing;
  const sign = STATE_SIGNS[build.state] ?? "";
  const orders = orderLabel(build, chars - sign.length);
  const part =
    build.items.length > 1 ? `${build.items.length} orders` : names.part(build.items[0]?.orderId ?? "");
  const partLabel = chars >= FEWEST_CHARS ? ` ${shortText(part, chars - 2)}` : "";
  return html`<svg x="${percent(from)}" y="${BAR.top}" width="${percent(width)}" height="${BAR.height}"><text x="3" y="11.5">${sign}${orders}</text><text class="sub" x="3" y="24"><tspan class="letter">${markOf(build.feedstockId).letter}</tspan>${partLabel}</text></svg>`;
}

/** Signs of builds that are not for the plan to move. */
const STATE_SIGNS: Readonly<Partial<Record<PlannedBuild["state"], string>>> = {
  committed: "● ",
  running: "▶ ",
};

function orderLabel(build: PlannedBuild, chars: number): string {
  const first = build.items[0]?.orderId ?? "";
  const others = build.items.length > 1 ? ` +${build.items.length - 1}` : "";
  const fitting = [itemsText(build), first + others].find((text) => [...text].length <= chars);
  if (fitting !== undefined) return fitting;
  return chars >= FEWEST_CHARS ? shortText(first, chars) : "";
}

function describe(build: PlannedBuild, { display, names }: SheetContext): string {
  const when = (instant: string) => display.dateTime(display.minute(instant));
  return [
    `${build.id} (${build.state}): ${itemsText(build)}`,
    shortText(names.feedstock(build.feedstockId), 60),
    `set-up ${when(build.setUpStart)}, print ${when(build.printStart)} to ${when(build.printEnd)}, off by ${when(build.unloadEnd)}`,
  ].join("; ");
}

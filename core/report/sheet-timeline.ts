import { workingTime } from "../plan/time/working-time.ts";
import type { PlannedBuild } from "../plan/plan-document.ts";
import type { Stretch, WorkingTime } from "../plan/plan-problem.ts";
import type { Machine } from "../shop/machine.ts";
import { minuteOf } from "../shop/instants.ts";
import { MIN_PER_DAY, MIN_PER_H } from "../units/conversions.ts";
import { countText } from "./display.ts";
import { type Html, html, nothing } from "./html-escape.ts";
import { dayAndMonth, type LocalDay, localDays, weekdayName } from "../shop/local-time.ts";
import { idText, nameText, percent, scrolling, section, type SheetContext } from "./sheet-parts.ts";
import { legend } from "./timeline-legend.ts";
import { buildBar } from "./timeline-bars.ts";
import { orderMarks, position } from "./timeline-marks.ts";
import { buildsByMachine } from "./week-facts.ts";

const ROW_HEIGHT_PX = 50;
const DAYS_PER_WEEK = 7;
/** Fewer days than this at the end do not get a picture of their own, but go with the week before. */
const FEWEST_DAYS = 3;

interface TimelineWeek extends Stretch {
  readonly days: readonly LocalDay[];
}

/** The week by machine: one table per seven days, a row per machine, time to scale in local days of 23, 24 or 25 hours. */
export function timelineSection(context: SheetContext): Html {
  const tables = weeksOf(context).map((week) => weekTable(week, context));
  return section(
    "week",
    "The week by machine",
    "Every build from set-up to unload, to scale. The light background is staffed time.",
    html`${legend(context)}${tables}`,
  );
}

function weeksOf({ plan, display }: SheetContext): TimelineWeek[] {
  const fromMin = display.minute(plan.plannedFrom);
  const lastMin = Math.max(...plan.builds.map((build) => display.minute(build.unloadEnd)), fromMin);
  const toLast = Math.ceil((lastMin - fromMin) / MIN_PER_DAY) + 1;
  const horizon = localDays(fromMin, Math.max(plan.horizonDays, toLast), plan.timeZone);
  const days = horizon.filter((day, index) => index < plan.horizonDays || day.startMin < lastMin);
  const weeks = Math.max(1, Math.floor((days.length + DAYS_PER_WEEK - FEWEST_DAYS) / DAYS_PER_WEEK));
  return Array.from({ length: weeks }, (_, index) => {
    const first = index * DAYS_PER_WEEK;
    const week = days.slice(first, index === weeks - 1 ? days.length : first + DAYS_PER_WEEK);
    return { days: week, startMin: week[0]?.startMin ?? 0, endMin: week.at(-1)?.endMin ?? 0 };
  });
}

function weekTable(week: TimelineWeek, context: SheetContext): Html {
  const { shop, plan, display } = context;
  const first = display.day(week.days[0]?.date ?? "");
  const calendars = new Map(
    shop.calendars.map((calendar) => [
      calendar.id,
      workingTime(calendar, plan.timeZone, week.startMin, week.endMin),
    ]),
  );
  const rows = buildsByMachine(shop, plan).map(({ machineId, machine, builds }) => {
    const here = builds.filter((build) => overlaps(build, week, context));
    const working = machine ? calendars.get(machine.calendarId) : undefined;
    return html`<tr><th scope="row">${idText(machineId)} <span class="used">${usedText(here, week, context)}</span>${nameText(context.names.machine(machineId))}</th><td>${rowPicture(here, machine, working ?? null, week, context)}</td></tr>
`;
  });
  const table = html`<table class="timeline">
<caption>${countText(week.days.length, "day")} from ${first}. The builds are listed in words below.</caption>
<thead><tr><th scope="col">Machine</th><td>${dayHeads(week, context)}</td></tr></thead>
<tbody>${rows}</tbody></table>`;
  return html`${scrolling(`Timeline from ${first}`, table)}
`;
}

function overlaps(build: PlannedBuild, week: Stretch, { display }: SheetContext): boolean {
  return display.minute(build.setUpStart) < week.endMin && display.minute(build.unloadEnd) > week.startMin;
}

function usedText(builds: readonly PlannedBuild[], week: Stretch, { display }: SheetContext): string {
  if (builds.length === 0) return "free";
  const minutes = builds.reduce((sum, build) => {
    const from = Math.max(week.startMin, display.minute(build.setUpStart));
    return sum + Math.min(week.endMin, display.minute(build.unloadEnd)) - from;
  }, 0);
  return `${countText(builds.length, "build")}, ${countText(Math.round(minutes / MIN_PER_H), "h", "h")}`;
}

function dayHeads(week: TimelineWeek, { plan }: SheetContext): Html {
  const heads = week.days.map((day) => {
    const hours = (day.endMin - day.startMin) / MIN_PER_H;
    const change = hours === 24 ? "" : ` (${hours} h)`;
    const ticks = [6, 12, 18].map((hour) => {
      const at = minuteOf(`${day.date}T${String(hour).padStart(2, "0")}:00`, plan.timeZone);
      return html`<text class="tick-hour" x="${percent(position(at, week))}" y="33">${hour}</text>`;
    });
    const x = percent(position(day.startMin, week));
    const short = dayAndMonth(day.date).replace(/^(\d+ .{3}).*$/, "$1");
    return html`<line class="day-line" x1="${x}" x2="${x}" y1="2" y2="38"/><text class="day-name" x="${x}" dx="6" y="15">${weekdayName(day.date).slice(0, 3)} ${short}${change}</text>${ticks}`;
  });
  const names = week.days.map((day) => `${weekdayName(day.date)} ${dayAndMonth(day.date)}`).join(", ");
  return html`<svg class="heads" width="100%" height="38" role="img" aria-label="${names}">${heads}</svg>`;
}

function rowPicture(
  builds: readonly PlannedBuild[],
  machine: Machine | null,
  working: WorkingTime | null,
  week: TimelineWeek,
  context: SheetContext,
): Html {
  const staffed = working?.operators.filter((stretch) => stretch.operators > 0) ?? [];
  const out = (machine?.outOfService ?? []).map(({ from, to }) => ({
    startMin: context.display.minute(from),
    endMin: context.display.minute(to),
  }));
  return html`<svg class="row" width="100%" height="${ROW_HEIGHT_PX}" role="img" aria-label="${countText(builds.length, "build")}, listed below"><rect class="unstaffed" width="100%" height="100%"/>${shades(staffed, "staffed", week)}${shades(working?.closures ?? [], "shut", week)}${shades(out, "service", week)}${dayLines(week)}${builds.map((build) => buildBar(build, machine, week, context))}${orderMarks(builds, week, context)}</svg>`;
}

function shades(stretches: readonly Stretch[], look: string, week: Stretch): Html[] {
  return stretches.map((stretch) => {
    const from = Math.max(0, position(stretch.startMin, week));
    const to = Math.min(100, position(stretch.endMin, week));
    if (to <= from) return nothing;
    return html`<rect class="${look}" x="${percent(from)}" width="${percent(to - from)}" height="100%"/>`;
  });
}

function dayLines(week: TimelineWeek): Html[] {
  return week.days.map((day) => {
    const x = percent(position(day.startMin, week));
    return html`<line class="day-line" x1="${x}" x2="${x}" y1="0" y2="100%"/>`;
  });
}

import type { PlanDocument, PlannedBuild } from "../plan/plan-document.ts";
import type { Shop } from "../shop/shop.ts";
import { instantOf, minuteOf } from "../shop/instants.ts";
import { type Display, displayOf } from "./display.ts";
import { type Names, namesOf } from "./names.ts";
import { uuidOfNames } from "./name-uuid.ts";
import { utf8Size, visibleText } from "./plain-text.ts";
import { itemsText } from "./week-facts.ts";

/**
 * The builds of a plan as a calendar by RFC 5545 (Desruisseaux 2009), one event each from set-up to unload. Times are in
 * UTC form. A build keeps its UID from plan to plan of a week, and what is written later has a higher SEQUENCE: DTSTAMP and
 * SEQUENCE are the minute of writing (the start of the plan, unless given), so a calendar that reads both moves the event. Planned builds are tentative, committed ones confirmed.
 * A plan with no builds gives no valid calendar: RFC 5545 asks for at least one component.
 */
export function weekCalendar(
  shop: Shop,
  plan: PlanDocument,
  writtenMin = minuteOf(plan.plannedFrom, plan.timeZone),
): string {
  const names = namesOf(shop);
  const display = displayOf(shop, plan.plannedFrom);
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Hopper & Spool//Week of builds//EN",
    "CALSCALE:GREGORIAN",
    `NAME:${escaped(plan.shopName)}`,
    ...plan.builds.flatMap((build) => eventLines(build, { plan, names, display, writtenMin })),
    "END:VCALENDAR",
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join("");
}

interface EventContext {
  readonly plan: PlanDocument;
  readonly names: Names;
  readonly display: Display;
  /** epoch minute */
  readonly writtenMin: number;
}

function eventLines(build: PlannedBuild, context: EventContext): string[] {
  const { plan, names, writtenMin } = context;
  const utc = (instant: string) => utcForm(minuteOf(instant, plan.timeZone));
  const grade = names.grade(build.feedstockId);
  const categories = ["build", ...(grade ? [grade.form, grade.family] : [])].map(escaped).join(",");
  return [
    "BEGIN:VEVENT",
    `UID:${uuidOfNames([plan.shopName, build.id])}`,
    `DTSTAMP:${utcForm(writtenMin)}`,
    `SEQUENCE:${writtenMin}`,
    `DTSTART:${utc(build.setUpStart)}`,
    `DTEND:${utc(build.unloadEnd)}`,
    `SUMMARY:${escaped(`${build.id}: ${itemsText(build)}`)}`,
    `LOCATION:${escaped(names.machine(build.machineId))}`,
    `DESCRIPTION:${descriptionOf(build, context)}`,
    `CATEGORIES:${categories}`,
    `STATUS:${STATUS[build.state]}`,
    "TRANSP:OPAQUE",
    "END:VEVENT",
  ];
}

const STATUS: Readonly<Record<PlannedBuild["state"], string>> = {
  planned: "TENTATIVE",
  committed: "CONFIRMED",
  running: "CONFIRMED",
  done: "CONFIRMED",
  failed: "CANCELLED",
};

function descriptionOf(build: PlannedBuild, { names, display }: EventContext): string {
  const when = (instant: string) => display.dateTime(display.minute(instant));
  const lines = [
    ...build.items.map((item) => `${item.orderId}: ${item.copies} × ${names.part(item.orderId)}`),
    `Feedstock: ${names.feedstock(build.feedstockId)}, ${display.mass(build.massKg)}`,
    `Set-up from ${when(build.setUpStart)}`,
    `Print ${when(build.printStart)} to ${when(build.printEnd)}`,
    `Off the machine by ${when(build.unloadEnd)}`,
  ];
  return lines.map(escaped).join("\\n");
}

/** "20261130T050000Z" */
function utcForm(epochMin: number): string {
  const utc = instantOf(epochMin, "UTC");
  return `${utc.slice(0, 16).replace(/[-:]/g, "")}00Z`;
}

/** TEXT by RFC 5545, section 3.3.11: backslash first, then semicolon and comma; the colon stays. */
function escaped(text: string): string {
  return visibleText(text).replace(/[\\;,]/g, (char) => `\\${char}`);
}

/**
 * One content line in lines of at most 75 octets (RFC 5545, section 3.1): the next line starts with a space, which counts,
 * and no character is cut in two.
 */
function folded(line: string): string {
  const parts: string[] = [];
  let part = "";
  let octets = 0;
  for (const char of line) {
    const size = utf8Size(char.codePointAt(0) ?? 0);
    if (octets + size > MOST_OCTETS) {
      parts.push(part);
      part = " ";
      octets = 1;
    }
    part += char;
    octets += size;
  }
  return [...parts, part].join("\r\n");
}

const MOST_OCTETS = 75;

import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import { weekCalendar } from "../../../core/report/icalendar.ts";
import { minuteOf } from "../../../core/shop/instants.ts";
import { aPlan } from "../../fixtures/a-plan.ts";
import { aWorks } from "../../fixtures/a-works.ts";
import { hostileWorks } from "../../fixtures/hostile-names.ts";

const shop = aWorks();
const plan = aPlan(shop);
const text = weekCalendar(shop, plan);

/** Events as an independent reader sees them. */
function eventsOf(calendar: string) {
  return new ICAL.Component(ICAL.parse(calendar))
    .getAllSubcomponents("vevent")
    .map((component) => new ICAL.Event(component));
}

describe("the calendar of a plan, by RFC 5545 (Desruisseaux 2009)", () => {
  it("has one event for each build, from set-up to unload in UTC", () => {
    const events = eventsOf(text);
    expect(events.length).toBe(plan.builds.length);
    for (const [index, event] of events.entries()) {
      const build = plan.builds[index];
      if (!build) throw new Error("more events than builds");
      expect(event.startDate.toUnixTime() / 60).toBe(minuteOf(build.setUpStart, plan.timeZone));
      expect(event.endDate.toUnixTime() / 60).toBe(minuteOf(build.unloadEnd, plan.timeZone));
      expect(event.startDate.zone.tzid).toBe("UTC");
    }
  });

  it("says machine, state and what is made", () => {
    const [first] = eventsOf(text);
    expect(first?.location).toBe("Bench 1");
    expect(first?.summary).toBe("B-001: O-102 × 6");
    expect(first?.component.getFirstPropertyValue("status")).toBe("CONFIRMED");
    expect(first?.component.getFirstPropertyValue("transp")).toBe("OPAQUE");
    expect(first?.component.getFirstProperty("categories")?.getValues()).toEqual([
      "build",
      "filament",
      "PETG",
    ]);
    expect(first?.description.split("\n").length).toBe(5);
  });

  it("holds planned builds as tentative and committed or running ones as confirmed", () => {
    const states = eventsOf(text).map((event) => event.component.getFirstPropertyValue("status"));
    const expected = plan.builds.map((build) => (build.state === "planned" ? "TENTATIVE" : "CONFIRMED"));
    expect(states).toEqual(expected);
    expect(new Set(states).size).toBe(2);
  });

  it("keeps a build's UID when its time changes, and gives the later plan the higher sequence", () => {
    const moved = {
      ...plan,
      plannedFrom: "2026-11-30T12:00:00+01:00",
      builds: plan.builds.map((build) => ({ ...build, unloadEnd: "2026-12-06T12:00:00+01:00" })),
    };
    const before = eventsOf(text);
    const after = eventsOf(weekCalendar(shop, moved));
    expect(after.map((event) => event.uid)).toEqual(before.map((event) => event.uid));
    expect(new Set(after.map((event) => event.uid)).size).toBe(plan.builds.length);
    expect(after[0]?.sequence).toBeGreaterThan(before[0]?.sequence ?? 0);
  });

  it("stamps and numbers events with the minute of writing where one is given, so that writing again moves them", () => {
    const writtenMin = minuteOf("2026-11-28T15:07Z", "UTC");
    const later = weekCalendar(shop, plan, writtenMin);
    expect(later).toContain("DTSTAMP:20261128T150700Z");
    expect(eventsOf(later)[0]?.sequence).toBe(writtenMin);
  });

  it("stamps events with the start of the plan otherwise, so that the same plan gives the same file", () => {
    expect(text).toContain("DTSTAMP:20261130T050000Z");
    expect(weekCalendar(aWorks(), aPlan())).toBe(text);
  });
});

describe("content lines", () => {
  const hostile = weekCalendar(hostileWorks(), aPlan(hostileWorks()));

  it.each([
    ["plain", text],
    ["hostile", hostile],
  ])("of %s names end in CRLF and take at most 75 octets, none cut inside a character", (_, calendar) => {
    expect(calendar.endsWith("END:VCALENDAR\r\n")).toBe(true);
    const lines = calendar.split("\r\n");
    for (const line of lines) {
      expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      expect(line).not.toMatch(/[\p{Cc}\p{Cs}]/u);
    }
    expect(lines.some((line) => Buffer.byteLength(line) >= 72)).toBe(true);
  });

  it("cannot be broken out of by a name", () => {
    const works = hostileWorks();
    const events = eventsOf(hostile);
    expect(events.length).toBe(plan.builds.length);
    const machine = works.machines.find((entry) => entry.name.includes("BEGIN:VEVENT"));
    const index = plan.builds.findIndex((build) => build.machineId === machine?.id);
    expect(events[index]?.location).toBe("semi;colon, comma \\ backslash BEGIN:VEVENT");
  });
});

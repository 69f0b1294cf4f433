import { describe, expect, test } from "vitest";
import { insertLines } from "../../../core/quote/insert-order.ts";
import { overtimesOf } from "../../../core/quote/overtime.ts";
import { rushOptions } from "../../../core/quote/rush.ts";
import type { Calendar } from "../../../core/shop/calendar.ts";
import { makeShop } from "../../bench/make-shop.ts";
import { aLine, aQuoteDesk } from "../../fixtures/a-quote-desk.ts";

const made = makeShop("S", { seed: 1 });
const desk = await aQuoteDesk(made);
const [part] = made.shop.parts;
const day = (days: number): number => desk.request.fromMin + days * 1440;

describe("what would hold a date", () => {
  const { lines } = insertLines(desk, [aLine(desk, part!.id, 12, 0.01)], { withoutDocument: true });
  const soonestDay = (lines[0]!.finishedAtMin! - desk.request.fromMin) / 1440;

  test("a date that is in reach is held by pushing others back, never for less than without a date", () => {
    const found = rushOptions(desk, aLine(desk, part!.id, 12, soonestDay));
    const pushed = found.find(({ kind }) => kind === "push-others");
    expect(pushed?.copiesInTime).toBe(12);
    for (const { price, dearerBy, finishMin } of found) {
      expect(price!.total).toBeGreaterThan(0);
      expect(dearerBy).toBeGreaterThanOrEqual(-0.005);
      expect(finishMin).toBeLessThanOrEqual(desk.request.fromMin + soonestDay * 1440);
    }
  });

  test("a date out of reach by an hour is not held by pushing others back; a part of the copies is", () => {
    const found = rushOptions(desk, aLine(desk, part!.id, 12, soonestDay - 1 / 24));
    expect(found.filter(({ kind }) => kind === "push-others")).toEqual([]);
    const split = found.find(({ kind }) => kind === "split");
    if (split) {
      expect(split.copiesInTime).toBeLessThan(12);
      expect(split.restMin).toBeGreaterThan(desk.request.fromMin);
    }
    expect(found.length).toBeGreaterThan(0);
  });

  test.each([
    ["P-7", 6],
    ["P-8", 30],
  ])(
    "two lots of %s whose second is ready first are told as all copies by then, never as the others later",
    (partId, quantity) => {
      const line = aLine(desk, partId, quantity, 0.01);
      const [whole] = insertLines(desk, [line], { withoutDocument: true }).lines;
      const wantedMin = whole!.finishedAtMin! - 60;
      const split = rushOptions(desk, { ...line, wantedMin }).find(({ kind }) => kind === "split")!;
      expect([split.copiesInTime, split.restMin]).toEqual([quantity, null]);
      expect(split.finishMin).toBeLessThanOrEqual(wantedMin);
      expect(split.sentence).toContain("as two lots");
    },
  );

  test("the others of a divided delivery are never ready before the first ones", () => {
    let told = 0;
    for (const { id } of made.shop.parts.slice(0, 4)) {
      const line = aLine(desk, id, 12, 0.01);
      const [whole] = insertLines(desk, [line], { withoutDocument: true }).lines;
      for (const { kind, finishMin, restMin } of rushOptions(desk, {
        ...line,
        wantedMin: whole!.finishedAtMin! - 240,
      })) {
        if (kind !== "split" || restMin === null) continue;
        told++;
        expect(restMin, id).toBeGreaterThan(finishMin);
      }
    }
    expect(told).toBeGreaterThan(0);
  });

  test("a pin is taken off where that holds the date", () => {
    const machineId = made.shop.machines.find(({ process }) => process === "filament")!.id;
    const found = rushOptions(desk, { ...aLine(desk, part!.id, 12, soonestDay), machineId });
    expect(found.some(({ kind }) => kind === "any-machine")).toBe(true);
  });

  test("nothing is offered where no date is wanted, and nothing more once it is stopped", () => {
    expect(rushOptions(desk, aLine(desk, part!.id, 12, null))).toEqual([]);
    expect(rushOptions(desk, aLine(desk, part!.id, 12, soonestDay), () => true)).toEqual([]);
  });

  test("prints of more than the four staffed hours a day are held by overtime, with people's hours in the price", async () => {
    const days = { days: [1, 2, 3, 4, 5], start: "08:00", end: "12:00", operators: 1 };
    const calendars = made.shop.calendars.map((calendar) => ({ ...calendar, shifts: [days] }));
    const machines = made.shop.machines.map((machine) => ({
      ...machine,
      unattended: false,
      warmUpMin: 240,
    }));
    const short = await aQuoteDesk({ ...made, shop: { ...made.shop, calendars, machines, orders: [] } });
    const line = aLine(short, part!.id, 1, 15 / 24);
    expect(insertLines(short, [line], { withoutDocument: true }).isHeld).toBe(false);
    const [overtime] = rushOptions(short, line).filter(({ kind }) => kind === "overtime");
    expect(overtime?.finishMin).toBeLessThanOrEqual(line.wantedMin!);
    expect(overtime?.extraCost).toBeGreaterThan(3 * made.shop.costing.labourPerH);
  }, 30_000);
});

describe("overtime", () => {
  const calendar: Calendar = {
    id: "day",
    name: "Day",
    shifts: [{ days: [1, 2, 3, 4, 5], start: "06:00", end: "14:00", operators: 2 }],
    closures: [],
  };
  const of = (change: Partial<Calendar>) =>
    overtimesOf(made.shop, { ...calendar, ...change }, desk.request.fromMin);

  test("is three hours after the last shift, or Saturday where nobody works then", () => {
    expect(of({}).map(({ shift }) => [shift.days.join(), shift.start, shift.end])).toEqual([
      ["1,2,3,4,5", "14:00", "17:00"],
      ["6", "06:00", "14:00"],
    ]);
    expect(of({ shifts: [{ ...calendar.shifts[0]!, days: [6] }] })).toHaveLength(1);
  });

  test("has no room in a calendar that is staffed day and night, nor in one that nobody works by", () => {
    expect(
      of({ shifts: [{ days: [1, 2, 3, 4, 5, 6, 7], start: "00:00", end: "00:00", operators: 1 }] }),
    ).toEqual([]);
    expect(of({ shifts: [] })).toEqual([]);
  });

  test("counts whole shifts that begin before the date: Monday to Wednesday noon two of three hours, none on Monday noon", () => {
    const [longer] = of({});
    expect(longer!.hoursUntil(day(2.5))).toBe(6);
    expect(longer!.hoursUntil(day(0.5))).toBe(0);
    expect(longer!.hoursUntil(day(7))).toBe(15);
  });
});

import { describe, expect, test } from "vitest";
import { compileProblem } from "../../../../core/plan/compile/compile-problem.ts";
import { copiesBy, earliestFinish } from "../../../../core/plan/compile/earliest-finish.ts";
import { instantOf, minuteOf } from "../../../../core/shop/instants.ts";
import type { Machine } from "../../../../core/shop/machine.ts";
import type { Order } from "../../../../core/shop/order.ts";
import { aCalendar, aFeedstock, aMachine, anOrder, aShop } from "../../../fixtures/a-route.ts";

/** Set-up 10 min, run 149 min for 10 copies (33 for one), unload 5 min; PLA is loaded. Staffed 06:00 to 14:00. */
const LOADED = { feedstockId: "pla-white", nozzleId: "n04" };

describe("one build", () => {
  test("set-up, run and unload in a row from the start of the shift", () => {
    expect(finish()).toBe("2026-11-30T08:44");
  });

  test("after its release", () => {
    expect(finish({ order: { releaseAt: "2026-11-30T09:00:00+01:00" } })).toBe("2026-11-30T11:44");
  });

  test("a changeover first where something else is loaded", () => {
    expect(finish({ machine: { loaded: { feedstockId: "petg-grey", nozzleId: "n04" } } })).toBe(
      "2026-11-30T09:04",
    );
  });

  test("off by the end of the shift, next morning, or in two halves where one build no longer ends by 14:00", () => {
    expect(finish({ order: { releaseAt: "2026-11-30T11:16:00+01:00" } })).toBe("2026-11-30T14:00");
    expect(finish({ order: { releaseAt: "2026-11-30T11:21:00+01:00" } })).toBe("2026-12-01T06:05");
    expect(finish({ order: { releaseAt: "2026-11-30T11:22:00+01:00" } })).toBe("2026-12-01T07:38");
  });

  test("printing goes on after the shift where that is approved; somebody takes it off in the morning", () => {
    const machine = { unattended: true };
    expect(finish({ machine, order: { releaseAt: "2026-11-30T11:22:00+01:00" } })).toBe("2026-12-01T06:05");
  });

  test("clear of times out of service, also while the part waits", () => {
    const outOfService = [{ from: "2026-11-30T20:00", to: "2026-11-30T21:00", reason: "service" }];
    const order = { releaseAt: "2026-11-30T12:00:00+01:00" };
    expect(finish({ machine: { unattended: true, outOfService }, order })).toBe("2026-12-01T07:38");
  });

  test("never while a shift has no operator", () => {
    const shifts = [
      { days: [1, 2, 3, 4, 5], start: "06:00", end: "08:00", operators: 0 },
      { days: [1, 2, 3, 4, 5], start: "08:00", end: "14:00", operators: 1 },
    ];
    expect(finish({ calendar: aCalendar({ shifts }) })).toBe("2026-11-30T10:44");
  });
});

describe("several builds", () => {
  test("one after another on one machine", () => {
    const single = { envelopeMm: { x: 55, y: 45, z: 250 } };
    expect(finish({ machine: single, order: { quantity: 3 } })).toBe("2026-11-30T08:24");
  });

  test("side by side on two machines", () => {
    expect(finish({ machines: 2, order: { quantity: 10 } })).toBe("2026-11-30T07:38");
  });
});

test("copies that can be done by a minute: none, some, all", () => {
  const { problem, line } = problemOf({});
  const by = (instant: string) => copiesBy(problem, line, minuteOf(instant, "Europe/Berlin"));
  expect(by("2026-11-30T06:47")).toBe(0);
  expect(by("2026-11-30T06:48")).toBe(1);
  expect(by("2026-11-30T08:43")).toBe(9);
  expect(by("2026-11-30T08:44")).toBe(10);
});

interface Case {
  readonly machine?: Partial<Machine>;
  readonly machines?: number;
  readonly order?: Partial<Order>;
  readonly calendar?: ReturnType<typeof aCalendar>;
}

function problemOf({ machine, machines = 1, order, calendar = aCalendar() }: Case) {
  const shop = aShop({
    calendars: [calendar],
    machines: Array.from({ length: machines }, (_, index) =>
      aMachine({ id: `F${index + 1}`, loaded: LOADED, ...machine }),
    ),
    feedstocks: [aFeedstock(), aFeedstock({ id: "petg-grey", family: "PETG", pricePerKg: null })],
    orders: [anOrder(order)],
  });
  const fromMin = minuteOf("2026-11-30T06:00", shop.timeZone);
  const { problem } = compileProblem(shop, { fromMin, days: 7 });
  const [line] = problem.lines;
  if (!line) throw new Error("no line");
  return { problem, line };
}

function finish(given: Case = {}): string | null {
  const { problem, line } = problemOf(given);
  const found = earliestFinish(problem, line, line.quantity);
  return found && instantOf(found.finishMin, "Europe/Berlin").slice(0, 16);
}

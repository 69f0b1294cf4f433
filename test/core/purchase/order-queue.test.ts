import { describe, expect, test } from "vitest";
import { OrderQueue, type PartOutcome } from "../../../core/purchase/order-queue.ts";
import type { WeekSlots } from "../../../core/purchase/week-slots.ts";
import { toyLine } from "./a-toy-works.ts";

/** Monday to Wednesday, and Thursday to Sunday. */
const SLOTS: WeekSlots = {
  endMin: Float64Array.of(3 * 1440, 7 * 1440),
  lengthDays: [3, 4],
  ofDay: [0, 0, 0, 1, 1, 1, 1],
};

function list(value: number | number[] | undefined): Float64Array {
  return Float64Array.from([value ?? [0, 0]].flat());
}

function outcome(changes: Partial<Record<keyof PartOutcome, number | number[]>>): PartOutcome {
  return {
    hardLost: list(changes.hardLost),
    givenUp: Number(changes.givenUp ?? 0),
    open: Number(changes.open ?? 0),
    late: list(changes.late),
  };
}

describe("open orders of one part", () => {
  test("lines with one due slot are pooled, and promises that must hold kept apart", () => {
    const queue = new OrderQueue(SLOTS, 1);
    const week = queue.open(0, [
      toyLine({ dueDay: 0, quantity: 2, lateCostPerDay: 6 }),
      toyLine({ dueDay: 2, quantity: 4, lateCostPerDay: 6 }),
      toyLine({ dueDay: 3, quantity: 3, allowLate: false }),
    ]);
    expect([...week.soft]).toEqual([6, 0]);
    expect([...week.hard]).toEqual([0, 3]);
    expect(week).toMatchObject({ overdue: 0, mayWait: 6, lateCostPerDay: 2, price: 100 });
  });

  test("what stays open is due in the first slot of the next week", () => {
    const queue = new OrderQueue(SLOTS, 1);
    queue.open(0, [toyLine({ dueDay: 6, quantity: 10 })]);
    const settled = queue.settle(0, outcome({ open: 4, late: [0, 4] }));
    expect(settled).toMatchObject({ revenue: 600, lostOrders: 0, lateOrders: 0.4 });
    const week = queue.open(1, [toyLine({ dueDay: 0, quantity: 1 })]);
    expect([...week.soft]).toEqual([5, 0]);
    expect(week).toMatchObject({ overdue: 4, mayWait: 1 });
  });

  test("older orders are served first, and the oldest given up", () => {
    const queue = new OrderQueue(SLOTS, 1);
    queue.open(0, [toyLine({ quantity: 5, pricePerPiece: 10 })]);
    queue.settle(0, outcome({ open: 5 }));
    queue.open(1, [toyLine({ quantity: 5, pricePerPiece: 20 })]);
    const settled = queue.settle(1, outcome({ givenUp: 2, open: 4 }));
    expect(settled).toMatchObject({ lostRevenue: 20, lostOrders: 0.4, revenue: 3 * 10 + 20 });
    expect(queue.copies).toBe(4);
  });

  test("lost promises are those due in their slot", () => {
    const queue = new OrderQueue(SLOTS, 5);
    queue.open(0, [toyLine({ dueDay: 0, quantity: 4, allowLate: false, pricePerPiece: null })]);
    const settled = queue.settle(0, outcome({ hardLost: [1, 0] }));
    expect(settled).toMatchObject({ lostOrders: 0.25, lostUnpricedCopies: 1, lostRevenue: 0, revenue: 0 });
    expect(queue.copies).toBe(0);
  });

  test("a part with prices for some copies values those", () => {
    const queue = new OrderQueue(SLOTS, 0);
    const week = queue.open(0, [
      toyLine({ quantity: 1, pricePerPiece: 40 }),
      toyLine({ quantity: 3, pricePerPiece: null }),
    ]);
    expect(week.price).toBe(40);
    expect(queue.settle(0, outcome({})).revenue).toBeCloseTo(40, 9);
  });

  test("nothing asked has no price and no late cost", () => {
    expect(new OrderQueue(SLOTS, 0).open(0, [])).toMatchObject({
      price: null,
      lateCostPerDay: 0,
      mayWait: 0,
    });
  });
});

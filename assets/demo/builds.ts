import type { Build } from "../../core/shop/build.ts";
import type { Order } from "../../core/shop/order.ts";

/** What is done, waits to be taken off, or is promised to a machine when the week is planned. */
export function makeBuilds(orders: readonly Order[]): Build[] {
  return [
    {
      id: "K-101",
      machineId: "B1",
      nozzleId: "0.4",
      feedstockId: "pla-f",
      layerHeightMm: 0.2,
      beadWidthMm: 0.5,
      orientation: "z",
      items: [{ orderId: lineOf(orders, "clip", 300), copies: 75 }],
      setUpStart: "2026-11-27T13:00:00+01:00",
      printStart: "2026-11-27T13:08:00+01:00",
      printEnd: "2026-11-27T17:57:00+01:00",
      unloadEnd: "2026-11-27T18:03:00+01:00",
      state: "done",
      actual: {
        printStart: "2026-11-27T13:10:00+01:00",
        printEnd: "2026-11-27T18:09:00+01:00",
        goodCopies: 72,
        failedCopies: 3,
        massKg: 0.31,
      },
    },
    {
      id: "K-102",
      machineId: "F1",
      nozzleId: "1.2",
      feedstockId: "pla-f",
      layerHeightMm: 0.5,
      beadWidthMm: 1.2,
      orientation: "z",
      items: [{ orderId: lineOf(orders, "display-form", 6), copies: 4 }],
      setUpStart: "2026-11-27T15:30:00+01:00",
      printStart: "2026-11-27T16:25:00+01:00",
      printEnd: "2026-11-28T03:25:00+01:00",
      unloadEnd: "2026-11-30T07:42:00+01:00",
      state: "running",
      actual: { printStart: "2026-11-27T16:25:00+01:00" },
    },
    {
      id: "K-103",
      machineId: "G1",
      nozzleId: "2",
      feedstockId: "petg-p",
      layerHeightMm: 1,
      beadWidthMm: 2.4,
      orientation: "z",
      items: [{ orderId: lineOf(orders, "signage-letter", 6), copies: 3 }],
      setUpStart: "2026-11-30T06:00:00+01:00",
      printStart: "2026-11-30T06:25:00+01:00",
      printEnd: "2026-11-30T09:26:00+01:00",
      unloadEnd: "2026-11-30T09:41:00+01:00",
      state: "committed",
    },
  ];
}

function lineOf(orders: readonly Order[], partId: string, quantity: number): string {
  const order = orders.find((one) => one.partId === partId && one.quantity === quantity);
  if (!order) throw new RangeError(`no order line of ${quantity} x ${partId}`);
  return order.id;
}

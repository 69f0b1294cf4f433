import { expect, test } from "vitest";
import type { DateEffect } from "../../../core/quote/dates/effect-on-others.ts";
import { otherOrders } from "../../../core/quote/other-orders.ts";

const effect = (orderId: string, laterMin: number, errorMin: number): DateEffect => ({
  orderId,
  laterMin,
  errorMin,
  wasByMin: 0,
  isByMin: 0,
  wasInTime: 1,
  isInTime: 1,
});
const told = (...effects: DateEffect[]): string[] => otherOrders(effects, []).map(({ orderId }) => orderId);

test("half an hour is not told, a minute more is, sooner as well as later", () => {
  expect(told(effect("at", 30, 1), effect("above", 31, 1), effect("sooner", -31, 1))).toEqual([
    "above",
    "sooner",
  ]);
});

test("two standard errors are not told, more is", () => {
  expect(told(effect("at", 80, 40), effect("above", 81, 40), effect("within", 60, 40))).toEqual(["above"]);
});

test("an order that the plan moves is told however little it is", () => {
  const moved = { orderId: "O-1", wasMin: 10, isMin: 20, extraLateCost: 1.5 };
  expect(otherOrders([effect("O-1", 0, 0)], [moved])[0]!.moved).toEqual({
    wasMin: 10,
    isMin: 20,
    extraLateCost: 1.5,
  });
});

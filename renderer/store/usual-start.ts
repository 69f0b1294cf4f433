import { instantOf, isInstant, localDayNumber, minuteOf, minuteOfLocal } from "../../core/shop/instants.ts";
import type { Shop } from "../../core/shop/shop.ts";
import { MIN_PER_H, MS_PER_MIN } from "../../core/units/conversions.ts";

/** Day 0, 1970-01-01, was a Thursday: four days later a week starts. */
const FIRST_MONDAY = 4;
const DAYS_PER_WEEK = 7;

/**
 * When a plan starts unless somebody says otherwise: at the next full hour; in the demo shop, whose week is invented, on the
 * first Monday after its first release. Example: a demo released from Friday 2026-11-27 on starts on 2026-11-30 at 00:00.
 */
export function usualStart(shop: Shop, isDemo: boolean, nowMs: number): string {
  const { timeZone, orders } = shop;
  const releases = orders.map((order) => order.releaseAt).filter(isInstant);
  if (!isDemo || releases.length === 0) {
    return instantOf(Math.ceil(nowMs / MS_PER_MIN / MIN_PER_H) * MIN_PER_H, timeZone);
  }
  const firstMin = releases.reduce((least, at) => Math.min(least, minuteOf(at, timeZone)), Infinity);
  const day = localDayNumber(firstMin, timeZone);
  const monday = Math.ceil((day - FIRST_MONDAY) / DAYS_PER_WEEK) * DAYS_PER_WEEK + FIRST_MONDAY;
  return instantOf(minuteOfLocal(monday, 0, timeZone), timeZone);
}

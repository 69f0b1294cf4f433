import { dayNumberOf, isDay, isTimeZone, localDayNumber } from "../shop/instants.ts";
import type { PurchaseCase } from "../shop/purchase-case.ts";
import type { DemandRow, DemandSource, TypedDemand } from "../shop/purchase-demand.ts";
import type { Shop } from "../shop/shop.ts";
import { minuteOrNull } from "../shop/shop-index.ts";
import { dayOfWeek, weekOfDay } from "../shop/week-number.ts";
import type { DemandLine, WeekDemand } from "./scenarios.ts";

/** A week of the past, its number counted as in iso-week.ts. */
export interface PastWeek extends WeekDemand {
  readonly week: number;
}

/** What is expected of one part: so many order lines a week in the mean. */
export interface ExpectedLine {
  readonly ordersPerWeek: number;
  /** as each order line is; its day is drawn */
  readonly line: Omit<DemandLine, "dueDay">;
}

/** What scenarios are drawn from: weeks that were, or what is expected in a mean week. */
export interface Demand {
  /** every week from the first to the last with an order, those without one too */
  readonly pastWeeks: readonly PastWeek[];
  readonly expected: readonly ExpectedLine[];
}

/**
 * The demand of a case: the shop's orders or rows of a file by the ISO week of their due date, or typed lines. An order without
 * an agreed price takes the assumed price of its part. What names no part of the shop is left out; `checkCase` says so.
 * Example: 3 orders due in weeks 10 and 12 give three past weeks, the middle one empty.
 */
export function demandOf(
  shop: Shop,
  purchaseCase: PurchaseCase,
  assumedPrices: ReadonlyMap<string, number>,
): Demand {
  const { demand } = purchaseCase;
  const priced = (line: Unpriced): Omit<DemandLine, "dueDay"> => ({
    partId: line.partId,
    quantity: line.quantity,
    lateCostPerDay: line.lateCostPerDay ?? shop.costing.defaultLateCostPerDay,
    pricePerPiece: line.pricePerPiece ?? assumedPrices.get(line.partId) ?? null,
    allowLate: line.allowLate ?? true,
  });
  const parts = new Set(shop.parts.map(({ id }) => id));
  if (demand.kind === "typed") {
    const known = demand.lines.filter(({ partId }) => parts.has(partId));
    const expected = known.map((line) => ({ ordersPerWeek: line.ordersPerWeek, line: priced(line) }));
    return { pastWeeks: [], expected };
  }
  const dated = (demand.kind === "rows" ? datedRows(demand.rows) : datedOrders(shop, demand)).filter(
    ({ line }) => parts.has(line.partId),
  );
  return { pastWeeks: byWeek(dated.map(({ day, line }) => ({ day, line: priced(line) }))), expected: [] };
}

type Unpriced = Pick<TypedDemand, "partId" | "quantity" | "lateCostPerDay" | "pricePerPiece" | "allowLate">;

interface Dated<Line> {
  readonly day: number;
  readonly line: Line;
}

function datedRows(rows: readonly DemandRow[]): Dated<Unpriced>[] {
  return rows.filter(({ dueOn }) => isDay(dueOn)).map((row) => ({ day: dayNumberOf(row.dueOn), line: row }));
}

function datedOrders(shop: Shop, { from, to }: DemandSource & { kind: "orders" }): Dated<Unpriced>[] {
  const fromDay = from !== undefined && isDay(from) ? dayNumberOf(from) : Number.NEGATIVE_INFINITY;
  const toDay = to !== undefined && isDay(to) ? dayNumberOf(to) : Number.POSITIVE_INFINITY;
  const timeZone = isTimeZone(shop.timeZone) ? shop.timeZone : "UTC";
  return shop.orders.flatMap((order) => {
    const dueMin = minuteOrNull(order.dueAt, timeZone);
    if (dueMin === null) return [];
    const day = localDayNumber(dueMin, timeZone);
    return day < fromDay || day > toDay ? [] : [{ day, line: order }];
  });
}

function byWeek(dated: readonly Dated<Omit<DemandLine, "dueDay">>[]): PastWeek[] {
  const lines = new Map<number, DemandLine[]>();
  for (const { day, line } of dated) {
    const week = weekOfDay(day);
    const known = lines.get(week) ?? [];
    if (known.length === 0) lines.set(week, known);
    known.push({ ...line, dueDay: dayOfWeek(day) });
  }
  const numbers = [...lines.keys()].toSorted((a, b) => a - b);
  const [first] = numbers;
  const last = numbers.at(-1);
  if (first === undefined || last === undefined) return [];
  return Array.from({ length: last - first + 1 }, (_, offset) => ({
    week: first + offset,
    lines: lines.get(first + offset) ?? [],
  }));
}

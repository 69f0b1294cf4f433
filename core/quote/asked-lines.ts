import { whereOf } from "../shop/finding.ts";
import { instantOf } from "../shop/instants.ts";
import type { Order } from "../shop/order.ts";
import { MIN_PER_DAY } from "../units/conversions.ts";
import { layOutAs } from "../plan/search/machine-windows.ts";
import type { Finding } from "../units/finding.ts";
import { LinePlacer } from "./line-places.ts";
import { type MoreLines, withMoreLines } from "./more-lines.ts";
import type { QuoteDesk } from "./quote-desk.ts";
import { orderOf, type QuoteLineRequest } from "./quote-order.ts";

/** Lines asked for, compiled behind the standing work and put into it in every way; none of it depends on their dates. */
export interface AskedLines {
  readonly more: MoreLines;
  /** by line asked for: its place among the lines that were put in, -1 where it has no way at all */
  readonly placeOf: readonly number[];
  readonly placer: LinePlacer;
}

/** Answers kept for each desk: trying another date asks for the same lines again. */
const KEPT = 4;
const known = new WeakMap<QuoteDesk, Map<string, AskedLines>>();

/**
 * Compiles and places the lines of a request, or gives what it gave before for the same parts, quantities and pins. Only lines
 * without `lineFindings` that are errors may be asked. Example: the same line with another date costs nothing the second time.
 */
export function askedLines(desk: QuoteDesk, lines: readonly QuoteLineRequest[]): AskedLines {
  const kept = known.get(desk) ?? new Map<string, AskedLines>();
  known.set(desk, kept);
  const key = JSON.stringify(lines.map(({ wantedMin: _wanted, allowLate: _allowLate, ...rest }) => rest));
  const before = kept.get(key);
  const asked = before ?? placeAsked(desk, lines);
  kept.delete(key);
  kept.set(key, asked);
  for (const oldest of kept.keys()) if (kept.size > KEPT) kept.delete(oldest);
  return asked;
}

function placeAsked(desk: QuoteDesk, lines: readonly QuoteLineRequest[]): AskedLines {
  const { fromMin, days, seed } = desk.request;
  const { timeZone } = desk.shop;
  const fromAt = instantOf(fromMin, timeZone);
  const dueAt = instantOf(fromMin + days * MIN_PER_DAY, timeZone);
  const orders: Order[] = lines.map((line) => orderOf(line, fromAt, dueAt));
  const more = withMoreLines(desk, orders);
  const whole = more.lineIndices.map((index, at) =>
    index >= 0 && more.problem.lines[index]?.quantity === lines[at]?.quantity ? index : -1,
  );
  const there = whole.filter((index) => index >= 0);
  layOutAs(more.problem, desk.problem);
  const placer = new LinePlacer(more.problem, there, desk.standing, seed);
  return { more, placeOf: whole.map((index) => there.indexOf(index)), placer };
}

/** What is wrong with a line asked for, in sentences; with an error it cannot be put into a plan. */
export function lineFindings(desk: QuoteDesk, line: QuoteLineRequest): Finding[] {
  const { shop, request } = desk;
  const findings: Finding[] = [];
  const say = (
    field: string,
    code: string,
    sentence: string,
    severity: Finding["severity"] = "error",
  ): void => {
    findings.push({ severity, code, where: whereOf("lines", line.id, field), sentence });
  };
  const { quantity, partId, machineId, feedstockId, wantedMin } = line;
  if (!Number.isSafeInteger(quantity) || quantity < 1) {
    say(
      "quantity",
      "quantity",
      `A quantity of ${quantity} cannot be made: ask for a whole number of copies, 1 or more.`,
    );
  }
  if (!shop.parts.some(({ id }) => id === partId)) {
    say("partId", "unknown-id", `The shop has no part ${partId}: put it into the shop's parts first.`);
  }
  if (machineId !== undefined && !shop.machines.some(({ id }) => id === machineId)) {
    say("machineId", "unknown-id", `The shop has no machine ${machineId}: choose one that it has, or none.`);
  }
  if (feedstockId !== undefined && !shop.feedstocks.some(({ id }) => id === feedstockId)) {
    say(
      "feedstockId",
      "unknown-id",
      `The shop has no feedstock ${feedstockId}: choose one that it has, or none.`,
    );
  }
  if (shop.orders.some(({ id }) => id === line.id)) {
    say("id", "duplicate-id", `The shop has an order ${line.id} already: give the line another id.`);
  }
  if (wantedMin !== null && !Number.isFinite(wantedMin)) {
    say("wantedAt", "not-a-date", "The wanted date cannot be read: give a date, or none.");
  }
  if (wantedMin !== null && wantedMin <= request.fromMin) {
    const sentence =
      "The wanted date has passed: the earliest date is answered instead. Ask for a date after the start of the plan.";
    say("wantedAt", "date-past", sentence, "warning");
  }
  return findings;
}

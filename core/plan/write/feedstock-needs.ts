import { hazardPerH, lostShare } from "../../cost/expected-failure-cost.ts";
import type { Feedstock } from "../../shop/feedstock.ts";
import { MIN_PER_H } from "../../units/conversions.ts";
import { localDaysBefore } from "./local-moments.ts";
import type { PlanDocument, PlannedBuild } from "../plan-document.ts";
import type { PlanSource } from "./plan-source.ts";

export type FeedstockNeed = PlanDocument["feedstockNeeds"][number];

/** What one build takes out of stock, and when it must be there. */
interface Draw {
  readonly feedstockId: string;
  readonly atMin: number;
  readonly massKg: number;
}

/**
 * What the builds ahead need of each feedstock and what to buy by when. A build draws its mass, the scrap to be expected
 * from failed attempts, and waste on both, before its drying starts. Whole packs are bought; they are to be ordered the
 * lead time (in local days) before the first build that stock does not cover. Feedstocks that nothing needs are left out.
 * Example: 10.5 kg needed, 10 kg in stock, packs of 1 kg, 3 days: buy 1 pack, 3 days before the build that passes 10 kg.
 */
export function feedstockNeeds(
  source: PlanSource,
  builds: readonly PlannedBuild[],
  fromMin: number,
): FeedstockNeed[] {
  const draws = builds
    .filter((build) => source.minute(build.setUpStart) >= fromMin)
    .map((build) => draw(source, build));
  return source.shop.feedstocks.flatMap((feedstock) => {
    const own = draws
      .filter(({ feedstockId }) => feedstockId === feedstock.id)
      .toSorted((a, b) => a.atMin - b.atMin);
    return own.length > 0 ? [need(source, feedstock, own, fromMin)] : [];
  });
}

function draw(source: PlanSource, build: PlannedBuild): Draw {
  const { wastePct, dryH } = source.feedstock(build.feedstockId);
  const runH = (source.minute(build.printEnd) - source.minute(build.printStart)) / MIN_PER_H;
  const scrap = lostShare(hazardPerH(source.machine(build.machineId).failuresPer1000H), runH);
  return {
    feedstockId: build.feedstockId,
    atMin: source.minute(build.setUpStart) - Math.round(dryH * MIN_PER_H),
    massKg: build.massKg * (1 + scrap) * (1 + wastePct / 100),
  };
}

function need(
  source: PlanSource,
  feedstock: Feedstock,
  draws: readonly Draw[],
  fromMin: number,
): FeedstockNeed {
  const { stockKg, packKg } = feedstock;
  const needKg = draws.reduce((sum, { massKg }) => sum + massKg, 0);
  const packs = Math.max(0, Math.ceil((needKg - stockKg) / packKg - DUST));
  const shortMin = packs > 0 ? firstShortage(draws, stockKg) : null;
  const orderMin =
    shortMin === null ? null : localDaysBefore(shortMin, feedstock.leadTimeDays, source.shop.timeZone);
  return {
    feedstockId: feedstock.id,
    needKg,
    stockKg,
    buyKg: packs * packKg,
    packs,
    orderBy: orderMin === null ? null : source.instant(orderMin),
    note: noteText(source, feedstock, shortMin, orderMin, fromMin),
  };
}

/** Less than a millionth of a pack is no reason to buy one. */
const DUST = 1e-6;

function firstShortage(draws: readonly Draw[], stockKg: number): number | null {
  let usedKg = 0;
  for (const { massKg, atMin } of draws) {
    usedKg += massKg;
    if (usedKg > stockKg) return atMin;
  }
  return null;
}

function noteText(
  source: PlanSource,
  { leadTimeDays }: Feedstock,
  shortMin: number | null,
  orderMin: number | null,
  fromMin: number,
): string {
  if (shortMin === null || orderMin === null) return "Stock is enough.";
  const short = `Stock runs short on ${source.when(shortMin)}; delivery takes ${leadTimeDays} days.`;
  if (orderMin >= fromMin) return short;
  return `${short} The date to order is past: ask for a faster delivery, or the builds from then on must wait.`;
}

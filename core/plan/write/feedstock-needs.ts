import { hazardPerH, lostShare } from "../../cost/expected-failure-cost.ts";
import type { Feedstock } from "../../shop/feedstock.ts";
import { listed } from "../../shop/finding.ts";
import { MIN_PER_H } from "../../units/conversions.ts";
import { localDaysBefore } from "./local-moments.ts";
import type { PlanDocument, PlannedBuild } from "../plan-document.ts";
import type { PlanSource } from "./plan-source.ts";

export type FeedstockNeed = PlanDocument["feedstockNeeds"][number];

/** What one build takes out of stock, and when it must be there. */
interface Draw {
  readonly buildId: string;
  readonly feedstockId: string;
  readonly atMin: number;
  readonly massKg: number;
}

/**
 * What the builds ahead need of each feedstock and what to buy by when. A build draws its mass, the scrap to be expected
 * from failed attempts, and waste on both, before its drying starts. Whole packs are bought; they are to be ordered the
 * lead time (in local days) before the first build that stock does not cover. Builds that begin before it can come are named:
 * the plan does not hold them back. Feedstocks that nothing needs are left out.
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
      .toSorted((a, b) => a.atMin - b.atMin || (a.buildId < b.buildId ? -1 : 1));
    return own.length > 0 ? [need(source, feedstock, own, fromMin)] : [];
  });
}

function draw(source: PlanSource, build: PlannedBuild): Draw {
  const { wastePct, dryH } = source.feedstock(build.feedstockId);
  const runH = (source.minute(build.printEnd) - source.minute(build.printStart)) / MIN_PER_H;
  const scrap = lostShare(hazardPerH(source.machine(build.machineId).failuresPer1000H), runH);
  return {
    buildId: build.id,
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
  const short = packs > 0 ? withoutStock(draws, stockKg + DUST * packKg) : [];
  const shortMin = short[0]?.atMin ?? null;
  const arriveMin = localDaysBefore(fromMin, -feedstock.leadTimeDays, source.shop.timeZone);
  const tooEarly = short.filter(({ atMin }) => atMin < arriveMin).map(({ buildId }) => buildId);
  const orderMin =
    shortMin === null ? null : localDaysBefore(shortMin, feedstock.leadTimeDays, source.shop.timeZone);
  return {
    feedstockId: feedstock.id,
    needKg,
    stockKg,
    buyKg: packs * packKg,
    packs,
    orderBy: orderMin === null ? null : source.instant(orderMin),
    ...(packs > 0 ? { arriveAt: source.instant(arriveMin) } : {}),
    ...(tooEarly.length > 0 ? { tooEarly } : {}),
    note: noteText(source, feedstock, shortMin, { arriveMin, tooEarly }),
  };
}

/** Less than a millionth of a pack is no reason to buy one, and none to call stock short. */
const DUST = 1e-6;

/** The draws, in time order, that stock does not cover whole. */
function withoutStock(draws: readonly Draw[], stockKg: number): Draw[] {
  let usedKg = 0;
  return draws.filter(({ massKg }) => {
    usedKg += massKg;
    return usedKg > stockKg;
  });
}

/** When feedstock comes that is ordered at the start of the plan, and the builds that cannot wait for it. */
interface Delivery {
  readonly arriveMin: number;
  readonly tooEarly: readonly string[];
}

function noteText(
  source: PlanSource,
  { leadTimeDays }: Feedstock,
  shortMin: number | null,
  { arriveMin, tooEarly }: Delivery,
): string {
  if (shortMin === null) return "Stock is enough.";
  const short = `Stock runs short on ${source.when(shortMin)}; delivery takes ${leadTimeDays} days.`;
  if (tooEarly.length === 0) return short;
  const begin = tooEarly.length === 1 ? "begins" : "begin";
  return `${short} The date to order is past: ordered when the plan starts it comes on ${source.when(arriveMin)}, and ${listed(tooEarly)} ${begin} before. Ask for a faster delivery, or hold these builds back.`;
}

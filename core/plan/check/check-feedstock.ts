import { hazardPerH, lostShare } from "../../cost/expected-failure-cost.ts";
import type { Finding } from "../../shop/finding.ts";
import { MIN_PER_H } from "../../units/conversions.ts";
import { nearlyEqual } from "../../units/tolerance.ts";
import { inSequence } from "./check-sequence.ts";
import { broken } from "./check-source.ts";
import type { CheckedBuild, CheckSource } from "./check-source.ts";
import { localDaysBefore } from "../write/local-moments.ts";

/** Feedstock: each build's mass is that of its copies and its purge, and the needs and what to buy by when follow from it. */
export function checkFeedstock(source: CheckSource): Finding[] {
  return [...checkMass(source), ...checkNeeds(source)];
}

function checkMass(source: CheckSource): Finding[] {
  return [...massesKg(source)].flatMap(([checked, massKg]) => {
    const { build } = checked;
    if (nearlyEqual(build.massKg, massKg, TOLERANCE)) return [];
    return [
      broken(
        "mass",
        ["builds", build.id, "massKg"],
        `Build ${build.id} is said to use ${build.massKg} kg; its copies and its purge take ${massKg} kg.`,
      ),
    ];
  });
}

/** Relative. */
const TOLERANCE = 1e-6;

/** Mass of each planned build whose routes are known: its copies and the purge of its changeover. */
function massesKg(source: CheckSource): Map<CheckedBuild, number> {
  const masses = new Map<CheckedBuild, number>();
  for (const { checked, before } of inSequence(source)) {
    if (!checked.items) continue;
    const { purgeKg } = source.costing.changeoverAmounts(checked.machine, before, checked.build);
    masses.set(
      checked,
      checked.items.reduce((sum, { copies, route }) => sum + copies * route.massKgPerCopy, purgeKg),
    );
  }
  return masses;
}

/** A build and what it takes out of stock. */
interface Use extends CheckedBuild {
  readonly needKg: number;
}

function checkNeeds(source: CheckSource): Finding[] {
  const masses = massesKg(source);
  const builds = [...source.planned, ...source.fixed]
    .filter(({ setUpStartMin }) => setUpStartMin >= source.startMin)
    .map(
      (checked): Use => ({
        ...checked,
        needKg: needKg(checked, masses.get(checked) ?? checked.build.massKg),
      }),
    );
  return source.shop.feedstocks.flatMap((feedstock) => {
    const uses = builds.filter(({ build }) => build.feedstockId === feedstock.id);
    const sumKg = uses.reduce((sum, use) => sum + use.needKg, 0);
    const missingKg = Math.max(0, sumKg - feedstock.stockKg);
    const packs = Math.ceil(missingKg / feedstock.packKg - TOLERANCE);
    const short = packs > 0 ? withoutStock(uses, feedstock.stockKg + TOLERANCE * feedstock.packKg) : [];
    const orderMin = orderByMin(source, short, feedstock.leadTimeDays);
    const stated = source.plan.feedstockNeeds.find(({ feedstockId }) => feedstockId === feedstock.id);
    const early = tooEarly(source, short, feedstock.leadTimeDays);
    const right =
      nearlyEqual(stated?.needKg ?? 0, sumKg, TOLERANCE) &&
      (stated?.packs ?? 0) === Math.max(0, packs) &&
      nearlyEqual(stated?.buyKg ?? 0, Math.max(0, packs) * feedstock.packKg, TOLERANCE) &&
      (stated?.stockKg ?? feedstock.stockKg) === feedstock.stockKg &&
      (stated?.orderBy ? source.minute(stated.orderBy) : null) === orderMin &&
      (stated?.tooEarly ?? []).join() === early.join();
    if (right) return [];
    return [
      broken(
        "feedstock-need",
        ["feedstockNeeds", feedstock.id],
        `The plan says ${feedstock.id}: ${stated?.needKg ?? 0} kg needed, ${stated?.packs ?? 0} packs to buy by ${stated?.orderBy ?? "never"}; its builds take ${sumKg} kg with ${feedstock.stockKg} kg in stock, so ${packs} packs of ${feedstock.packKg} kg, and ${early.length} of them begin before a delivery can come.`,
      ),
    ];
  });
}

/** With the scrap to be expected from failed attempts, and waste on both. */
function needKg({ machine, feedstock, printStartMin, printEndMin }: CheckedBuild, massKg: number): number {
  const runH = (printEndMin - printStartMin) / MIN_PER_H;
  const scrap = lostShare(hazardPerH(machine.failuresPer1000H), runH);
  return massKg * (1 + scrap) * (1 + feedstock.wastePct / 100);
}

/** Builds, by start and then by id, that stock does not cover whole. */
function withoutStock(uses: readonly Use[], stockKg: number): Use[] {
  let usedKg = 0;
  return uses
    .toSorted((a, b) => a.setUpStartMin - b.setUpStartMin || (a.build.id < b.build.id ? -1 : 1))
    .filter(({ needKg: ownKg }) => {
      usedKg += ownKg;
      return usedKg > stockKg;
    });
}

/** When a build takes its feedstock: its drying begins. */
function takenMin({ setUpStartMin, feedstock }: Use): number {
  return setUpStartMin - Math.round(feedstock.dryH * MIN_PER_H);
}

/** The lead time before the first build that stock does not cover. */
function orderByMin({ shop }: CheckSource, [first]: readonly Use[], leadTimeDays: number): number | null {
  return first ? localDaysBefore(takenMin(first), leadTimeDays, shop.timeZone) : null;
}

/** Ids of builds that stock does not cover and that begin before an order at the start of the plan can be there. */
function tooEarly({ shop, startMin }: CheckSource, short: readonly Use[], leadTimeDays: number): string[] {
  const arriveMin = localDaysBefore(startMin, -leadTimeDays, shop.timeZone);
  return short.filter((use) => takenMin(use) < arriveMin).map(({ build }) => build.id);
}

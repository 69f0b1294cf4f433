import type { PlanDocument, PlannedBuild } from "../../plan/plan-document.ts";
import type { Calendar } from "../../shop/calendar.ts";
import { listed } from "../../shop/finding.ts";
import { localTime } from "../../shop/local-time.ts";
import type { Machine } from "../../shop/machine.ts";
import type { Shop } from "../../shop/shop.ts";
import { dateTimeText } from "../../shop/time-words.ts";
import { MIN_PER_H } from "../../units/conversions.ts";
import type { Chances } from "./chances.ts";

/** What is read of a plan's document. */
export interface PlanAhead extends Pick<PlanDocument, "plannedFrom" | "builds" | "feedstockNeeds"> {
  readonly boughtOut: readonly Pick<PlanDocument["boughtOut"][number], "orderId" | "arriveAt">[];
  readonly unplanned: readonly Pick<PlanDocument["unplanned"][number], "orderId" | "copies">[];
}

/** A shop and its plan with what is taken for granted, and the way to read their instants. */
export interface DatedPlan {
  readonly shop: Shop;
  readonly plan: PlanAhead;
  readonly minute: (instant: string) => number;
  /** start of the plan, epoch minute */
  readonly startMin: number;
  readonly chances: Chances;
}

/** One build of the plan with its machine and its times in minutes from the start of the plan. */
export interface PlacedBuild {
  readonly build: PlannedBuild;
  readonly machine: Machine;
  readonly calendar: Calendar;
  /** same for the same orders on the same machine, counted, in every plan */
  readonly name: string;
  readonly setUpStartMin: number;
  readonly printStartMin: number;
  readonly printEndMin: number;
  readonly unloadStartMin: number;
  readonly unloadEndMin: number;
  /** no set-up before: planned, or as much earlier as is allowed, or the feedstock has come and is dry */
  readonly earliestMin: number;
}

/**
 * The builds of a plan that are still ahead, calendar by calendar, machine by machine, by set-up start; and what was left out, in
 * sentences. A build that the plan itself says begins before its feedstock can come waits for the delivery and its drying.
 * Example: builds F2 at 8, F1 at 9 and F1 at 7 of one calendar come as F1 at 7, F1 at 9, F2 at 8.
 */
export function placedBuilds(source: DatedPlan): {
  readonly builds: readonly PlacedBuild[];
  readonly notes: readonly string[];
} {
  const { shop, plan } = source;
  const calendars = new Map(shop.calendars.map((calendar, index) => [calendar.id, { calendar, index }]));
  const machines = new Map(shop.machines.map((machine, index) => [machine.id, { machine, index }]));
  const lost: string[] = [];
  const placed = plan.builds.filter(isAhead).flatMap((build) => {
    const place = machines.get(build.machineId);
    const people = place ? calendars.get(place.machine.calendarId) : undefined;
    if (!place || !people) {
      lost.push(build.id);
      return [];
    }
    const rank = [people.index, place.index] as const;
    return [{ rank, placed: placedBuild(source, build, place.machine, people.calendar) }];
  });
  placed.sort(
    (one, other) =>
      one.rank[0] - other.rank[0] ||
      one.rank[1] - other.rank[1] ||
      one.placed.setUpStartMin - other.placed.setUpStartMin,
  );
  const builds = named(placed.map((entry) => entry.placed));
  return { builds, notes: [...lostWords(lost), ...waitWords(source, builds)] };
}

function isAhead({ state }: PlannedBuild): boolean {
  return state === "planned" || state === "committed" || state === "running";
}

function lostWords(ids: readonly string[]): string[] {
  if (ids.length === 0) return [];
  return [
    `The shop has no machine with a calendar for ${ids.length === 1 ? "build" : "builds"} ${listed(ids)} of the plan: plan again with the shop as it is now.`,
  ];
}

/** The plan leaves builds where they are although their feedstock comes later; the simulation cannot. */
function waitWords({ shop, startMin }: DatedPlan, builds: readonly PlacedBuild[]): string[] {
  const year = localTime(startMin, shop.timeZone).date.slice(0, 4);
  const waiting = builds.filter(({ earliestMin, setUpStartMin }) => earliestMin > setUpStartMin);
  const feedstockIds = [...new Set(waiting.map(({ build }) => build.feedstockId))];
  return feedstockIds.map((feedstockId) => {
    const own = waiting.filter(({ build }) => build.feedstockId === feedstockId);
    const readyMin = startMin + Math.max(...own.map(({ earliestMin }) => earliestMin));
    const ids = listed(own.map(({ build }) => build.id));
    const ready = dateTimeText(localTime(readyMin, shop.timeZone), year);
    return `${ids} ${own.length === 1 ? "waits" : "wait"} for ${feedstockId}, which is there and dry on ${ready}: a faster delivery would bring dates forward.`;
  });
}

function placedBuild(
  source: DatedPlan,
  build: PlannedBuild,
  machine: Machine,
  calendar: Calendar,
): Omit<PlacedBuild, "name"> {
  const at = (instant: string): number => source.minute(instant) - source.startMin;
  const setUpStartMin = at(build.setUpStart);
  const unloadEndMin = at(build.unloadEnd);
  const begun = build.state === "running" ? build.actual?.printStart : undefined;
  return {
    build,
    machine,
    calendar,
    setUpStartMin,
    printStartMin: at(begun ?? build.printStart),
    printEndMin: at(begun ?? build.printStart) + at(build.printEnd) - at(build.printStart),
    unloadStartMin: unloadEndMin - Math.ceil(machine.unloadMin),
    unloadEndMin,
    earliestMin: Math.max(soonestMin(source, build, setUpStartMin), feedstockMin(source, build)),
  };
}

/** A planned build may begin early, but not before the plan does nor before its orders are released. */
function soonestMin(
  { shop, minute, startMin, chances }: DatedPlan,
  build: PlannedBuild,
  setUpStartMin: number,
): number {
  if (build.state !== "planned" || chances.earlyStartMin <= 0) return setUpStartMin;
  const own = new Set(build.items.map(({ orderId }) => orderId));
  const released = shop.orders
    .filter(({ id }) => own.has(id))
    .map(({ releaseAt }) => minute(releaseAt) - startMin);
  return Math.min(setUpStartMin, Math.max(0, setUpStartMin - chances.earlyStartMin, ...released));
}

/** When the feedstock of a build is there and dry, min; -Infinity where the plan does not say that it comes too late. */
function feedstockMin({ shop, plan, minute, startMin }: DatedPlan, build: PlannedBuild): number {
  const need = plan.feedstockNeeds.find(({ feedstockId }) => feedstockId === build.feedstockId);
  if (!need?.arriveAt || !need.tooEarly?.includes(build.id)) return -Infinity;
  const dryH = shop.feedstocks.find(({ id }) => id === build.feedstockId)?.dryH ?? 0;
  return minute(need.arriveAt) - startMin + Math.round(dryH * MIN_PER_H);
}

/** Names each build by its machine, its orders and its number among builds that are alike in both. */
function named(builds: readonly Omit<PlacedBuild, "name">[]): PlacedBuild[] {
  const seen = new Map<string, number>();
  return builds.map((placed) => {
    const orderIds = placed.build.items.map(({ orderId }) => orderId).toSorted();
    const stem = JSON.stringify([placed.machine.id, ...orderIds]);
    const number = (seen.get(stem) ?? 0) + 1;
    seen.set(stem, number);
    return { ...placed, name: `${stem} ${number}` };
  });
}

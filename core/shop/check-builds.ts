import type { Build } from "./build.ts";
import { keepsItsPlace } from "./build-copies.ts";
import { instantFindings } from "./check-instant.ts";
import { about, type EntryFindings, type Finding, listed } from "./finding.ts";
import { minuteOrNull, type ShopIndex } from "./shop-index.ts";

/** Findings about builds: references, times, what overlaps on one machine. Finished ones are history and only warn. */
export function checkBuilds(index: ShopIndex): Finding[] {
  const own = index.shop.builds.flatMap((build) => {
    const say = about("builds", build.id);
    return [
      ...referenceFindings(say, build, index),
      ...TIME_FIELDS.flatMap((field) => instantFindings(say, field, build[field], index.timeZone)),
      ...instantFindings(say, "actual/printStart", build.actual?.printStart, index.timeZone),
      ...instantFindings(say, "actual/printEnd", build.actual?.printEnd, index.timeZone),
      ...sequenceFindings(say, build, index.timeZone),
      ...outOfServiceFindings(say, build, index),
      ...countFindings(say, build),
    ];
  });
  return [...own, ...overlapFindings(index), ...plannedFindings(index.shop)];
}

/** Builds of an earlier plan that nobody has committed. */
function plannedFindings({ builds, costing, currency }: ShopIndex["shop"]): Finding[] {
  const ids = builds.filter(({ state }) => state === "planned").map(({ id }) => id);
  if (ids.length === 0) return [];
  const [what, one] = ids.length === 1 ? ["Build", "it is"] : ["Builds", "they are"];
  const price = costing.moveCostPerBuild ?? 0;
  const how =
    price > 0
      ? `moved or dropped only where that saves more than ${price} ${currency} (moveCostPerBuild) a build`
      : "planned anew at no cost (moveCostPerBuild in costing is 0)";
  return [
    {
      severity: "warning",
      code: "planned-anew",
      where: "builds",
      sentence: `${what} ${listed(ids)}: in state planned, so ${one} ${how}; set what must keep its time to committed.`,
    },
  ];
}

const TIME_FIELDS = ["setUpStart", "printStart", "printEnd", "unloadEnd"] as const;

function referenceFindings(say: EntryFindings, build: Build, index: ShopIndex): Finding[] {
  const machine = index.machines.get(build.machineId);
  const feedstock = index.feedstocks.get(build.feedstockId);
  const tell = keepsItsPlace(build) ? say.error : say.warning;
  const unknown = (field: string, word: string, id: string): Finding =>
    tell(field, `unknown-${word}`, `there is no ${word} ${id}; name one that exists`);
  const findings: Finding[] = [];
  if (!machine) findings.push(unknown("machineId", "machine", build.machineId));
  else if (!machine.nozzles.some((nozzle) => nozzle.id === build.nozzleId)) {
    findings.push(
      tell(
        "nozzleId",
        "unknown-nozzle",
        `machine ${machine.id} has no nozzle ${build.nozzleId}; name one of its own`,
      ),
    );
  }
  if (!feedstock) findings.push(unknown("feedstockId", "feedstock", build.feedstockId));
  else if (machine && machine.process !== feedstock.form) {
    findings.push(
      tell(
        "feedstockId",
        "wrong-form",
        `${feedstock.id} comes as ${feedstock.form}, machine ${machine.id} takes ${machine.process}; correct one`,
      ),
    );
  }
  const orderIds = [...new Set(build.items.map((item) => item.orderId))];
  const missing = orderIds.filter((orderId) => !index.orders.has(orderId));
  return [...findings, ...missing.map((orderId) => unknown("items", "order", orderId))];
}

function sequenceFindings(say: EntryFindings, build: Build, timeZone: string): Finding[] {
  const tell = keepsItsPlace(build) ? say.error : say.warning;
  const minutes = TIME_FIELDS.map((field) => minuteOrNull(build[field], timeZone));
  const place = TIME_FIELDS.findIndex(
    (_, at) => at > 0 && (minutes[at] ?? Infinity) < (minutes[at - 1] ?? -Infinity),
  );
  const later = TIME_FIELDS[place];
  const earlier = TIME_FIELDS[place - 1];
  if (!later || !earlier) return [];
  return [
    tell(
      later,
      "ends-before-start",
      `${later} ${build[later]} lies before ${earlier} ${build[earlier]}; correct one`,
    ),
  ];
}

function outOfServiceFindings(
  say: EntryFindings,
  build: Build,
  { machines, timeZone }: ShopIndex,
): Finding[] {
  const stretch = stretchOf(build, timeZone);
  if (!keepsItsPlace(build) || !stretch) return [];
  const clash = machines.get(build.machineId)?.outOfService.find(({ from, to }) => {
    const fromMin = minuteOrNull(from, timeZone) ?? Infinity;
    const toMin = minuteOrNull(to, timeZone) ?? -Infinity;
    return fromMin < stretch.endMin && toMin > stretch.startMin;
  });
  if (!clash) return [];
  return [
    say.warning(
      "setUpStart",
      "out-of-service",
      `machine ${build.machineId} is out of service from ${clash.from} to ${clash.to}, during this ${build.state} build; move one of them`,
    ),
  ];
}

function countFindings(say: EntryFindings, build: Build): Finding[] {
  const counted = (build.actual?.goodCopies ?? 0) + (build.actual?.failedCopies ?? 0);
  const copies = build.items.reduce((sum, item) => sum + item.copies, 0);
  if (counted <= copies) return [];
  return [
    say.warning(
      "actual",
      "more-than-built",
      `${counted} good and failed copies were counted of ${copies} built; check the count`,
    ),
  ];
}

interface BuildStretch {
  readonly startMin: number;
  readonly endMin: number;
}

function stretchOf(build: Build, timeZone: string): BuildStretch | null {
  const startMin = minuteOrNull(build.setUpStart, timeZone);
  const endMin = minuteOrNull(build.unloadEnd, timeZone);
  return startMin === null || endMin === null ? null : { startMin, endMin };
}

/** The later of two builds that keep their place and overlap on one machine is in error. */
function overlapFindings({ shop, timeZone }: ShopIndex): Finding[] {
  const placed = shop.builds
    .filter(keepsItsPlace)
    .flatMap((build) => {
      const stretch = stretchOf(build, timeZone);
      return stretch ? [{ build, ...stretch }] : [];
    })
    .toSorted((a, b) => a.startMin - b.startMin);
  const lastOn = new Map<string, (typeof placed)[number]>();
  return placed.flatMap((next) => {
    const last = lastOn.get(next.build.machineId);
    if (last && last.endMin > next.startMin) {
      const what = `it starts at ${next.build.setUpStart} on machine ${next.build.machineId}, where build ${last.build.id} lasts until ${last.build.unloadEnd}; move one of them`;
      return [about("builds", next.build.id).error("setUpStart", "builds-overlap", what)];
    }
    lastOn.set(next.build.machineId, next);
    return [];
  });
}

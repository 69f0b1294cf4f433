import { lateCostPerDay } from "../../cost/late-cost.ts";
import { instantOf } from "../../shop/instants.ts";
import type { Machine } from "../../shop/machine.ts";
import { MIN_PER_DAY } from "../../units/conversions.ts";
import { checkOperators } from "../check/check-operators.ts";
import { checkPlannedBuilds } from "../check/check-planned-builds.ts";
import { checkedBuild, type CheckedBuild, type CheckSource } from "../check/check-source.ts";
import { checkTimes } from "../check/check-times.ts";
import type { PlannedBuild } from "../plan-document.ts";
import { firstUnload } from "./first-unload.ts";
import type { MoveDesk } from "./move-desk.ts";
import type { MoveWay } from "./move-ways.ts";

/** What would become of the build in hand at another place. */
export interface MoveVerdict {
  /** the build as it would stand */
  readonly build: PlannedBuild;
  /** why it cannot stand there, in sentences; none: it can */
  readonly refusals: readonly string[];
  /** by how much the latest of its orders would be late, min */
  readonly lateMin: number;
  /** what it costs more there than where it stands now; below 0: less. Tool paths are not counted */
  readonly extraCost: number;
  /** planned builds of that machine before it: a new plan would move them, for it plans only behind what is committed */
  readonly plannedBefore: readonly string[];
}

/**
 * Judges the build in hand at a place by the rules that every plan is checked by: routes, platform, releases, shifts, blocks,
 * unattended running, operators, other builds of the machine. Cost compares the build, its changeover and the next one's, and
 * lateness of its orders with those where it stands. Example: an hour later on the same machine with nothing due: costs 0 more.
 */
export function judgeMove(desk: MoveDesk, way: MoveWay, setUpStartMin: number): MoveVerdict {
  const placed = placeBuild(desk, way, setUpStartMin);
  const checked = checkedOf(desk, way, placed);
  const source: CheckSource = { ...desk.source, planned: [checked] };
  const findings = [...checkTimes(source), ...checkPlannedBuilds(source), ...checkOperators(source)];
  const before = (desk.others.get(way.machineId) ?? []).filter(
    ({ build, setUpStartMin: otherMin }) => otherMin < setUpStartMin && !isFixed(desk, build.id),
  );
  return {
    build: placed,
    refusals: [
      ...pinned(desk, way),
      ...inTheWay(desk, way, checked),
      ...new Set(findings.map(({ sentence }) => sentence)),
    ],
    lateMin: lateMinOf(desk, checked),
    extraCost: costAt(desk, way, checked) - costNow(desk),
    plannedBefore: before.map(({ build }) => build.id),
  };
}

/** The build at a place: set-up with its changeover, print, and the first time at which somebody takes it off. */
function placeBuild(desk: MoveDesk, way: MoveWay, setUpStartMin: number): PlannedBuild {
  const machine = desk.machine(way.machineId);
  const { timeZone } = desk.source.shop;
  const [first] = way.items;
  if (!first) throw new RangeError("a build with no items has no place");
  const { nozzleId, feedstockId, layerHeightMm, beadWidthMm, orientation } = first.route;
  const to = { nozzleId, feedstockId };
  const changeoverMin = desk.costing.changeoverAmounts(
    machine,
    loadedAt(desk, machine, setUpStartMin),
    to,
  ).minutes;
  const printStartMin = setUpStartMin + Math.ceil(machine.setUpMin + changeoverMin - DUST_MIN);
  const printEndMin = printStartMin + way.runMin;
  const instant = (atMin: number): string => instantOf(atMin, timeZone);
  return {
    id: desk.build.id,
    machineId: way.machineId,
    nozzleId,
    feedstockId,
    layerHeightMm,
    beadWidthMm,
    orientation,
    items: way.items.map(({ orderId, copies, route }) => ({
      orderId,
      copies,
      ...(route.rotationDeg ? { rotationDeg: route.rotationDeg } : {}),
    })),
    setUpStart: instant(setUpStartMin),
    printStart: instant(printStartMin),
    printEnd: instant(printEndMin),
    unloadEnd: instant(firstUnload(desk, machine, printEndMin) + Math.ceil(machine.unloadMin)),
    state: "planned",
    changeoverMin,
    massKg: way.items.reduce((sum, { copies, route }) => sum + copies * route.massKgPerCopy, 0),
    costLines: [],
  };
}

const DUST_MIN = 1e-6;

function checkedOf(desk: MoveDesk, way: MoveWay, build: PlannedBuild): CheckedBuild {
  const machine = desk.machine(way.machineId);
  const feedstock = desk.source.shop.feedstocks.find(({ id }) => id === way.feedstockId);
  if (!feedstock) throw new RangeError(`no such feedstock: ${way.feedstockId}`);
  return checkedBuild(build, { machine, feedstock }, way.items, desk.source.minute);
}

function pinned({ source, build }: MoveDesk, { machineId, feedstockId }: MoveWay): string[] {
  return build.items.flatMap(({ orderId }) => {
    const pin = source.order(orderId)?.pinned;
    const isElsewhere =
      (pin?.machineId ?? machineId) !== machineId || (pin?.feedstockId ?? feedstockId) !== feedstockId;
    const to = [pin?.machineId, pin?.feedstockId].filter((id) => id !== undefined).join(" and ");
    return isElsewhere ? [`Order ${orderId} is pinned to ${to}; take the pin off first.`] : [];
  });
}

function inTheWay(desk: MoveDesk, { machineId }: MoveWay, checked: CheckedBuild): string[] {
  const hit = (desk.others.get(machineId) ?? []).find(
    (other) => other.setUpStartMin < checked.unloadEndMin && other.unloadEndMin > checked.setUpStartMin,
  );
  return hit ? [`Build ${hit.build.id} stands on ${machineId} then.`] : [];
}

function isFixed({ source }: MoveDesk, buildId: string): boolean {
  return source.shop.builds.some(
    ({ id, state }) => id === buildId && (state === "committed" || state === "running"),
  );
}

/** What a machine has loaded at a minute, by the builds that stand on it. */
function loadedAt(desk: MoveDesk, machine: Machine, atMin: number) {
  const before = (desk.others.get(machine.id) ?? []).findLast(({ setUpStartMin }) => setUpStartMin < atMin);
  return before?.build ?? machine.loaded;
}

function costNow(desk: MoveDesk): number {
  const { build, source, costing } = desk;
  const machine = source.shop.machines.find(({ id }) => id === build.machineId);
  const feedstock = source.shop.feedstocks.find(({ id }) => id === build.feedstockId);
  if (!machine || !feedstock) return 0;
  const minute = source.minute;
  const items = build.items.flatMap(({ orderId, copies }) => {
    const order = source.order(orderId);
    const answers = order ? source.routes(source.part(order), machine, feedstock) : [];
    const route = answers
      .flatMap((answer) => (answer.status === "route" ? [answer.route] : []))
      .find((found) => found.nozzleId === build.nozzleId && found.orientation === build.orientation);
    return route ? [{ orderId, copies, route }] : [];
  });
  const startMin = minute(build.setUpStart);
  const isKnown = items.length === build.items.length;
  const own = isKnown ? costing.amounts(items, machine).total : plannedCost(desk, machine, startMin);
  return own + changesAround(desk, machine, build, startMin) + lateCost(desk, minute(build.unloadEnd));
}

/** What the plan said that the build costs, for one that nobody would make so any more; without its changeover. */
function plannedCost(desk: MoveDesk, machine: Machine, startMin: number): number {
  const { build, costing } = desk;
  const total = build.costLines.reduce((sum, { amount }) => sum + amount, 0);
  return total - costing.changeoverAmounts(machine, loadedAt(desk, machine, startMin), build).cost;
}

/** The cost there, against what the machines cost without it: so much the changeovers of the machine it leaves fall away. */
function costAt(desk: MoveDesk, way: MoveWay, checked: CheckedBuild): number {
  const changes = changesAround(desk, checked.machine, checked.build, checked.setUpStartMin);
  return way.buildCost + changes + lateCost(desk, checked.unloadEndMin);
}

/** Cost of changeovers that a build brings at a place: its own, and the next build's after it less the one without it. */
function changesAround(desk: MoveDesk, machine: Machine, build: PlannedBuild, startMin: number): number {
  const { costing } = desk;
  const before = loadedAt(desk, machine, startMin);
  const own = costing.changeoverAmounts(machine, before, build).cost;
  const next = (desk.others.get(machine.id) ?? []).find(({ setUpStartMin }) => setUpStartMin >= startMin);
  if (!next) return own;
  const after = costing.changeoverAmounts(machine, build, next.build).cost;
  return own + after - costing.changeoverAmounts(machine, before, next.build).cost;
}

/** Cost of its orders being late, with all their other builds where they stand. */
function lateCost(desk: MoveDesk, unloadEndMin: number): number {
  const { source, build } = desk;
  return build.items.reduce((sum, { orderId, copies }) => {
    const order = source.order(orderId);
    if (!order) return sum;
    const perMin = lateCostPerDay(order, source.shop.costing) / MIN_PER_DAY;
    const dueMin = source.minute(order.dueAt);
    const own = Math.max(0, unloadEndMin - dueMin);
    if (order.perPiece) return sum + (perMin * own * copies) / order.quantity;
    return sum + perMin * Math.max(own, ...lateOthers(desk, orderId, dueMin));
  }, 0);
}

function lateOthers({ source }: MoveDesk, orderId: string, dueMin: number): number[] {
  return source.fixed
    .filter(({ build }) => build.items.some((item) => item.orderId === orderId))
    .map(({ unloadEndMin }) => unloadEndMin - dueMin);
}

function lateMinOf({ source }: MoveDesk, { build, unloadEndMin }: CheckedBuild): number {
  return build.items.reduce((most, { orderId }) => {
    const order = source.order(orderId);
    return order ? Math.max(most, unloadEndMin - source.minute(order.dueAt)) : most;
  }, 0);
}

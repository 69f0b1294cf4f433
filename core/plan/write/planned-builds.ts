import type { OrderCopies } from "../../cost/build-lines.ts";
import type { LoadedState } from "../../cost/changeover-cost.ts";
import type { CostLine } from "../../cost/cost-line.ts";
import { isoWeek, localTime } from "../../shop/local-time.ts";
import type { Machine } from "../../shop/machine.ts";
import type { PlannedBuild } from "../plan-document.ts";
import { at } from "../at.ts";
import type { PlanSource } from "./plan-source.ts";
import type { KeptBuilds } from "../replan/kept-builds.ts";
import type { ScheduledBuild } from "../schedule.ts";

/** One build as the document has it, with its cost lines as the costing gave them. */
export interface WrittenBuild {
  readonly document: PlannedBuild;
  readonly lines: readonly CostLine[];
}

/**
 * Writes the schedule's builds with ids, changeovers and cost lines, machine by machine in time order. An id is the
 * ISO week in which the plan starts, the machine's id and a running number that no build of the shop has yet: equal plans
 * have equal ids, and those of another week differ. A build that stays where an earlier plan had it keeps its id. Example: in week 49 of 2026 F1 makes 26W49-F1-1 and 26W49-F1-2.
 */
export function writeBuilds(source: PlanSource, kept: KeptBuilds = new Map()): WrittenBuild[] {
  const taken = new Set(source.shop.builds.map((build) => build.id));
  return source.problem.machines.flatMap((_, machineIndex) => {
    const builds = source.schedule.builds
      .filter((build) => build.machineIndex === machineIndex)
      .toSorted((a, b) => a.setUpStartMin - b.setUpStartMin);
    const nextId = freeIds(source, machineIndex, taken);
    return writeMachine(source, machineIndex, builds, (build) => kept.get(build) ?? nextId());
  });
}

function writeMachine(
  source: PlanSource,
  machineIndex: number,
  builds: readonly ScheduledBuild[],
  idOf: (build: ScheduledBuild) => string,
): WrittenBuild[] {
  const { machineId, startState } = at(source.problem.machines, machineIndex);
  const machine = source.machine(machineId);
  let loaded: LoadedState | null = source.problem.states[startState] ?? null;
  return builds.map((scheduled) => {
    const build = writeBuild(source, machine, scheduled, loaded, idOf(scheduled));
    loaded = build.document;
    return build;
  });
}

function writeBuild(
  source: PlanSource,
  machine: Machine,
  scheduled: ScheduledBuild,
  loaded: LoadedState | null,
  buildId: string,
): WrittenBuild {
  const items = itemsOf(source, scheduled);
  const { route } = at(items, 0);
  const { nozzleId, feedstockId, layerHeightMm, beadWidthMm, orientation } = route;
  const { minutes, purgeKg } = source.costing.changeoverAmounts(machine, loaded, route);
  const lines = [
    ...source.costing.lines(items, machine, buildId),
    ...source.costing.changeoverLines(items, machine, loaded, buildId),
  ];
  const document: PlannedBuild = {
    id: buildId,
    machineId: machine.id,
    nozzleId,
    feedstockId,
    layerHeightMm,
    beadWidthMm,
    orientation,
    items: items.map(({ orderId, copies, route: { rotationDeg } }) => ({
      orderId,
      copies,
      ...(rotationDeg === undefined ? {} : { rotationDeg }),
    })),
    setUpStart: source.instant(scheduled.setUpStartMin),
    printStart: source.instant(scheduled.printStartMin),
    printEnd: source.instant(scheduled.printEndMin),
    unloadEnd: source.instant(scheduled.unloadEndMin),
    state: "planned",
    changeoverMin: minutes,
    massKg: purgeKg + items.reduce((sum, item) => sum + item.copies * item.route.massKgPerCopy, 0),
    costLines: lines.map(plainLine),
  };
  return { document, lines };
}

function itemsOf({ problem }: PlanSource, scheduled: ScheduledBuild): OrderCopies[] {
  return scheduled.items.map(({ optionIndex, copies }) => {
    const { route, lineIndex } = at(problem.options, optionIndex);
    return { route, copies, orderId: at(problem.lines, lineIndex).orderId };
  });
}

/** A cost line as a document carries it: with an array of its own. */
export function plainLine(line: CostLine): PlannedBuild["costLines"][number] {
  return { ...line, inputs: line.inputs.map((input) => ({ ...input })) };
}

/** Gives the next id of a machine that is still free. Ids end at 64 characters: for a very long one its place in the list stands. */
function freeIds(source: PlanSource, machineIndex: number, taken: Set<string>): () => string {
  const { machineId } = at(source.problem.machines, machineIndex);
  const name = machineId.length > LONGEST_NAME ? String(machineIndex + 1) : machineId;
  const stem = `${weekText(source)}-${name}`;
  let number = 1;
  return () => {
    while (taken.has(`${stem}-${number}`)) number++;
    const id = `${stem}-${number}`;
    taken.add(id);
    return id;
  };
}

/** "26W49" */
function weekText({ problem, shop }: PlanSource): string {
  const { year, week } = isoWeek(localTime(problem.startMin, shop.timeZone).date);
  return `${twoDigits(year % 100)}W${twoDigits(week)}`;
}

function twoDigits(value: number): string {
  return String(value).padStart(2, "0");
}

const LONGEST_NAME = 50;

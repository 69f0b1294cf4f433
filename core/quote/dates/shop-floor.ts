import { askedBuilds, askedByCalendar } from "./asked-builds.ts";
import { OperatorRoom } from "./operator-room.ts";
import { RunDraws } from "./run-draws.ts";
import type { SimulationTask } from "./simulation-task.ts";

const SET_UP = 0;
const UNLOAD = 1;
const CLEAR = 2;
/** Floating-point dust that must not push work into the next shift, min. */
const DUST_MIN = 1e-6;
/** A build that failed so often in one run is given up. */
const MOST_ATTEMPTS = 1000;

/**
 * The works in one run: what goes on at each machine, piece of work by piece of work in the order of time. Whoever is ready first
 * is served first. All its arrays are made once; nothing is made anew in a run.
 */
export class ShopFloor {
  /** when each order is whole in the run just made, min from the start of the plan; Infinity: not in the time laid out */
  readonly finishedMin: Float64Array;
  /** attempts that failed, in all runs */
  failures = 0;
  /** prints that were stopped because people left, in all runs */
  stops = 0;
  private readonly task: SimulationTask;
  private readonly room: OperatorRoom;
  private readonly draws: RunDraws;
  private readonly boughtOutMin: Float64Array;
  private readonly stage: Uint8Array;
  private readonly build: Int32Array;
  private readonly attempt: Int32Array;
  private readonly window: Int32Array;
  private readonly segment: Int32Array;
  /** 1: the print was stopped, so it is known how long it takes */
  private readonly known: Uint8Array;
  /** by machine: when its next piece of work can begin; Infinity: all is done */
  private readonly readyMin: Float64Array;
  /** by machine: what its present build takes in this run */
  private readonly takesMin: Float64Array;
  private readonly machineLog: Float64Array;
  /** by build: 1 where it holds copies of an order that is asked for */
  private readonly isAsked: Uint8Array;
  /** by calendar: its builds that are asked for */
  private readonly askedIn: Int32Array;
  /** such builds of the present calendar that are still ahead: with none of them left, the rest of its time is not lived through */
  private ahead = 0;

  /** `asked`: orders whose finishes are wanted, by their places in the task. */
  constructor(task: SimulationTask, asked: ReadonlySet<number>) {
    const machines = task.machines.ids.length;
    this.isAsked = askedBuilds(task, asked);
    this.askedIn = askedByCalendar(task, this.isAsked);
    this.task = task;
    this.room = new OperatorRoom(task.calendars, machines);
    this.draws = new RunDraws(task);
    this.boughtOutMin = Float64Array.from(task.orders, (order) =>
      order.missingCopies > 0 ? Infinity : (order.boughtOutMin ?? -Infinity),
    );
    this.finishedMin = new Float64Array(task.orders.length);
    this.stage = new Uint8Array(machines);
    this.build = new Int32Array(machines);
    this.attempt = new Int32Array(machines);
    this.window = new Int32Array(machines);
    this.segment = new Int32Array(machines);
    this.known = new Uint8Array(machines);
    this.readyMin = new Float64Array(machines);
    this.takesMin = new Float64Array(machines);
    this.machineLog = new Float64Array(machines);
  }

  /** Makes one run of some calendars, which share nothing; `finishedMin` has its answer. */
  run(seed: number, run: number, calendars: Int32Array): void {
    const { machineFrom } = this.task.calendars;
    this.draws.open(seed, run);
    this.finishedMin.set(this.boughtOutMin);
    for (let at = 0; at < calendars.length; at++) {
      const calendar = calendars[at]!;
      this.runCalendar(calendar, machineFrom[calendar]!, machineFrom[calendar + 1]!);
    }
  }

  private runCalendar(calendar: number, from: number, to: number): void {
    this.room.open(calendar);
    this.ahead = this.askedIn[calendar]!;
    for (let machine = from; machine < to; machine++) this.openMachine(machine);
    while (this.ahead > 0) {
      let first = from;
      for (let machine = from + 1; machine < to; machine++) {
        if (this.readyMin[machine]! < this.readyMin[first]!) first = machine;
      }
      const nowMin = this.readyMin[first]!;
      if (nowMin === Infinity) return;
      this.room.passTo(nowMin);
      if (this.stage[first] === SET_UP) this.setUp(first, nowMin);
      else if (this.stage[first] === UNLOAD) this.unload(first, nowMin);
      else this.clear(first, nowMin);
    }
  }

  private openMachine(machine: number): void {
    const { buildFrom, windowFrom, segmentFrom } = this.task.machines;
    this.window[machine] = windowFrom[machine]!;
    this.segment[machine] = segmentFrom[machine]!;
    this.machineLog[machine] = this.draws.machineLog(machine);
    this.build[machine] = buildFrom[machine]!;
    this.openBuild(machine, -Infinity);
  }

  /** Turns to the machine's present build, not before a given time. */
  private openBuild(machine: number, fromMin: number): void {
    const { builds, machines } = this.task;
    const build = this.build[machine]!;
    if (build >= machines.buildFrom[machine + 1]!) {
      this.readyMin[machine] = Infinity;
      return;
    }
    this.attempt[machine] = 0;
    this.known[machine] = 0;
    this.takesMin[machine] = this.draws.runMin(build, this.machineLog[machine]!);
    this.stage[machine] = SET_UP;
    this.readyMin[machine] = Math.max(fromMin, builds.earliestMin[build]!);
    const begunMin = builds.begunMin[build]!;
    if (!Number.isNaN(begunMin)) this.print(machine, begunMin, Math.max(0, -begunMin));
  }

  private setUp(machine: number, nowMin: number): void {
    const { setUpMin, againMin, setUpAtMin, fixed } = this.task.builds;
    const build = this.build[machine]!;
    const isFirst = this.attempt[machine] === 0;
    const lengthMin = isFirst ? setUpMin[build]! : againMin[build]!;
    const plannedMin = setUpAtMin[build]!;
    const isEarly = isFirst && nowMin < plannedMin;
    const asFixed = isFirst && fixed[build] === 1 && nowMin === plannedMin;
    const beforeMin = isEarly ? plannedMin : Infinity;
    const startMin = asFixed ? nowMin : this.setUpFrom(machine, nowMin, lengthMin, beforeMin);
    if (startMin === Infinity && isEarly) this.readyMin[machine] = plannedMin;
    else if (startMin === Infinity) this.giveUp(machine, nowMin);
    else {
      this.room.take(startMin, startMin + lengthMin, isEarly);
      this.print(machine, startMin + lengthMin, 0);
    }
  }

  /** Prints from a time on; so much of it is done already and did not fail. */
  private print(machine: number, startMin: number, doneMin: number): void {
    const { builds, machines, chances } = this.task;
    const build = this.build[machine]!;
    const takesMin = this.takesMin[machine]!;
    const attempt = this.attempt[machine]!;
    const hazard = machines.hazardPerMin[machine]!;
    const failsMin = doneMin + this.draws.failsAfterMin(build, attempt, hazard, takesMin - doneMin);
    const isFixed = attempt === 0 && builds.fixed[build] === 1;
    const lastMin = isFixed ? Infinity : machines.segmentLastMin[this.segment[machine]!]!;
    const seenMin = failsMin < takesMin && !chances.seenAtEnd ? failsMin : takesMin;
    const isStopped = startMin + seenMin > lastMin + DUST_MIN;
    this.attempt[machine] = attempt + 1;
    this.readyMin[machine] = isStopped ? lastMin : startMin + seenMin;
    this.stage[machine] = isStopped || failsMin < takesMin ? CLEAR : UNLOAD;
    if (isStopped) {
      this.known[machine] = 1;
      this.stops++;
    } else if (failsMin < takesMin) this.failures++;
  }

  private clear(machine: number, nowMin: number): void {
    const lengthMin = this.task.machines.unloadMin[machine]!;
    const isHopeless = this.attempt[machine]! >= MOST_ATTEMPTS;
    const startMin = isHopeless ? Infinity : this.workFrom(machine, nowMin, lengthMin);
    if (startMin === Infinity) {
      this.giveUp(machine, nowMin);
      return;
    }
    this.room.take(startMin, startMin + lengthMin, false);
    this.stage[machine] = SET_UP;
    this.readyMin[machine] = startMin + lengthMin;
  }

  private unload(machine: number, nowMin: number): void {
    const { unloadAtMin, fixed } = this.task.builds;
    const build = this.build[machine]!;
    const plannedMin = unloadAtMin[build]!;
    const lengthMin = this.task.machines.unloadMin[machine]!;
    let startMin: number;
    if (nowMin < plannedMin) {
      startMin = this.earlyFrom(machine, nowMin, lengthMin, plannedMin);
      if (startMin === Infinity) {
        this.readyMin[machine] = plannedMin;
        return;
      }
    } else if (fixed[build] === 1 && nowMin === plannedMin) startMin = plannedMin;
    else startMin = this.workFrom(machine, nowMin, lengthMin);
    if (startMin === Infinity) this.giveUp(machine, nowMin);
    else this.finish(machine, startMin, lengthMin, startMin < plannedMin);
  }

  private finish(machine: number, startMin: number, lengthMin: number, early: boolean): void {
    this.room.take(startMin, startMin + lengthMin, early);
    this.record(machine, startMin + lengthMin);
    this.build[machine] = this.build[machine]! + 1;
    this.openBuild(machine, startMin + lengthMin);
  }

  /** No time is left in which this build could be made: its orders are never whole, and the machine goes on with the next. */
  private giveUp(machine: number, nowMin: number): void {
    this.window[machine] = this.task.machines.windowFrom[machine]!;
    this.segment[machine] = this.task.machines.segmentFrom[machine]!;
    this.record(machine, Infinity);
    this.build[machine] = this.build[machine]! + 1;
    this.openBuild(machine, nowMin);
  }

  private record(machine: number, endMin: number): void {
    const { orderFrom, orderIndex } = this.task.builds;
    const build = this.build[machine]!;
    this.ahead -= this.isAsked[build]!;
    for (let at = orderFrom[build]!; at < orderFrom[build + 1]!; at++) {
      const order = orderIndex[at]!;
      if (this.finishedMin[order]! < endMin) this.finishedMin[order] = endMin;
    }
  }

  /** First time from `fromMin` on at which somebody is free for so long, within one staffed stretch of the machine. */
  private workFrom(machine: number, fromMin: number, lengthMin: number): number {
    for (let atMin = fromMin; ; ) {
      const startMin = this.windowFrom(machine, atMin, lengthMin);
      if (startMin === Infinity) return Infinity;
      atMin = this.room.freeFrom(startMin, startMin + lengthMin);
      if (atMin <= startMin) return startMin;
    }
  }

  /**
   * The same before a time of the plan, with people whom the plan leaves free until then (from then on one is its own);
   * Infinity: not before that time.
   */
  private earlyFrom(machine: number, fromMin: number, lengthMin: number, beforeMin: number): number {
    for (let atMin = fromMin; atMin < beforeMin; ) {
      const startMin = this.windowFrom(machine, atMin, lengthMin);
      if (startMin >= beforeMin) return Infinity;
      const endMin = startMin + lengthMin;
      const spareMin = this.room.spareFrom(startMin, Math.min(endMin, beforeMin));
      atMin = Math.max(this.room.freeFrom(startMin, endMin), spareMin);
      if (atMin <= startMin) return startMin;
    }
    return Infinity;
  }

  /**
   * The same for a set-up, before a time of the plan or (Infinity) at any time: its print must be over in its segment by the
   * estimate; where it was stopped once, by what it is known to take.
   */
  private setUpFrom(machine: number, fromMin: number, lengthMin: number, beforeMin: number): number {
    const { segmentFrom, segmentStartMin, segmentEndMin, segmentByMin, segmentLastMin } = this.task.machines;
    const isKnown = this.known[machine] === 1;
    const needMin =
      lengthMin + (isKnown ? this.takesMin[machine]! : this.task.builds.runMin[this.build[machine]!]!);
    const ends = isKnown ? segmentLastMin : segmentByMin;
    for (let atMin = fromMin; ; ) {
      const startMin =
        beforeMin === Infinity
          ? this.workFrom(machine, atMin, lengthMin)
          : this.earlyFrom(machine, atMin, lengthMin, beforeMin);
      let segment = this.segment[machine]!;
      while (segment < segmentFrom[machine + 1]! && segmentEndMin[segment]! <= startMin) segment++;
      if (startMin === Infinity || segment === segmentFrom[machine + 1]!) return Infinity;
      this.segment[machine] = segment;
      if (startMin + needMin <= ends[segment]! + DUST_MIN) return startMin;
      if (segment + 1 === segmentFrom[machine + 1]!) return Infinity;
      atMin = segmentStartMin[segment + 1]!;
    }
  }

  /** First time from `fromMin` on at which the machine's staffed time has room for so long. */
  private windowFrom(machine: number, fromMin: number, lengthMin: number): number {
    const { windowFrom, windowStartMin, windowEndMin } = this.task.machines;
    const to = windowFrom[machine + 1]!;
    let window = this.window[machine]!;
    for (; window < to; window++) {
      const startMin = Math.max(fromMin, windowStartMin[window]!);
      if (startMin + lengthMin > windowEndMin[window]! + DUST_MIN) continue;
      this.window[machine] = window;
      return startMin;
    }
    return Infinity;
  }
}

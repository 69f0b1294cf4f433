import type { TaskCalendars } from "./simulation-task.ts";

/**
 * Who is at work in one calendar of one run: set-ups, clearings and unloads that are going on or are put down for later. Asked
 * in order of time, so what is over is forgotten. Nothing is made anew while it runs.
 */
export class OperatorRoom {
  private readonly calendars: TaskCalendars;
  private readonly startMin: Float64Array;
  private readonly endMin: Float64Array;
  /** 1: it was begun before its time in the plan, with people whom the plan leaves free */
  private readonly early: Uint8Array;
  private count = 0;
  private stretch = 0;
  private stretchTo = 0;
  private spareStretch = 0;
  private spareTo = 0;

  /** `machines` is the most machines of one calendar: each has at most one piece of work at a time. */
  constructor(calendars: TaskCalendars, machines: number) {
    this.calendars = calendars;
    this.startMin = new Float64Array(machines + 1);
    this.endMin = new Float64Array(machines + 1);
    this.early = new Uint8Array(machines + 1);
  }

  /** Begins a run of one calendar with nobody at work. */
  open(calendar: number): void {
    this.count = 0;
    this.stretch = this.calendars.stretchFrom[calendar]!;
    this.stretchTo = this.calendars.stretchFrom[calendar + 1]!;
    this.spareStretch = this.calendars.spareFrom[calendar]!;
    this.spareTo = this.calendars.spareFrom[calendar + 1]!;
  }

  /** Forgets what is over by now; nothing is asked about earlier times any more. */
  passTo(nowMin: number): void {
    const { stretchEndMin, spareEndMin } = this.calendars;
    while (this.stretch < this.stretchTo && stretchEndMin[this.stretch]! <= nowMin) this.stretch++;
    while (this.spareStretch < this.spareTo && spareEndMin[this.spareStretch]! <= nowMin) this.spareStretch++;
    for (let index = this.count - 1; index >= 0; index--) {
      if (this.endMin[index]! > nowMin) continue;
      const last = --this.count;
      this.startMin[index] = this.startMin[last]!;
      this.endMin[index] = this.endMin[last]!;
      this.early[index] = this.early[last]!;
    }
  }

  take(startMin: number, endMin: number, early: boolean): void {
    this.startMin[this.count] = startMin;
    this.endMin[this.count] = endMin;
    this.early[this.count] = early ? 1 : 0;
    this.count++;
  }

  /** `startMin` where somebody is free all through `startMin` to `endMin`; else the next time at which to ask again. */
  freeFrom(startMin: number, endMin: number): number {
    const { stretchStartMin, stretchEndMin, operators } = this.calendars;
    const busy = this.busyIn(startMin, endMin, false);
    for (let at = this.stretch; at < this.stretchTo && stretchStartMin[at]! < endMin; at++) {
      if (stretchEndMin[at]! <= startMin || busy < operators[at]!) continue;
      const untilMin = this.shortUntil(
        Math.max(startMin, stretchStartMin[at]!),
        Math.min(endMin, stretchEndMin[at]!),
        operators[at]!,
        false,
      );
      if (untilMin > startMin) return Math.min(untilMin, stretchEndMin[at]!);
    }
    return startMin;
  }

  /** The same for work before its time in the plan: only people whom the plan leaves free, less other early work. */
  spareFrom(startMin: number, endMin: number): number {
    const { spareStartMin, spareEndMin, spare } = this.calendars;
    const busy = this.busyIn(startMin, endMin, true);
    for (let at = this.spareStretch; at < this.spareTo && spareStartMin[at]! < endMin; at++) {
      if (spareEndMin[at]! <= startMin || busy < spare[at]!) continue;
      const untilMin = this.shortUntil(
        Math.max(startMin, spareStartMin[at]!),
        Math.min(endMin, spareEndMin[at]!),
        spare[at]!,
        true,
      );
      if (untilMin > startMin) return Math.min(untilMin, spareEndMin[at]!);
    }
    return startMin;
  }

  /** Pieces of work that share time with a stretch. */
  private busyIn(startMin: number, endMin: number, earlyOnly: boolean): number {
    let busy = 0;
    for (let index = 0; index < this.count; index++) {
      if (earlyOnly && this.early[index] === 0) continue;
      if (this.startMin[index]! < endMin && this.endMin[index]! > startMin) busy++;
    }
    return busy;
  }

  /** Within a stretch, when the first shortage of people is over; -Infinity: there is none. */
  private shortUntil(startMin: number, endMin: number, operators: number, earlyOnly: boolean): number {
    let untilMin = this.shortAt(startMin, operators, earlyOnly);
    for (let index = 0; index < this.count && untilMin === -Infinity; index++) {
      const atMin = this.startMin[index]!;
      if (atMin > startMin && atMin < endMin) untilMin = this.shortAt(atMin, operators, earlyOnly);
    }
    return untilMin;
  }

  /** When the first of those at work at a moment is free, where all operators are at work; -Infinity: somebody is free. */
  private shortAt(atMin: number, operators: number, earlyOnly: boolean): number {
    if (operators <= 0) return Infinity;
    let busy = 0;
    let firstMin = Infinity;
    for (let index = 0; index < this.count; index++) {
      if (earlyOnly && this.early[index] === 0) continue;
      if (this.startMin[index]! > atMin || this.endMin[index]! <= atMin) continue;
      busy++;
      firstMin = Math.min(firstMin, this.endMin[index]!);
    }
    return busy < operators ? -Infinity : firstMin;
  }
}

import type { Route } from "../estimate/route.ts";

/** A stretch of time in epoch minutes, end excluded. */
export interface Stretch {
  readonly startMin: number;
  readonly endMin: number;
}

/** A staffed stretch with a constant number of operators (those who can set up or unload at once). */
export interface OperatorStretch extends Stretch {
  readonly operators: number;
}

/** One calendar as instants. Everything is sorted and disjoint. */
export interface WorkingTime {
  readonly calendarId: string;
  /** staffed time: shifts that touch are joined; a stretch with no operators still counts as staffed */
  readonly windows: readonly Stretch[];
  /** the same time cut where the number of operators changes */
  readonly operators: readonly OperatorStretch[];
  /** closed days: nothing prints and nobody is there */
  readonly closures: readonly Stretch[];
}

/** Feedstock and nozzle that a machine has loaded. */
export interface SetUpState {
  readonly feedstockId: string;
  readonly nozzleId: string;
  readonly family: string;
}

/** Machines that differ in nothing but id, name, what is loaded, committed builds and times out of service. */
export interface MachineClass {
  readonly machineIndices: readonly number[];
  readonly calendarIndex: number;
  readonly process: "filament" | "pellet";
  readonly setUpMin: number;
  readonly unloadMin: number;
  readonly mixedPlatform: boolean;
  readonly unattended: boolean;
  /** longest unstaffed gap a print may span, min; 0 unless unattended; Infinity where no limit was set */
  readonly unattendedMaxMin: number;
  /** platform inside the margin, mm */
  readonly platformMm: { readonly x: number; readonly y: number };
  readonly partGapMm: number;
  /** minutes to change from one state to another: [from * states + to]; row `states` (the last) is "nothing loaded" */
  readonly changeoverMin: Float64Array;
  /** money of that change: machine and operator time, purge, overhead */
  readonly changeoverCost: Float64Array;
}

/** One machine in time. */
export interface PlanMachine {
  readonly machineId: string;
  readonly classIndex: number;
  /** no planned build starts before: plan start, or the end of its committed builds */
  readonly freeFromMin: number;
  /** what is loaded then: index into states, or `states.length` for nothing */
  readonly startState: number;
  /** times out of service: a build's whole interval (set-up start to unload end) stays clear of them */
  readonly blocks: readonly Stretch[];
  /** staffed time in which this machine can be set up and unloaded (blocks taken out, from freeFromMin on) */
  readonly windows: readonly Stretch[];
  /**
   * stretches of time in which one print may run without leaving them: the windows; where the machine may run unattended,
   * windows joined over the gaps it may span; cut by closures and blocks
   */
  readonly segments: readonly Stretch[];
}

/** One way to make one order line on one class of machines. */
export interface PlanOption {
  readonly index: number;
  readonly lineIndex: number;
  readonly classIndex: number;
  readonly stateIndex: number;
  readonly route: Route;
  /** options with equal keys may share a platform (same class, state, layer height, bead and orientation); -1: never shares */
  readonly mixKey: number;
  readonly copiesMin: number;
  /** most copies of this line in one build: platform, layer time, and the quantity wanted */
  readonly copiesMax: number;
  /** most copies the platform takes, whatever the quantity wanted */
  readonly platformCopies: number;
  /** run time by copies (index = copies), whole min, warm-up and cool-down included; index 0 unused */
  readonly runMinByCopies: Float64Array;
  /** money of one build of so many copies, without changeover, engineering and lateness; overhead included */
  readonly costByCopies: Float64Array;
  /** index into engineering, or -1 where the tool paths exist */
  readonly engineeringIndex: number;
  /** machine indices it may run on (pins respected) */
  readonly machineIndices: readonly number[];
}

/** One order line as the search sees it. */
export interface PlanLine {
  readonly index: number;
  readonly orderId: string;
  readonly partId: string;
  /** copies still to be made (ordered less good, committed and running ones) */
  readonly quantity: number;
  readonly releaseMin: number;
  readonly dueMin: number;
  /** cost of the whole line being late, per min */
  readonly lateCostPerMin: number;
  readonly allowLate: boolean;
  /** true: each copy is late by itself (its share of the line's cost); false: the line is as late as its last copy */
  readonly perPiece: boolean;
  /** copies ordered in all: the share of one copy is 1 / orderedCopies */
  readonly orderedCopies: number;
  readonly optionIndices: readonly number[];
  /** having copies made elsewhere: price of one, and when they arrive */
  readonly buyOut: { readonly pricePerPiece: number; readonly arriveMin: number } | null;
}

/** Tool paths of one part for one process: paid once by the plan, whichever lines use them. */
export interface EngineeringItem {
  readonly partId: string;
  readonly process: "filament" | "pellet";
  readonly cost: number;
}

/** A build of an earlier plan that is still ahead and that nobody has committed. */
export interface EarlierBuild {
  readonly buildId: string;
  readonly machineIndex: number;
  /** what it makes and how; empty where there is no such way any more, so that it cannot stay */
  readonly items: readonly { readonly optionIndex: number; readonly copies: number }[];
  readonly setUpStartMin: number;
  /** it stays where it was if its set-up starts at most so much earlier or later, min */
  readonly aboutMin: number;
}

/** What an earlier plan had put in place, and what it costs to move one build of it. */
export interface Replan {
  readonly costPerBuild: number;
  readonly builds: readonly EarlierBuild[];
}

/**
 * The whole planning problem in numbers: made once from a shop, then shared by the linear program, the search and the
 * reports. Times are whole epoch minutes, money is in major units. Every line has an option or a buy-out.
 */
export interface PlanProblem {
  readonly startMin: number;
  readonly horizonEndMin: number;
  readonly calendars: readonly WorkingTime[];
  readonly states: readonly SetUpState[];
  readonly classes: readonly MachineClass[];
  readonly machines: readonly PlanMachine[];
  readonly lines: readonly PlanLine[];
  readonly options: readonly PlanOption[];
  readonly engineering: readonly EngineeringItem[];
  /** set-ups and unloads of committed builds that still lie ahead: they use operators */
  readonly committedWork: readonly { readonly calendarIndex: number; readonly stretch: Stretch }[];
  /** builds of an earlier plan and the cost of moving one; left out: there are none */
  readonly replan?: Replan;
  /** cost of every minute until the last unload, from the start of the plan; left out: none */
  readonly makespanCostPerMin?: number;
  /** cost of a build with several items, as `costByCopies` is for one */
  readonly mixedCost: (items: readonly { readonly optionIndex: number; readonly copies: number }[]) => number;
}

import type { PlanProblem } from "./plan-problem.ts";
import type { SearchTask, WeekRequest } from "./plan-week.ts";
import type { Schedule } from "./schedule.ts";
import { searchSchedule } from "./search/search.ts";
import type { Shop } from "../shop/shop.ts";

/** What a member of the team is given once. */
export interface MemberData {
  readonly shop: Shop;
  readonly request: WeekRequest;
  /** one 32-bit cell, not 0: stop; null where threads cannot share memory */
  readonly stop: SharedArrayBuffer | null;
}

/** What it is told. */
export interface SearchOrder {
  readonly start: SearchTask["start"];
  readonly seed: number;
  /** seconds from now */
  readonly seconds: number;
  readonly goodEnough: number;
}

/** What it answers: better plans on the way, and the best at the end. */
export interface SearchNews {
  readonly kind: "better" | "done";
  readonly schedule: Schedule;
}

/** One thread, of whatever kind the place has. */
export interface TeamMember {
  readonly tell: (order: SearchOrder) => void;
  /** called once, before `tell` */
  readonly hear: (onNews: (news: SearchNews) => void, onFault: (fault: unknown) => void) => void;
  readonly end: () => unknown;
}

/** What the place lends: a clock, ms, and how a thread is started. */
export interface TeamTools {
  readonly now: () => number;
  readonly startMember: (data: MemberData) => TeamMember;
}

const MEMBERS = 2;

/** Searches on threads with different seeds; the best plan wins. The threads warm up while the bound is being proven. */
export class SearchTeam {
  private readonly data: MemberData;
  private readonly tools: TeamTools;
  /** true once somebody asked to stop */
  readonly stopped: () => boolean;
  private members: TeamMember[] = [];

  constructor(data: MemberData, tools: TeamTools) {
    this.data = data;
    this.tools = tools;
    this.stopped = stopReader(data.stop);
  }

  /** Starts the threads; each reads the shop for itself while others work. */
  start(): void {
    this.members = Array.from({ length: MEMBERS }, () => this.tools.startMember(this.data));
  }

  /** Runs every member to the end of the time, or one to a plan that is good enough, and gives the cheapest schedule. */
  async search(task: SearchTask): Promise<Schedule> {
    const runs = this.members.map((member, index) => this.runMember(member, task, task.seed + index));
    const all = Promise.all(runs).then((schedules) =>
      schedules.reduce((best, schedule) => (task.better(schedule, best) ? schedule : best)),
    );
    const first = await Promise.race([all, ...runs.map((run) => goodOrNever(run, task.goodEnough))]);
    // Whoever still searches has lost.
    await this.close();
    return first;
  }

  async close(): Promise<void> {
    await Promise.all(this.members.map((member) => member.end()));
  }

  private runMember(member: TeamMember, task: SearchTask, seed: number): Promise<Schedule> {
    const { start, goodEnough } = task;
    return new Promise((resolve, reject) => {
      member.hear(({ kind, schedule }) => {
        if (kind === "done") resolve(schedule);
        else task.onBetter(schedule);
      }, reject);
      const seconds = Math.max(0, (task.untilMs - this.tools.now()) / 1000);
      member.tell({ start, seed, seconds, goodEnough });
    });
  }
}

/** What a member does with an order: searches here until its time is up, telling better plans on the way. */
export function runSearchOrder(
  problem: PlanProblem,
  { start, seed, seconds, goodEnough }: SearchOrder,
  stop: SharedArrayBuffer | null,
  { now, tell }: { readonly now: () => number; readonly tell: (news: SearchNews) => void },
): void {
  const isStopped = stopReader(stop);
  const schedule = searchSchedule(problem, start, {
    seed,
    now,
    untilMs: now() + seconds * 1000,
    goodEnough,
    stopped: isStopped,
    onBetter: (better) => tell({ kind: "better", schedule: better }),
  });
  tell({ kind: "done", schedule });
}

/** Gives a schedule that places every copy at a cost that is good enough; of any other nothing is ever heard. */
function goodOrNever(run: Promise<Schedule>, goodEnough: number): Promise<Schedule> {
  return new Promise((resolve, reject) => {
    run.then((schedule) => {
      if (schedule.unplaced.length === 0 && schedule.cost <= goodEnough + DUST) resolve(schedule);
    }, reject);
  });
}

/** Sums of money that differ by less are equal. */
const DUST = 1e-6;

function stopReader(stop: SharedArrayBuffer | null): () => boolean {
  if (stop === null) return () => false;
  const cell = new Int32Array(stop);
  return () => Atomics.load(cell, 0) !== 0;
}

import type { WarmEngine } from "../plan/engines/warm-highs.ts";
import type { LinearProgram } from "../plan/linear-program.ts";
import { fleetModel } from "./fleet-model.ts";
import { type LineSizes, lineSizes } from "./line-sizes.ts";
import { linesByPart, OrderQueue, type Settled } from "./order-queue.ts";
import type { ScenarioJob, ScenarioResult, WeekResult } from "./scenario-job.ts";
import type { DemandLine, WeekDemand } from "./scenarios.ts";
import { type OpenShares, openShares } from "./open-share.ts";
import { weekNumbers, type WeekInput } from "./week-numbers.ts";
import { weekProgram, type WeekProgram } from "./week-program.ts";
import { WeekReading } from "./week-result.ts";
import { firstState, nextState, type WeekState } from "./week-state.ts";

/** Fleets that were compiled already; one for each thread. Keeps the last few. */
export class FleetStore {
  private readonly known = new Map<string, OpenFleet>();
  private readonly engine: WarmEngine;

  constructor(engine: WarmEngine) {
    this.engine = engine;
  }

  /** The fleet of a job, compiled where it is new. */
  of(job: ScenarioJob): OpenFleet {
    const sizes = job.lineSizes ?? lineSizes(job.scenario.weeks.flatMap(({ lines }) => lines));
    const key = JSON.stringify([job.shop, job.fromMin, job.knownWeeksAhead, sizes]);
    const known = this.known.get(key) ?? this.compile(job, sizes);
    this.known.delete(key);
    this.known.set(key, known);
    for (const [oldest, fleet] of this.known) {
      if (this.known.size <= MOST_FLEETS) break;
      fleet.warm?.close();
      this.known.delete(oldest);
    }
    return known;
  }

  private compile(job: ScenarioJob, sizes: readonly LineSizes[]): OpenFleet {
    const fleet = fleetModel({ shop: job.shop, fromMin: job.fromMin, lineSizes: sizes });
    const program = weekProgram(fleet, job.knownWeeksAhead);
    if (fleet.parts.length === 0) return { program, base: null, warm: null };
    const base = program.columns.program(program.rows);
    return { program, base, warm: this.engine.open(base) };
  }

  close(): void {
    for (const { warm } of this.known.values()) warm?.close();
    this.known.clear();
  }
}

const MOST_FLEETS = 8;

/** A compiled fleet with its weekly program in the solver; none where no part can be made or bought. */
interface OpenFleet {
  readonly program: WeekProgram;
  readonly base: LinearProgram | null;
  readonly warm: ReturnType<WarmEngine["open"]> | null;
}

/**
 * Runs one scenario week by week: each week's linear program starts from the backlog, the loaded states and the left-over
 * hours of the week before. What is decided in a week looks no further than its end: a copy left open then costs its least cost
 * and its lateness until the next week. The same job gives the same result. Example: one week, one line of 10 copies that a machine
 * makes at 3 each: feedstock, machine and labour of 30 in all.
 */
export function runScenarioJob(job: ScenarioJob, fleets: FleetStore): ScenarioResult {
  const open = fleets.of(job);
  open.warm?.restart(job.seed);
  const run = new ScenarioRun(job, open);
  return { weeks: job.scenario.weeks.map((demand, week) => run.week(week, demand)) };
}

class ScenarioRun {
  private readonly job: ScenarioJob;
  private readonly fleet: OpenFleet;
  private readonly queues: readonly OrderQueue[];
  private readonly shares: OpenShares;
  private state: WeekState;

  constructor(job: ScenarioJob, fleet: OpenFleet) {
    const { problem, week } = fleet.program.fleet;
    this.job = job;
    this.fleet = fleet;
    this.queues = fleet.program.parts.map(() => new OrderQueue(week.slots, job.patienceWeeks));
    this.shares = openShares(job.shop, problem, job.scenario.weeks.length);
    this.state = firstState(fleet.program);
  }

  week(week: number, demand: WeekDemand): WeekResult {
    const { program } = this.fleet;
    const byPart = linesByPart(demand);
    const parts = program.fleet.parts.map(({ partId }, index) =>
      this.queues[index]!.open(week, byPart.get(partId) ?? []),
    );
    for (const { partId } of program.fleet.parts) byPart.delete(partId);
    const { state, shares } = this;
    const { patienceWeeks } = this.job;
    const input: WeekInput = { week, parts, state, shares, patienceWeeks };
    const { values, objective, supplies } = this.solve(input);
    const reading = new WeekReading(program, values, input);
    const settled = this.queues.map((queue, index) => queue.settle(week, reading.outcome(index)));
    const backlog = this.queues.reduce((sum, { copies }) => sum + copies, 0);
    this.state = nextState(program, this.state, { values, stateHours: reading.stateHours, supplies });
    settled.push(allLost([...byPart.values()].flat()));
    return reading.result(settled, backlog, demand.lines.length, objective);
  }

  private solve(input: WeekInput): { values: Float64Array; objective: number; supplies: readonly number[] } {
    const { program, base, warm } = this.fleet;
    if (!base || !warm)
      return { values: new Float64Array(program.columns.cost.length), objective: 0, supplies: [] };
    const { news, supplies } = weekNumbers(program, base, input);
    warm.change(news);
    const answer = warm.solve();
    if (!answer) throw new Error(`the weekly program of week ${input.week + 1} has no optimum`);
    return { ...answer, supplies };
  }
}

/** Lines of parts that this fleet can neither make nor buy. */
function allLost(lines: readonly DemandLine[]): Settled {
  return {
    revenue: 0,
    lostRevenue: lines.reduce((sum, { quantity, pricePerPiece }) => sum + quantity * (pricePerPiece ?? 0), 0),
    lostOrders: lines.length,
    lateOrders: 0,
    lostUnpricedCopies: lines.reduce(
      (sum, line) => sum + (line.pricePerPiece === null ? line.quantity : 0),
      0,
    ),
  };
}

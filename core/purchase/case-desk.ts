import { minuteOfLocal, dayNumberOf } from "../shop/instants.ts";
import type { PurchaseCase } from "../shop/purchase-case.ts";
import type { Shop } from "../shop/shop.ts";
import { dayOfWeek } from "../shop/week-number.ts";
import { applyCandidates } from "./apply-candidate.ts";
import { cashShop } from "./cash-terms.ts";
import type { Demand } from "./demand.ts";
import { type LineSizes, lineSizes } from "./line-sizes.ts";
import type { SampleJob, SampleWeek } from "./sample-week.ts";
import { drawWeeks, sampleGap, type SampleGap } from "./sample-plans.ts";
import type { ScenarioJob, ScenarioResult } from "./scenario-job.ts";
import { makeScenarios, type ScenarioDemand, type WeekDemand } from "./scenarios.ts";

/** Results that are known already, by key. A Map will do; the outside may keep them in files. */
export interface ResultCache {
  readonly get: (key: string) => ScenarioResult | undefined;
  readonly set: (key: string, result: ScenarioResult) => unknown;
}

/** What the outside lends: threads for jobs, a hash, and a cache that may outlive the run. */
export interface CaseTools {
  /** runs jobs anywhere and in any order; those not started when `stopped` says yes are left out */
  readonly runJobs: (
    jobs: readonly ScenarioJob[],
    onResult: (index: number, result: ScenarioResult) => void,
    stopped: () => boolean,
  ) => Promise<void>;
  /** the same for weeks planned in full; left out: none are, and nothing is known of the gap */
  readonly runSamples?: (
    jobs: readonly SampleJob[],
    onResult: (index: number, result: SampleWeek) => void,
    stopped: () => boolean,
  ) => Promise<void>;
  /** a hash of a text that no two inputs share, such as SHA-256 in hexadecimal */
  readonly hash: (text: string) => string;
  readonly cache?: ResultCache;
  readonly stopped?: () => boolean;
}

/** How much of a case to work out; what is left out is as the case says. */
export interface CaseExtent {
  readonly scenarios?: number;
  readonly weeks?: number;
  readonly demandFactor?: number;
}

/**
 * Orders are taken to be known one week before the week they are due in: demand has no date of ordering. What a week leaves
 * unused can make orders of the next, and bought copies may be ordered a week earlier.
 */
export const KNOWN_WEEKS_AHEAD = 1;

/** A case opened for questions: fleets with any candidates on its scenarios, each job run once and then remembered. */
export class CaseDesk {
  readonly scenarios: number;
  readonly fromMin: number;
  private readonly shop: Shop;
  private readonly purchaseCase: PurchaseCase;
  private readonly demand: Demand;
  private readonly tools: CaseTools;
  private readonly sizes: readonly LineSizes[];
  private readonly cache: ResultCache;
  private readonly fleets = new Map<string, { readonly shop: Shop; readonly hash: string }>();

  constructor(shop: Shop, purchaseCase: PurchaseCase, demand: Demand, tools: CaseTools) {
    const startDay = dayNumberOf(purchaseCase.startsOn);
    this.shop = shop;
    this.purchaseCase = purchaseCase;
    this.demand = demand;
    this.tools = tools;
    this.scenarios = purchaseCase.scenarios;
    this.fromMin = minuteOfLocal(startDay - dayOfWeek(startDay), 0, shop.timeZone);
    this.sizes = sizesOf(demand);
    this.cache = tools.cache ?? new Map<string, ScenarioResult>();
  }

  /**
   * Results of several fleets, each the shop with the candidates named (none: the shop as it is), on the same scenarios. In the
   * order of the fleets; of each only the scenarios that all fleets have, so that a stopped run still compares like with like.
   */
  async results(
    fleets: readonly (readonly string[])[],
    extent: CaseExtent = {},
    onDone: (done: number, all: number) => void = () => {},
  ): Promise<ScenarioResult[][]> {
    const demands = this.demandsOf(extent);
    const wanted = demands.flatMap((scenario) => fleets.map((ids) => this.keyedJob(ids, scenario)));
    const found = wanted.map(({ key }) => this.cache.get(key));
    const missing = wanted.flatMap((each, index) => (found[index] ? [] : [{ ...each, index }]));
    let done = wanted.length - missing.length;
    onDone(done, wanted.length);
    const take = (at: number, result: ScenarioResult): void => {
      const { key, index } = missing[at]!;
      this.cache.set(key, result);
      found[index] = result;
      onDone(++done, wanted.length);
    };
    const stopped = this.tools.stopped ?? (() => false);
    if (missing.length > 0)
      await this.tools.runJobs(
        missing.map(({ job }) => job),
        take,
        stopped,
      );
    return paired(found, fleets.length);
  }

  /**
   * How far weekly programs are from real plans, by weeks planned in full: the first so many of the same few weeks on each of
   * several fleets. null where the tools plan none, or stopped before.
   */
  async gap(
    fleets: readonly { readonly candidateIds: readonly string[]; readonly weeks: number }[],
    onDone: (done: number, all: number) => void = () => {},
  ): Promise<SampleGap | null> {
    const { runSamples, stopped = () => false } = this.tools;
    const { seed } = this.purchaseCase;
    const demands = this.demandsOf({}).map(({ demand }) => demand);
    const drawn = drawWeeks(demands, Math.max(...fleets.map(({ weeks }) => weeks)), seed);
    const jobs = fleets.flatMap(({ candidateIds, weeks }, fleet) =>
      drawn.slice(0, weeks).map((week) => ({ fleet, job: this.sampleJob(candidateIds, week) })),
    );
    if (!runSamples || jobs.length === 0 || stopped()) return null;
    const found: SampleWeek[] = [];
    let done = 0;
    const take = (index: number, result: SampleWeek): void => {
      found[index] = result;
      onDone(++done, jobs.length);
    };
    await runSamples(
      jobs.map(({ job }) => job),
      take,
      stopped,
    );
    if (done < jobs.length) return null;
    return sampleGap(fleets.map((_, fleet) => found.filter((_week, index) => jobs[index]!.fleet === fleet)));
  }

  private sampleJob(candidateIds: readonly string[], week: WeekDemand): SampleJob {
    const { shop } = this.fleetOf(candidateIds);
    return { shop, week, fromMin: this.fromMin, seed: this.purchaseCase.seed, lineSizes: this.sizes };
  }

  /** The job of a fleet and a scenario, and the key of its result. */
  private keyedJob(
    candidateIds: readonly string[],
    { demand, hash }: HashedDemand,
  ): { job: ScenarioJob; key: string } {
    const fleet = this.fleetOf(candidateIds);
    const { patienceWeeks, seed } = this.purchaseCase;
    const job = {
      shop: fleet.shop,
      scenario: demand,
      patienceWeeks,
      seed,
      fromMin: this.fromMin,
      knownWeeksAhead: KNOWN_WEEKS_AHEAD,
      lineSizes: this.sizes,
    };
    return { job, key: [VERSION, fleet.hash, hash, patienceWeeks, seed, KNOWN_WEEKS_AHEAD].join("/") };
  }

  /** The shop with candidates, in cash terms. Its orders, builds, quotes and cases play no part in a job and are left out. */
  private fleetOf(candidateIds: readonly string[]): { readonly shop: Shop; readonly hash: string } {
    const name = candidateIds.toSorted().join("\n");
    const known = this.fleets.get(name);
    if (known) return known;
    const { candidates, givenRateCashPct } = this.purchaseCase;
    const own = candidates.filter(({ id }) => candidateIds.includes(id));
    const shop = {
      ...cashShop(applyCandidates(this.shop, own), givenRateCashPct),
      orders: [],
      builds: [],
      quotes: [],
      cases: [],
    };
    const fleet = { shop, hash: this.tools.hash(JSON.stringify([shop, this.fromMin, this.sizes])) };
    this.fleets.set(name, fleet);
    return fleet;
  }

  /** The scenarios of an extent. */
  private demandsOf({ scenarios = this.scenarios, weeks, demandFactor }: CaseExtent): HashedDemand[] {
    return makeScenarios(this.demand, this.purchaseCase, scenarios, demandFactor).map((whole) => {
      const demand = weeks === undefined ? whole : { weeks: whole.weeks.slice(0, weeks) };
      return { demand, hash: this.tools.hash(JSON.stringify(demand)) };
    });
  }
}

/** Part of every key: results of another way of counting must not be taken for these. */
const VERSION = "weeks-1";

interface HashedDemand {
  readonly demand: ScenarioDemand;
  readonly hash: string;
}

function sizesOf({ pastWeeks, expected }: Demand): LineSizes[] {
  return lineSizes([
    ...pastWeeks.flatMap(({ lines }) => lines),
    ...expected.map(({ line, ordersPerWeek }) => ({ ...line, lines: ordersPerWeek })),
  ]);
}

/** Results by fleet, of the scenarios that every fleet has. `found` goes scenario by scenario. */
function paired(found: readonly (ScenarioResult | undefined)[], fleets: number): ScenarioResult[][] {
  const byFleet = Array.from({ length: fleets }, (): ScenarioResult[] => []);
  for (let first = 0; first < found.length; first += fleets) {
    const own = found.slice(first, first + fleets).filter((result) => result !== undefined);
    if (own.length === fleets) own.forEach((result, fleet) => byFleet[fleet]!.push(result));
  }
  return byFleet;
}

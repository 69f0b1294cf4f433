import { beforeAll, describe, expect, test } from "vitest";
import { loadGlpk } from "../../../core/plan/engines/glpk.ts";
import type { LpEngine } from "../../../core/plan/linear-program.ts";
import type { CaseTools } from "../../../core/purchase/case-desk.ts";
import { studyCase, type CaseStudy, type StudyTools } from "../../../core/purchase/case-study.ts";
import { evaluateCase } from "../../../core/purchase/evaluate.ts";
import type { ScenarioJob, ScenarioResult } from "../../../core/purchase/scenario-job.ts";
import type { PurchaseCase } from "../../../core/shop/purchase-case.ts";
import type { PurchaseChange } from "../../../core/shop/purchase-change.ts";
import { aCase } from "../../fixtures/a-case.ts";
import { aFeedstock, aMachine, aShop } from "../../fixtures/a-route.ts";
import { aCandidate, someWeeks } from "../../fixtures/some-weeks.ts";

/** Copies that one machine of the toy makes in a week; a copy brings 1 and takes feedstock for its price per kg / 40. */
const COPIES_PER_WEEK = 100;

/**
 * A toy in place of the weekly program, with a closed form: each machine makes 100 copies a week, and what is wanted beyond is
 * lost. Wanted are 20 orders of 10 in every week.
 */
function toyWeek(job: ScenarioJob, week: number): ScenarioResult["weeks"][number] {
  const wanted = job.scenario.weeks[week]?.lines.reduce((sum, { quantity }) => sum + quantity, 0) ?? 0;
  const made = Math.min(wanted, COPIES_PER_WEEK * job.shop.machines.length);
  const price = job.shop.feedstocks[0]?.pricePerKg ?? 0;
  const [same] = someWeeks(1, { revenue: made, costByKind: { feedstock: (made * price) / 40 } }).weeks;
  if (same === undefined) throw new Error("no week");
  return same;
}

function toyTools(): CaseTools & { readonly asked: ScenarioJob[] } {
  const asked: ScenarioJob[] = [];
  return {
    asked,
    hash: (text) => text,
    runJobs: (jobs, onResult) => {
      for (const [index, job] of jobs.entries()) {
        asked.push(job);
        onResult(index, { weeks: job.scenario.weeks.map((_, week) => toyWeek(job, week)) });
      }
      return Promise.resolve();
    },
  };
}

const shop = aShop({
  machines: [aMachine({ hourRate: 0 })],
  feedstocks: [aFeedstock({ pricePerKg: 20 })],
});
const second: PurchaseChange = { kind: "add-alike", alike: "F1", id: "F2", name: "Second" };
const third: PurchaseChange = { ...second, id: "F3" };

function toyCase(overrides: Partial<PurchaseCase> = {}): PurchaseCase {
  const rows = Array.from({ length: 20 }, () => ({
    dueOn: "2026-11-30",
    partId: "clip",
    quantity: 10,
    pricePerPiece: 1,
  }));
  return aCase({
    demand: { kind: "rows", rows },
    candidates: [
      aCandidate({ id: "second", name: "Second", price: 5200, changes: [second] }),
      aCandidate({ id: "third", name: "Third", price: 5200, changes: [third] }),
    ],
    financing: { discountPctPerYear: 0, taxPct: 0, depreciation: "none" },
    weeks: 52,
    scenarios: 3,
    ...overrides,
  });
}

/** Weeks planned in full that took so many times the feedstock. */
function gapOf(feedstock: number): NonNullable<StudyTools["gap"]> {
  return {
    weeks: 2,
    leftOut: 0,
    gapPct: 20,
    gapPctByFleet: [],
    heldKinds: [],
    lowestPct: 20,
    highestPct: 20,
    factors: { feedstock },
    sentence: "",
  };
}

let engine: LpEngine;
let plain: CaseStudy;
beforeAll(async () => {
  engine = await loadGlpk();
  plain = await study(toyCase());
});

async function study(purchaseCase: PurchaseCase, overrides: Partial<StudyTools> = {}): Promise<CaseStudy> {
  const tools = toyTools();
  const evaluation = await evaluateCase(shop, purchaseCase, tools);
  return studyCase(shop, purchaseCase, evaluation, {
    ...tools,
    engine,
    gap: null,
    money: (amount) => `${Math.round(amount)} EUR`,
    side: { scenarios: 2, weeks: 52 },
    mostBundles: 15,
    ...overrides,
  });
}

describe("a toy works with a closed form", () => {
  test("gains by a second machine what it was short of: 100 copies a week at half their price, over 4 years", () => {
    const [own] = plain.candidates;
    expect(own?.answer.answer.netPresentValue).toBeCloseTo(4 * 52 * 100 * 0.5 - 5200, 6);
    expect(own?.sentence).toMatch(/^Take Second: /);
  });

  test("breaks even at a demand of 1/2 + 5200 / (4 x 52 x 100) = 0.75 of what is expected", () => {
    const [own] = plain.candidates;
    expect(own?.demand?.kind).toBe("above");
    expect(Math.abs((own?.demand?.crossings[0] ?? 0) - 0.75)).toBeLessThan(0.02);
  });

  test("breaks even at 1.5 times the price of filament, and whatever pellets cost, having none", () => {
    const [own] = plain.candidates;
    // A copy brings 1 - f / 2: 4 x 52 x 100 x (1 - f / 2) = 5200 at f = 1.5.
    expect(own?.filamentPrice?.kind).toBe("below");
    expect(own?.filamentPrice?.crossings[0]).toBeCloseTo(1.5, 6);
    expect(own?.pelletPrice?.kind).toBe("always");
  });

  test("needs one of two machines that do the same work, and says that all bundles were looked at", () => {
    const { bundle } = plain;
    expect(bundle?.best).toEqual({ candidateIds: ["second"], value: 1300, outlay: 5200 });
    expect(bundle?.best.value).toBeCloseTo((4 * 52 * 50 - 5200) / 4, 6);
    expect(bundle?.proof).toBe("exact");
    expect(bundle?.worked.find(({ candidateIds }) => candidateIds.length === 2)?.value).toBeCloseTo(0, 6);
    expect(bundle?.sentence).toContain("2 scenarios of 52 weeks");
  });

  test("needs both where twice as much is wanted", async () => {
    const rows = Array.from({ length: 40 }, () => ({
      dueOn: "2026-11-30",
      partId: "clip",
      quantity: 10,
      pricePerPiece: 1,
    }));
    const { bundle, together, sentence } = await study(toyCase({ demand: { kind: "rows", rows } }));
    expect(bundle?.best.candidateIds).toEqual(["second", "third"]);
    expect(together?.answer.netPresentValue).toBeCloseTo(4 * 52 * 200 * 0.5 - 10_400, 6);
    expect(sentence).toMatch(/^Take Second and Third: /);
  });

  test("values a bundle with growth as it values its members: what is best is also recommended", async () => {
    const growing = toyCase({ growthPctPerYear: 15 });
    const { bundle, together, sentence } = await study(growing);
    expect(bundle?.best.candidateIds).toEqual(["second", "third"]);
    expect(together?.answer.equivalentAnnualValue).toBeCloseTo(bundle?.best.value ?? Number.NaN, -3);
    expect(sentence).toMatch(/^Take Second and Third: /);
  });

  test("is worth more with growth where growth still finds a machine free", async () => {
    const half = toyCase({
      candidates: [aCandidate({ id: "second", changes: [second, third], lifeYears: 6 })],
    });
    const [level] = (await study(half)).candidates;
    const [growing] = (await study({ ...half, growthPctPerYear: 8 })).candidates;
    expect(growing?.answer.answer.netPresentValue).toBeGreaterThan(
      1.1 * (level?.answer.answer.netPresentValue ?? 0),
    );
  });
});

describe("a study", () => {
  test("asks nothing beside the evaluation where it is to be a first answer", async () => {
    const tools = toyTools();
    const purchaseCase = toyCase();
    const evaluation = await evaluateCase(shop, purchaseCase, tools);
    const before = tools.asked.length;
    const answer = await studyCase(shop, purchaseCase, evaluation, {
      ...tools,
      engine,
      gap: null,
      money: String,
      side: null,
      mostBundles: 15,
    });
    expect(tools.asked).toHaveLength(before);
    expect(answer.bundle).toBeNull();
    expect(answer.candidates[0]).toMatchObject({ demand: null, pelletPrice: null, filamentPrice: null });
    expect(answer.candidates[0]?.tornado.length).toBeGreaterThan(0);
  });

  test("of a run stopped before anything was done answers no candidate, and does not throw", async () => {
    const tools = { ...toyTools(), runJobs: () => Promise.resolve(), stopped: () => true };
    const evaluation = await evaluateCase(shop, toyCase(), tools);
    const answer = await studyCase(shop, toyCase(), evaluation, {
      ...tools,
      engine,
      gap: null,
      money: String,
      side: { scenarios: 1, weeks: 4 },
      mostBundles: 15,
    });
    expect(answer).toMatchObject({ status: "stopped", candidates: [], bundle: null, together: null });
  });

  test("takes nothing where nothing is worth it, in words", async () => {
    const dear = toyCase({ candidates: [aCandidate({ id: "second", price: 99_999, changes: [second] })] });
    const { sentence, together } = await study(dear);
    expect(together).toBeNull();
    expect(sentence).toContain("Take none of them");
  });

  test("says of a machine that can make nothing that it is worth minus its price", async () => {
    const tiny = aMachine({ id: "tiny", hourRate: 0, envelopeMm: { x: 15, y: 15, z: 15 } });
    const own = aCandidate({ name: "Tiny", price: 700, changes: [{ kind: "add-machine", machine: tiny }] });
    const purchaseCase = toyCase({ candidates: [own] });
    // The toy would let it make copies; what counts here is the sentence.
    const [answer] = (await study(purchaseCase, { side: null })).candidates;
    expect(answer?.makesNothing).toBe(true);
    expect(answer?.sentence).toContain("it can make nothing that is ordered");
  });

  test("corrects every cost by what weeks planned in full showed, in the side questions too", async () => {
    const gap = gapOf(1.2);
    const [own] = (await study(toyCase(), { gap })).candidates;
    // A copy now brings 1 - 1.2 / 2 = 0.4, and half the price of filament 0.7.
    expect(own?.answer.answer.netPresentValue).toBeCloseTo(4 * 52 * 100 * 0.4 - 5200, 6);
    expect(own?.filamentPrice?.points[0]?.value).toBeCloseTo(4 * 52 * 100 * 0.7 - 5200, 6);
  });

  test("says where its verdict hangs on that correction, and what the value would be without", async () => {
    // At 1.9 times the feedstock a copy brings 0.05: 4 x 52 x 100 x 0.05 is less than the price of 5200.
    const [turned] = (await study(toyCase(), { gap: gapOf(1.9), side: null })).candidates;
    expect(turned?.uncorrectedValue).toBeCloseTo(4 * 52 * 100 * 0.5 - 5200, 6);
    expect(turned?.sentence).toContain("without it the value would be 5200 EUR");
    const [same] = (await study(toyCase(), { gap: gapOf(1.2), side: null })).candidates;
    expect(same?.sentence).not.toContain("hangs on the correction");
  });

  test("tells how the works runs with and without", () => {
    expect(plain.without.revenue).toBeCloseTo(52 * 100, 6);
    expect(plain.candidates[0]?.figures.revenue).toBeCloseTo(52 * 200, 6);
  });

  test("has the chart and the mix of its demand", async () => {
    const { chart, mix } = await study(toyCase(), { side: null });
    expect(chart.points.map(({ process }) => process)).toEqual(["filament"]);
    expect(mix).toHaveLength(1);
    expect(mix[0]?.copiesPerWeek).toBe(200);
  });
});

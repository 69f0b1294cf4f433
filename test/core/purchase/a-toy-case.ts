import type { Candidate, PurchaseCase } from "../../../core/shop/purchase-case.ts";

/** A case of the toy works: 4 weeks of 2 scenarios, drawn from the shop's orders, no growth, no season, no candidate. */
export function aCase(changes: Partial<PurchaseCase> = {}): PurchaseCase {
  return {
    id: "C-1",
    name: "Toy case (invented)",
    note: "",
    startsOn: "2026-11-30",
    demand: { kind: "orders" },
    growthPctPerYear: 0,
    patienceWeeks: 0,
    candidates: [],
    financing: { discountPctPerYear: 10, taxPct: 0, depreciation: "none" },
    weeks: 4,
    scenarios: 2,
    seed: 1,
    budget: null,
    ...changes,
  };
}

/** One more machine like the toy's first, at a price. */
export function oneMore(changes: Partial<Candidate> = {}): Candidate {
  return {
    id: "one-more",
    name: "One more (invented)",
    changes: [{ kind: "add-alike", alike: "M1", id: "M9", name: "M9" }],
    price: 10_000,
    installation: 0,
    training: 0,
    yearlyCost: 0,
    lifeYears: 5,
    residualValue: 0,
    ...changes,
  };
}

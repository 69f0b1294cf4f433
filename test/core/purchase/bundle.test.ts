import { beforeAll, describe, expect, test } from "vitest";
import { loadGlpk } from "../../../core/plan/engines/glpk.ts";
import { loadHighs } from "../../../core/plan/engines/highs.ts";
import type { LpEngine } from "../../../core/plan/linear-program.ts";
import { bestBundle, type BestBundle } from "../../../core/purchase/bundle.ts";
import { guessBundle } from "../../../core/purchase/bundle-program.ts";
import type { Candidate } from "../../../core/shop/purchase-case.ts";
import { seededRandom } from "../../../core/units/random.ts";
import { aCandidate } from "../../fixtures/some-weeks.ts";

let engine: LpEngine;
let other: LpEngine;
beforeAll(async () => {
  engine = await loadGlpk();
  other = await loadHighs();
});

function named(prices: Readonly<Record<string, number>>): Candidate[] {
  return Object.entries(prices).map(([id, price]) => aCandidate({ id, price }));
}

/** Value of a bundle: its members' own values, less so much for each pair. */
function worth(
  values: Readonly<Record<string, number>>,
  lessForPair = 0,
): (ids: readonly string[]) => Promise<number> {
  return (ids) => {
    const own = ids.reduce((sum, id) => sum + (values[id] ?? 0), 0);
    return Promise.resolve(own - (lessForPair * ids.length * (ids.length - 1)) / 2);
  };
}

function find(
  candidates: readonly Candidate[],
  budget: number | null,
  evaluate: (ids: readonly string[]) => Promise<number>,
  mostEvaluations = 100,
): Promise<BestBundle> {
  return bestBundle(candidates, budget, { engine, evaluate, mostEvaluations });
}

describe("the best bundle", () => {
  test("is exact where every bundle can be worked out, and values those of a bundle together", async () => {
    const answer = await find(named({ a: 100, b: 100 }), null, worth({ a: 30, b: 20 }, 25));
    expect(answer).toMatchObject({ proof: "exact", best: { candidateIds: ["a"], value: 30, outlay: 100 } });
    expect(answer.worked).toHaveLength(3);
  });

  test("keeps to the budget, at it and not above", async () => {
    const candidates = named({ a: 100, b: 60, c: 50 });
    const values = worth({ a: 50, b: 30, c: 25 });
    expect((await find(candidates, 110, values)).best.candidateIds).toEqual(["b", "c"]);
    expect((await find(candidates, 109, values)).best.candidateIds).toEqual(["a"]);
    expect((await find(candidates, 10, values)).best.candidateIds).toEqual([]);
  });

  test("is nothing where nothing gains", async () => {
    const answer = await find(named({ a: 100 }), null, worth({ a: -5 }));
    expect(answer.best).toEqual({ candidateIds: [], value: 0, outlay: 0 });
  });

  test("never holds two candidates that change the same machine", async () => {
    const sale = { kind: "sell-machine" as const, machineId: "F1", proceeds: 10 };
    const candidates = [aCandidate({ id: "a", changes: [sale] }), aCandidate({ id: "b", changes: [sale] })];
    const answer = await find(candidates, null, worth({ a: 5, b: 4 }));
    expect(answer.best.candidateIds).toEqual(["a"]);
    expect(answer.worked).toHaveLength(2);
  });

  test("may pay for a machine by the sale of another", async () => {
    const sale = { kind: "sell-machine" as const, machineId: "F1", proceeds: 90 };
    const candidates = [
      aCandidate({ id: "new", price: 150 }),
      aCandidate({ id: "sale", price: 0, changes: [sale] }),
    ];
    const answer = await find(candidates, 100, worth({ new: 20, sale: -3 }));
    expect(answer.best).toEqual({ candidateIds: ["new", "sale"], value: 17, outlay: 60 });
  });

  test("says that it is heuristic where not every bundle was worked out, keeps to the number allowed, and says how", async () => {
    const prices = Object.fromEntries(Array.from({ length: 9 }, (_, place) => [`c${place}`, 10 + place]));
    const answer = await find(
      named(prices),
      60,
      worth(Object.fromEntries(Object.keys(prices).map((id) => [id, 3])), 0.1),
      30,
    );
    expect(answer.proof).toBe("heuristic");
    expect(answer.worked.length).toBeLessThanOrEqual(30);
    expect(answer.best.outlay).toBeLessThanOrEqual(60);
    expect(answer.sentence).toContain("a better one may exist");
  });

  test("finds by guesses what working out all finds, where values come from singles and pairs (8 random cases)", async () => {
    const random = seededRandom(5);
    let heuristic = 0;
    for (let round = 0; round < 8; round++) {
      const ids = Array.from({ length: 7 }, (_, place) => `c${place}`);
      const candidates = named(Object.fromEntries(ids.map((id) => [id, 20 + Math.floor(80 * random())])));
      const own = new Map(ids.map((id) => [id, 40 * random() - 5]));
      const pair = new Map(
        ids.flatMap((a, i) => ids.slice(i + 1).map((b) => [`${a} ${b}`, 10 * random() - 7] as const)),
      );
      const evaluate = (set: readonly string[]): Promise<number> => {
        const pairs = set.flatMap((a, i) => set.slice(i + 1).map((b) => pair.get(`${a} ${b}`) ?? 0));
        return Promise.resolve(
          [...set.map((id) => own.get(id) ?? 0), ...pairs].reduce((sum, value) => sum + value, 0),
        );
      };
      const all = await find(candidates, 230, evaluate, 1000);
      const guessed = await find(candidates, 230, evaluate, 45);
      expect(all.proof).toBe("exact");
      if (guessed.proof === "heuristic") heuristic += 1;
      expect(guessed.best.value).toBeCloseTo(all.best.value, 9);
    }
    expect(heuristic).toBeGreaterThan(4);
  });
});

describe("the program that guesses", () => {
  const guess = {
    outlays: [3, 2, 2],
    values: [5, 4, 3],
    pairs: [{ a: 1, b: 2, more: 0 }],
    excluded: [],
    known: [],
    budget: 4,
  };

  test("takes the pair that fits the budget, by both engines", () => {
    for (const one of [engine, other]) expect(guessBundle(guess, one)).toEqual({ members: [1, 2], value: 7 });
  });

  test("counts what a pair takes away or adds", () => {
    expect(guessBundle({ ...guess, pairs: [{ a: 1, b: 2, more: -3 }] }, engine)).toEqual({
      members: [0],
      value: 5,
    });
    expect(
      guessBundle({ ...guess, budget: null, pairs: [{ a: 0, b: 1, more: -20 }] }, engine)?.members,
    ).toEqual([0, 2]);
  });

  test("passes over known bundles, and is null when there is no other", () => {
    expect(guessBundle({ ...guess, known: [[1, 2]] }, engine)).toEqual({ members: [0], value: 5 });
    const known = [[], [0], [1], [2], [1, 2]];
    expect(guessBundle({ ...guess, known }, engine)).toBeNull();
  });
});

import { describe, expect, test } from "vitest";
import { loadHighs } from "../../../../core/plan/engines/highs.ts";
import { loadWarmHighs, type ProgramNews } from "../../../../core/plan/engines/warm-highs.ts";
import type { LinearProgram } from "../../../../core/plan/linear-program.ts";
import { seededRandom } from "../../../../core/units/random.ts";

const ROWS = 6;
const COLS = 9;

/** A covering program: every row needs at least so much, every column gives something to every row. */
function aCover(seed: number): LinearProgram {
  const random = seededRandom(seed);
  return {
    cols: COLS,
    rows: ROWS,
    cost: Float64Array.from({ length: COLS }, () => 1 + random()),
    colLower: new Float64Array(COLS),
    colUpper: new Float64Array(COLS).fill(5),
    rowLower: Float64Array.from({ length: ROWS }, () => 1 + random()),
    rowUpper: new Float64Array(ROWS).fill(Infinity),
    start: Int32Array.from({ length: COLS + 1 }, (_, col) => col * ROWS),
    index: Int32Array.from({ length: COLS * ROWS }, (_, at) => at % ROWS),
    value: Float64Array.from({ length: COLS * ROWS }, () => 0.1 + random()),
  };
}

/** The numbers of another cover of the same shape, as news for a program. */
function newsOf({ cost, colUpper, rowLower, rowUpper, value }: LinearProgram): ProgramNews {
  const entries = Array.from(value, (each, at) => ({
    row: at % ROWS,
    col: Math.floor(at / ROWS),
    value: each,
  }));
  return { cost, colUpper, rowLower, rowUpper, entries };
}

describe("a program that stays in the solver", () => {
  test("has after any news the optimum that a new program has", async () => {
    const [fresh, warm] = [await loadHighs(), (await loadWarmHighs()).open(aCover(0))];
    for (let seed = 1; seed <= 20; seed++) {
      warm.change(newsOf(aCover(seed)));
      expect(warm.solve()?.objective).toBeCloseTo(fresh.solve(aCover(seed), 5).objective, 6);
    }
    warm.close();
  });

  test("after a restart depends on the news alone", async () => {
    const engine = await loadWarmHighs();
    const [one, other] = [engine.open(aCover(0)), engine.open(aCover(0))];
    for (const seed of [3, 4, 5]) {
      other.change(newsOf(aCover(seed)));
      other.solve();
    }
    for (const program of [one, other]) {
      program.restart(7);
      program.change(newsOf(aCover(9)));
    }
    expect(one.solve()).toEqual(other.solve());
  });

  test("says where there is no optimum, and goes on with other news", async () => {
    const warm = (await loadWarmHighs()).open(aCover(1));
    warm.change({ ...newsOf(aCover(1)), rowLower: new Float64Array(ROWS).fill(1e6) });
    expect(warm.solve()).toBeNull();
    warm.change(newsOf(aCover(2)));
    expect(warm.solve()).not.toBeNull();
  });
});

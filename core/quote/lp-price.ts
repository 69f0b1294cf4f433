import { pricePool } from "../plan/bound/column-pricing.ts";
import { columnPool } from "../plan/bound/column-pool.ts";
import type { BoundAnswer } from "../plan/bound/bound.ts";
import type { BoundModel } from "../plan/bound/bound-model.ts";
import { lineSlots } from "../plan/bound/line-slots.ts";
import { mixedKeys } from "../plan/bound/mixed-keys.ts";
import type { PlanLine, PlanOption, PlanProblem } from "../plan/plan-problem.ts";

/**
 * What a line costs by the prices of the linear program: the cheapest of its builds per copy with what the hours, gaps, operators
 * and set-ups that it takes are worth to the standing work, times its copies. The standing prices with this price for the line
 * satisfy every condition of the dual of the program with the line, so the program's cost rises by no less (weak duality; Dantzig 1963,
 * from memory). Set-ups, tool paths and whole builds of the line itself count nothing. Null without prices.
 * Example: a copy that costs 20 and takes 2 h of which the dearest is worth 7.5: 35, for 4 copies 140.
 */
export function lpPrice(
  { model, sifted }: Pick<BoundAnswer, "model" | "sifted">,
  problem: PlanProblem,
  lineIndex: number,
): number | null {
  const rowPrices = sifted.answer?.rowPrices;
  const line = problem.lines[lineIndex];
  if (!model || !line || !rowPrices) return null;
  const priced = modelOf(aloneProblem(problem, line), model, rowPrices.length);
  if (!priced) return null;
  const { leastPerCopy } = pricePool(priced, withFreeRows(rowPrices), 0, Infinity);
  const bought = line.buyOut ? boughtPerCopy(line) : Infinity;
  const perCopy = Math.min(leastPerCopy[0] ?? Infinity, bought);
  return Number.isFinite(perCopy) ? Math.max(0, line.quantity * perCopy) : null;
}

/** The same works with that line alone. */
function aloneProblem(problem: PlanProblem, line: PlanLine): PlanProblem {
  const options = line.optionIndices.map((from, index): PlanOption => {
    const option = problem.options[from];
    if (!option) throw new RangeError(`no such option: ${from}`);
    return { ...option, index, lineIndex: 0 };
  });
  const own = { ...line, index: 0, optionIndices: options.map(({ index }) => index) };
  return {
    ...problem,
    lines: [own],
    options,
    mixedCost: (items) =>
      problem.mixedCost(
        items.map(({ optionIndex, copies }) => ({
          optionIndex: line.optionIndices[optionIndex] ?? -1,
          copies,
        })),
      ),
  };
}

/** Rows behind the standing ones that are worth nothing, one for each bucket of a key. */
function withFreeRows(rowPrices: Float64Array): Float64Array {
  const longer = new Float64Array(rowPrices.length + FREE_ROWS);
  longer.set(rowPrices);
  return longer;
}

const FREE_ROWS = 64;

/** Rows of the standing model under the one line's columns; rows that would be the line's own are left out (-1). */
function modelOf(problem: PlanProblem, standing: BoundModel, freeRow: number): BoundModel | null {
  const { frames } = standing;
  const none = (): Int32Array => new Int32Array(problem.options.length).fill(-1);
  const slots = problem.options.map(({ classIndex }) => {
    const frame = frames[classIndex];
    const line = problem.lines[0];
    return frame && line ? lineSlots(line, frame) : [];
  });
  const keys = mixedKeys(problem, frames, (option) => slots[option.index] ?? []);
  const pool = columnPool({ problem, frames, slots, keys, wholeBuilds: [[]] }, () => true);
  if (!pool) return null;
  const hours = stateHours(problem, standing);
  return {
    ...standing,
    problem,
    slots,
    keys,
    pool,
    demand: Int32Array.of(-1),
    wholeBuilds: [[]],
    setUps: { link: none(), engineering: none(), ...hours },
    keyRows: keyRowsOf(problem, keys, freeRow),
  };
}

/** Rows in which hours of a state need machines that have it, as options of the standing work have them. */
function stateHours(
  problem: PlanProblem,
  { setUps, problem: { options } }: BoundModel,
): Pick<BoundModel["setUps"], "stateHours" | "machineH"> {
  const like = problem.options.map(({ classIndex, stateIndex }) =>
    options.findIndex((option) => option.classIndex === classIndex && option.stateIndex === stateIndex),
  );
  return {
    stateHours: Int32Array.from(like, (index) => (index < 0 ? -1 : setUps.stateHours[index]!)),
    machineH: Float64Array.from(like, (index) => (index < 0 ? 1 : setUps.machineH[index]!)),
  };
}

/**
 * The line's copies among keys of their own, without rows: a build that it shares is then charged nothing beside its copies, and
 * where it may print with nobody there its hours are free.
 */
function keyRowsOf(problem: PlanProblem, keys: BoundModel["keys"], freeRow: number): BoundModel["keyRows"] {
  const key = new Int32Array(problem.options.length).fill(-1);
  const position = new Int32Array(problem.options.length).fill(-1);
  keys.forEach(({ optionIndices }, index) => {
    optionIndices.forEach((option, at) => {
      key[option] = index;
      position[option] = at;
    });
  });
  return {
    key,
    position,
    copies: new Int32Array(problem.options.length).fill(-1),
    shares: keys.map(() => new Int32Array(0)),
    hours: Int32Array.from(keys, ({ classIndex }) =>
      problem.classes[classIndex]?.unattended ? freeRow : -1,
    ),
  };
}

function boughtPerCopy({ buyOut, dueMin, lateCostPerMin, quantity }: PlanLine): number {
  if (!buyOut) return Infinity;
  return buyOut.pricePerPiece + (lateCostPerMin * Math.max(0, buyOut.arriveMin - dueMin)) / quantity;
}

import { LP_TOLERANCE } from "../../units/tolerance.ts";
import { isInteger, type LinearProgram, type LpAnswer } from "../linear-program.ts";

/**
 * Re-checks an engine's "optimal" answer to a linear program from the data alone: columns and rows within their limits,
 * prices of the right sign (a price only where a limit is met), reduced cost = cost - A' price, and cost = value of the
 * prices. Returns a sentence for each kind of fault; none means that the answer proves itself optimal (linear programming
 * duality; Dantzig 1963, from memory). Integer programs have no prices, so only their limits and cost are checked.
 */
export function checkAnswer(program: LinearProgram, answer: LpAnswer, tolerance = LP_TOLERANCE): string[] {
  const activity = rowActivity(program, answer.values);
  const faults: string[] = [];
  const worstColumn = worstOutside(answer.values, program.colLower, program.colUpper);
  if (worstColumn > tolerance) faults.push(`A column is ${worstColumn} outside its limits.`);
  const worstRow = worstOutside(activity, program.rowLower, program.rowUpper);
  if (worstRow > tolerance) faults.push(`A row is ${worstRow} outside its limits.`);
  const cost = program.cost.reduce((sum, each, col) => sum + each * answer.values[col]!, 0);
  if (!isClose(cost, answer.objective, tolerance)) {
    faults.push(`The objective is ${answer.objective}, the columns cost ${cost}.`);
  }
  if (isInteger(program)) return faults;
  return [...faults, ...priceFaults(program, answer, activity, tolerance)];
}

function priceFaults(
  program: LinearProgram,
  answer: LpAnswer,
  activity: Float64Array,
  tolerance: number,
): string[] {
  const faults: string[] = [];
  const reduced = reducedCosts(program, answer.rowPrices);
  if (reduced.some((value, col) => !isClose(value, answer.reducedCosts[col]!, tolerance))) {
    faults.push("A reduced cost is not cost - A' price.");
  }
  const rows = {
    prices: answer.rowPrices,
    values: activity,
    lower: program.rowLower,
    upper: program.rowUpper,
  };
  const columns = {
    prices: reduced,
    values: answer.values,
    lower: program.colLower,
    upper: program.colUpper,
  };
  const wrong = countWrong(rows, tolerance) + countWrong(columns, tolerance);
  if (wrong > 0) faults.push(`${wrong} prices have the wrong sign or stand where no limit is met.`);
  const worth = valueOf(rows) + valueOf(columns);
  if (!isClose(worth, answer.objective, tolerance)) {
    faults.push(`The objective is ${answer.objective}, the prices prove ${worth}.`);
  }
  return faults;
}

/** Values with limits, and the price of moving a limit by one. */
interface Limited {
  readonly prices: Float64Array;
  readonly values: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
}

/** A positive price needs the value at its lower limit, a negative one at its upper (complementary slackness). */
function countWrong({ prices, values, lower, upper }: Limited, tolerance: number): number {
  let wrong = 0;
  prices.forEach((price, at) => {
    if (price > tolerance && !isClose(values[at]!, lower[at]!, tolerance)) wrong++;
    if (price < -tolerance && !isClose(values[at]!, upper[at]!, tolerance)) wrong++;
  });
  return wrong;
}

function valueOf({ prices, values, lower, upper }: Limited): number {
  return prices.reduce((sum, price, at) => {
    const limit = price > 0 ? lower[at]! : upper[at]!;
    return sum + price * (Number.isFinite(limit) ? limit : values[at]!);
  }, 0);
}

function rowActivity(program: LinearProgram, values: Float64Array): Float64Array {
  const activity = new Float64Array(program.rows);
  forEachEntry(program, (row, col, value) => {
    activity[row]! += value * values[col]!;
  });
  return activity;
}

function reducedCosts(program: LinearProgram, rowPrices: Float64Array): Float64Array {
  const reduced = Float64Array.from(program.cost);
  forEachEntry(program, (row, col, value) => {
    reduced[col]! -= value * rowPrices[row]!;
  });
  return reduced;
}

function forEachEntry(
  program: LinearProgram,
  visit: (row: number, col: number, value: number) => void,
): void {
  for (let col = 0; col < program.cols; col++) {
    for (let at = program.start[col]!; at < program.start[col + 1]!; at++) {
      visit(program.index[at]!, col, program.value[at]!);
    }
  }
}

function worstOutside(values: Float64Array, lower: Float64Array, upper: Float64Array): number {
  return values.reduce((worst, value, at) => {
    const scale = Math.max(1, Math.abs(value));
    return Math.max(worst, (lower[at]! - value) / scale, (value - upper[at]!) / scale);
  }, 0);
}

function isClose(a: number, b: number, tolerance: number): boolean {
  if (!Number.isFinite(a) || !Number.isFinite(b)) return a === b;
  return Math.abs(a - b) <= tolerance * Math.max(1, Math.abs(a), Math.abs(b));
}

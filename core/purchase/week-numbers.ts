import type { ProgramNews } from "../plan/engines/warm-highs.ts";
import type { LinearProgram } from "../plan/linear-program.ts";
import type { FleetPart } from "./fleet-model.ts";
import type { OpenShares } from "./open-share.ts";
import type { PartWeek } from "./order-queue.ts";
import type { PartColumns } from "./week-part-columns.ts";
import type { Chain, WeekProgram } from "./week-program.ts";
import { allChains, type WeekState } from "./week-state.ts";

/** What one week is asked for and starts from. */
export interface WeekInput {
  readonly week: number;
  /** by part of the fleet */
  readonly parts: readonly PartWeek[];
  readonly state: WeekState;
  readonly shares: OpenShares;
  readonly patienceWeeks: number;
}

/** The numbers of one week, ready for the solver, and what each chain supplies in it. */
export interface WeekNumbers {
  readonly news: ProgramNews;
  readonly supplies: readonly number[];
}

const DAYS = 7;
const LEAST_HOURS = 1e-6;
/** A copy without a price is worth so many times its cheapest cost. */
const UNPRICED_WORTH = 2;

/** Fills in limits, costs and set-up coefficients of one week. Everything else of the program stays as it was laid out. */
export function weekNumbers(program: WeekProgram, base: LinearProgram, input: WeekInput): WeekNumbers {
  const news = {
    rowLower: base.rowLower.slice(),
    rowUpper: base.rowUpper.slice(),
    colUpper: base.colUpper.slice(),
    cost: base.cost.slice(),
    entries: [] as ProgramNews["entries"][number][],
  };
  const supplies = allChains(program).map((chain, at) =>
    setChain(news, chain, shareOf(chain, input), input.state.left[at]!),
  );
  setUps(program, news, input);
  toolPaths(program, news, input);
  program.parts.forEach((columns, index) => {
    const asked = {
      part: program.fleet.parts[index]!,
      week: input.parts[index]!,
      patienceWeeks: input.patienceWeeks,
    };
    setDemand(news, program.demand[index]!, asked.week);
    setOpen(program, news, columns, asked);
    setLost(news, columns, asked);
    setBought(news, columns, asked);
  });
  return { news, supplies };
}

type News = Omit<ProgramNews, "entries"> & { readonly entries: ProgramNews["entries"][number][] };

interface Asked {
  readonly part: FleetPart;
  readonly week: PartWeek;
  readonly patienceWeeks: number;
}

function shareOf({ classIndex, calendarIndex }: Chain, { shares, week }: WeekInput): number {
  return classIndex >= 0 ? shares.ofClass[week]![classIndex]! : shares.ofCalendar[week]![calendarIndex]!;
}

/** The open share of a usual week's supply in each slot, and in the first what is left from before. Returns their sum. */
function setChain(news: News, { row, supply }: Chain, share: number, left: number): number {
  let sum = 0;
  supply.forEach((usual, slot) => {
    const amount = usual * share;
    sum += amount;
    news.rowLower[row + slot] = amount + (slot === 0 ? left : 0);
    news.rowUpper[row + slot] = news.rowLower[row + slot]!;
  });
  return sum;
}

function setUps(
  { states, fleet, chains }: WeekProgram,
  news: News,
  { parts, state, shares, week }: WeekInput,
): void {
  // The staffed chains come first among all chains.
  const openWeeks = chains.staffed.map(
    ({ supply }, at) => shares.ofClass[week]![at]! + state.left[at]! / Math.max(LEAST_HOURS, sumOf(supply)),
  );
  states.forEach(({ classIndex, column, hoursRow, machineH, links }, at) => {
    const loaded = state.loaded[at]!;
    const openH = machineH * openWeeks[classIndex]!;
    news.entries.push({ row: hoursRow, col: column, value: -openH });
    news.colUpper[column] = Math.max(0, fleet.week.classes[classIndex]!.machines - loaded);
    news.rowUpper[hoursRow] = loaded * openH;
    for (const { partIndex, row } of links) {
      const wanted = wantedOf(parts[partIndex]!);
      news.rowUpper[row] = wanted * loaded;
      news.entries.push({ row, col: column, value: -wanted });
    }
  });
}

function toolPaths({ toolPaths: all }: WeekProgram, news: News, { parts, state }: WeekInput): void {
  all.forEach(({ partIndex, column, row }, at) => {
    const wanted = wantedOf(parts[partIndex]!);
    const done = state.pathsDone[at]!;
    news.colUpper[column] = 1 - done;
    news.rowUpper[row] = wanted * done;
    news.entries.push({ row, col: column, value: -wanted });
  });
}

/** Copies that a part asks of a week; one where it asks for none, so that no coefficient ever vanishes. */
function wantedOf({ soft, hard }: PartWeek): number {
  const wanted = sumOf(soft) + sumOf(hard);
  return wanted > 0 ? wanted : 1;
}

function setDemand(news: News, row: number, { soft, hard }: PartWeek): void {
  soft.forEach((copies, slot) => {
    news.rowLower[row + slot] = copies + hard[slot]!;
    news.rowUpper[row + slot] = copies + hard[slot]!;
  });
}

/**
 * Copies that stay open pay for being late: those just due for half of the next slot, older ones from the middle of this slot
 * to the middle of the next. At the week's end they also pay what making them later costs at least.
 */
function setOpen(
  { fleet }: WeekProgram,
  news: News,
  { young, old }: PartColumns,
  { part, week }: Asked,
): void {
  const { lengthDays } = fleet.week.slots;
  const last = lengthDays.length - 1;
  let before = week.overdue;
  lengthDays.forEach((lengthD, slot) => {
    const nextD = lengthDays[slot + 1] ?? lengthDays[0]!;
    const due = Math.max(0, week.soft[slot]! - (slot === 0 ? week.overdue : 0));
    const later = slot === last ? part.cheapest : 0;
    const most = slot === last ? week.mayWait : due + before;
    news.cost[young[slot]!] = (week.lateCostPerDay * nextD) / 2 + later;
    news.cost[old[slot]!] = (week.lateCostPerDay * (lengthD + nextD)) / 2 + later;
    news.colUpper[young[slot]!] = Math.min(due, most);
    news.colUpper[old[slot]!] = Math.max(0, Math.min(before, most - due));
    before += due;
  });
}

/** A copy that is lost costs its price, and its cheapest cost too, which a copy that is made has to pay anyway. */
function setLost(news: News, { lost, givenUp }: PartColumns, { part, week }: Asked): void {
  const worth = (week.price ?? UNPRICED_WORTH * part.cheapest) + part.cheapest;
  lost.forEach((column, slot) => {
    news.cost[column] = worth;
    news.colUpper[column] = week.hard[slot]!;
  });
  news.cost[givenUp] = worth;
  news.colUpper[givenUp] = Math.max(0, sumOf(week.soft) - week.mayWait);
}

function setBought(
  news: News,
  { bought, arrivalDay }: PartColumns,
  { part, week, patienceWeeks }: Asked,
): void {
  if (bought < 0 || !part.buyOut) return;
  const afterD = Math.max(0, arrivalDay - DAYS);
  news.cost[bought] = part.buyOut.pricePerPiece + week.lateCostPerDay * afterD;
  if (afterD > 0) news.colUpper[bought] = afterD > DAYS * patienceWeeks ? 0 : sumOf(week.soft);
}

function sumOf(amounts: Float64Array): number {
  return amounts.reduce((sum, amount) => sum + amount, 0);
}

import type { Unplannable } from "../plan/compile/compile-problem.ts";
import type { PlanProblem } from "../plan/plan-problem.ts";
import type { Schedule } from "../plan/schedule.ts";
import { layOutAs } from "../plan/search/machine-windows.ts";
import { whereOf } from "../shop/finding.ts";
import type { Finding } from "../units/finding.ts";
import { type AskedLines, askedLines, lineFindings } from "./asked-lines.ts";
import { choosePlaces, type Wish } from "./choose-places.ts";
import { hurryPerMin } from "./line-places.ts";
import type { QuoteDesk } from "./quote-desk.ts";
import type { QuoteLineRequest } from "./quote-order.ts";

/** first: a few ways of putting the lines in, at once; all: many more, in about a second. */
export type Effort = "first" | "all";

/** One line with its answer. */
interface AnsweredLine {
  readonly line: QuoteLineRequest;
  /** false: something is wrong with it, so that it was not put in */
  readonly isAsked: boolean;
  /** last copy, epoch minute; null: it found no place */
  readonly finishMin: number | null;
}

/** Lines put into the standing work in the way that suits their dates. */
export interface Answered {
  /** with the lines due when they are wanted, or at the end of the plan; where they have no place they may be late */
  readonly problem: PlanProblem;
  readonly schedule: Schedule;
  /** cost over the standing plan's, without the lines' own lateness */
  readonly extraCost: number;
  readonly isHeld: boolean;
  /** true: all ways of putting the lines in were tried, not the first few alone */
  readonly hasAll: boolean;
  readonly lines: readonly AnsweredLine[];
  readonly unplannable: readonly Unplannable[];
  readonly findings: readonly Finding[];
}

/**
 * Answers lines from the standing work: places from the free calendar, the cheapest for their dates. A line with something wrong
 * is left out with findings, never thrown at. Example: two lines of which one names no part of the shop: one date, one finding.
 */
export function answerLines(desk: QuoteDesk, lines: readonly QuoteLineRequest[], effort: Effort): Answered {
  const wrong = lines.flatMap((line) => lineFindings(desk, line));
  const isAsked = (line: QuoteLineRequest): boolean =>
    !lineFindings(desk, line).some(({ severity }) => severity === "error");
  const good = lines.filter(isAsked);
  const asked = askedLines(desk, good);
  const { more, placer, placeOf } = asked;
  const wishes = good.flatMap((line, at) => (placeOf[at]! < 0 ? [] : [wishOf(desk, asked, line, at)]));
  const found = effort === "first" ? placer.first() : placer.all();
  const choice = choosePlaces(found, wishes);
  const places = choice ? found[choice.at] : undefined;
  const answered = lines.map((line) => {
    const at = good.indexOf(line);
    const finishMin = at < 0 ? null : (places?.finishMin[placeOf[at]!] ?? null);
    return { line, isAsked: at >= 0, finishMin };
  });
  const isAnyPlaced = choice !== null && wishes.length > 0;
  return {
    problem: dated(desk, asked, good),
    schedule: isAnyPlaced ? placer.scheduleOf(choice.at) : withNoneOf(desk, asked),
    extraCost: isAnyPlaced ? (places?.extraCost ?? 0) : 0,
    isHeld: isAnyPlaced && choice.isHeld && placeOf.every((place) => place >= 0),
    hasAll: placer.hasAll,
    lines: answered,
    unplannable: more.unplannable,
    findings: [...wrong, ...withoutPlace(asked, answered)],
  };
}

/** The standing plan where nothing could be put in: copies that have options but no room for all of them are left out. */
function withNoneOf({ standing, problem }: QuoteDesk, { more }: AskedLines): Schedule {
  const leftOut = more.problem.lines.slice(problem.lines.length);
  const unplaced = leftOut.map(({ index, quantity }) => ({ lineIndex: index, copies: quantity }));
  return { ...standing, unplaced: [...standing.unplaced, ...unplaced] };
}

function dated(desk: QuoteDesk, { more }: AskedLines, good: readonly QuoteLineRequest[]): PlanProblem {
  const dueOf = new Map(more.lineIndices.map((index, at) => [index, good[at]?.wantedMin ?? null]));
  const lines = more.problem.lines.map((line) => {
    const dueMin = dueOf.get(line.index) ?? null;
    return dueMin === null ? line : { ...line, dueMin: Math.floor(dueMin) };
  });
  const problem = { ...more.problem, lines };
  layOutAs(problem, desk.problem);
  return problem;
}

/** A date that has passed wants the earliest there is. */
function wishOf(desk: QuoteDesk, { more }: AskedLines, line: QuoteLineRequest, at: number): Wish {
  const { fromMin } = desk.request;
  const isPast = line.wantedMin !== null && line.wantedMin <= fromMin;
  return {
    wantedMin: isPast ? fromMin : line.wantedMin,
    allowLate: line.allowLate && !isPast,
    perMin: hurryPerMin(more.problem, more.lineIndices[at]!),
  };
}

function withoutPlace({ more }: AskedLines, lines: readonly AnsweredLine[]): Finding[] {
  return lines
    .filter(({ isAsked, finishMin }) => isAsked && finishMin === null)
    .map(({ line }) => {
      const known = more.unplannable.find(({ orderId }) => orderId === line.id);
      const reasons = known?.reasons.map(({ sentence }) => sentence) ?? [NO_PLACE];
      return {
        severity: "error",
        code: known?.reasons[0]?.code ?? "no-place",
        where: whereOf("lines", line.id),
        sentence: `Line ${line.id} has no date: ${reasons.join(" ")}`,
      };
    });
}

const NO_PLACE =
  "no place was found for all its copies within a year beside the other work. Ask for fewer copies, or have it made elsewhere.";

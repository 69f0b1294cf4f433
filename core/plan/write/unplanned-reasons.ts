import { durationText } from "../../shop/time-words.ts";
import type { Unplannable } from "../compile/compile-problem.ts";
import { copiesBy, earliestFinish } from "../compile/earliest-finish.ts";
import type { UnplannedReason } from "../plan-document.ts";
import type { PlanLine } from "../plan-problem.ts";
import { at } from "../at.ts";
import { leftOver, type LeftOver } from "./left-over.ts";
import { noTimeWords } from "./no-time-words.ts";
import type { PlanSource } from "./plan-source.ts";

/**
 * Copies that the schedule found no place for, each with its reason: a promise that cannot be held is given up with the
 * earliest finish there is instead.
 */
export function unplacedCopies(source: PlanSource): Unplannable[] {
  return source.schedule.unplaced
    .filter(({ copies }) => copies > 0)
    .map(({ lineIndex, copies }) => {
      const line = at(source.problem.lines, lineIndex);
      const left = leftOver(source.problem, line);
      const others = copies - (left?.copies ?? 0);
      const reasons = [
        ...(left ? [leftOverReason(line, left)] : []),
        ...(others > 0 ? [reasonOf(source, line, others)] : []),
      ];
      return { orderId: line.orderId, copies, reasons };
    });
}

/** Copies that no number of builds of the sizes allowed holds, and what to do. */
function leftOverReason(line: PlanLine, { copies, sizes, more }: LeftOver): UnplannedReason {
  const made = line.quantity - copies;
  const over = `${copies} ${copies === 1 ? "is" : "are"} left over`;
  return {
    code: "left-over",
    sentence: `Builds of it hold ${sizes.join(" or ")} copies each: that makes ${made} of ${line.quantity}, and ${over}. Order ${line.orderedCopies + more}, or allow another machine or feedstock that takes fewer at a time.`,
  };
}

function reasonOf(source: PlanSource, line: PlanLine, copies: number): UnplannedReason {
  const alone = earliestFinish(source.problem, line, copies);
  if (!alone) {
    return { code: "no-place", sentence: noTimeWords(source, line, copies) };
  }
  const finish = source.when(alone.finishMin);
  const due = source.when(line.dueMin);
  if (line.allowLate) {
    return {
      code: "no-place",
      sentence: `No place was left for it. With no other order in the way it would be finished on ${finish}.`,
    };
  }
  if (alone.finishMin <= line.dueMin) {
    return {
      code: "promise-crowded-out",
      sentence: `It must not be late (due ${due}) and other orders hold the machines. With no other order in the way it would be finished on ${finish}.`,
    };
  }
  const late = durationText(alone.finishMin - line.dueMin);
  const possible = line.quantity === 1 ? 0 : copiesBy(source.problem, line, line.dueMin);
  const part = line.quantity === 1 ? "" : `; ${possible} of ${line.quantity} copies could be in time`;
  return {
    code: "promise-impossible",
    sentence: `It must not be late (due ${due}), but even with no other order in the way it would be finished only on ${finish}, ${late} late${part}.`,
  };
}

import type { PlanLine, PlanProblem } from "../plan-problem.ts";

/**
 * Cost of every copy at its cheapest, as if no machine were ever busy and nothing ever late: a bound that takes next to no
 * time. Copies that may share a platform with other lines count nothing, since what that saves is not looked at here.
 * Example: 10 copies that cost 4 in builds of one and 30 in builds of ten give 30.
 */
export function cheapestCopies(problem: PlanProblem): number {
  return problem.lines.reduce((sum, line) => sum + line.quantity * cheapestCopy(problem, line), 0);
}

function cheapestCopy({ options }: PlanProblem, line: PlanLine): number {
  let least = line.buyOut?.pricePerPiece ?? Infinity;
  for (const index of line.optionIndices) {
    const option = options[index];
    if (!option) continue;
    if (option.mixKey >= 0) return 0;
    for (let copies = Math.max(1, option.copiesMin); copies <= option.copiesMax; copies++) {
      least = Math.min(least, (option.costByCopies[copies] ?? Infinity) / copies);
    }
  }
  return least < Infinity ? least : 0;
}

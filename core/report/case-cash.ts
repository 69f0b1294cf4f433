import { csvText } from "./csv.ts";
import type { CaseReport } from "./case-view.ts";

/**
 * Cash by year of every candidate as a table (RFC 4180): a row for each row of the table of cash and each year, then the total
 * and its sum so far; year 0 is the start. Example: one candidate over 4 years has 22 x 5 rows below the head.
 */
export function cashCsv({ shop, study }: CaseReport): string {
  const head = ["candidate", "candidate_name", "row", "year", `cash_${shop.currency}`];
  const rows = study.candidates.flatMap(({ candidate, answer: { flow } }) => {
    let sum = 0;
    const sums = flow.total.map((cash) => (sum += cash));
    const named = [...flow.rows, { name: "total", byYear: flow.total }, { name: "sum_so_far", byYear: sums }];
    return named.flatMap(({ name, byYear }) =>
      byYear.map((cash, year) => [candidate.id, candidate.name, name, year, cash]),
    );
  });
  return csvText([head, ...rows]);
}

import { whereOf } from "../shop/finding.ts";
import type { Finding } from "../units/finding.ts";
import type { LineAnswer } from "./first-answer.ts";
import type { PriceRule } from "./price.ts";

/**
 * Why a line has no price, or one that nobody should offer. Example: a margin of 100 % of the price: no price follows from any
 * cost.
 */
export function priceFindings(lines: readonly LineAnswer[], rule: PriceRule): Finding[] {
  return lines.flatMap(({ id, costBasis, price }): Finding[] => {
    const about = { where: whereOf("lines", id, "pricePerPiece") };
    if (costBasis === null) return [];
    if (!price) return [{ ...about, severity: "error", code: "margin", sentence: marginWords(id, rule) }];
    if (price.total > 0) return [];
    return [{ ...about, severity: "warning", code: "no-prices", sentence: noPriceWords(id) }];
  });
}

function marginWords(id: string, { marginPct }: PriceRule): string {
  return `Line ${id} has no price: a margin of ${marginPct} % of the price leaves nothing for its cost. Set a margin below 100 %, or a mark-up on cost.`;
}

function noPriceWords(id: string): string {
  return `Line ${id} comes to nothing: the shop has no prices. Enter what machine hours, labour and feedstock cost.`;
}

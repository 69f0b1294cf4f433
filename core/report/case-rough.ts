import { answerCase } from "../purchase/case-answer.ts";
import type { CaseEvaluation } from "../purchase/evaluate.ts";
import type { PurchaseCase } from "../shop/purchase-case.ts";
import type { Shop } from "../shop/shop.ts";
import { wholeMoney } from "./case-view.ts";
import { countText } from "./display.ts";
import { shortText } from "./plain-text.ts";

/**
 * The first rough answer in one line: the net present value of each candidate by the few weeks that were planned. Example:
 * "First rough answer, from 13 weeks of 1 scenario: Bench machine -3 100 EUR; Large machine 40 000 EUR."
 */
export function roughText(shop: Shop, purchaseCase: PurchaseCase, evaluation: CaseEvaluation): string {
  const money = wholeMoney(shop.currency);
  const { without, weeks } = evaluation;
  const values = evaluation.candidates.flatMap(({ candidateId, withIt }) => {
    const candidate = purchaseCase.candidates.find(({ id }) => id === candidateId);
    if (candidate === undefined || withIt.length === 0) return [];
    const { answer } = answerCase(shop, purchaseCase, [candidate], { without, withIt, points: [] });
    return [`${shortText(candidate.name, NAME_CHARS)} ${money(answer.netPresentValue)}`];
  });
  const from = `${countText(weeks, "week")} of ${countText(without.length, "scenario")}`;
  return `First rough answer, from ${from}: ${values.join("; ")}.`;
}

const NAME_CHARS = 40;

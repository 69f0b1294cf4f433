import { caseChangeFindings } from "./check-case-changes.ts";
import { caseDemandFindings } from "./check-case-demand.ts";
import { caseMoneyFindings } from "./check-case-money.ts";
import { errorsFirst, type Finding } from "./finding.ts";
import type { PurchaseCase } from "./purchase-case.ts";
import type { Shop } from "./shop.ts";

/**
 * Everything about a purchase case that somebody should know before it is worked out, one sentence each, errors first. With an
 * error the case cannot be worked out as it stands. Whether a candidate can make anything is not looked at here.
 * Example: a candidate that sells machine X9, which the shop does not have, gives one error at "cases/C-1/candidates".
 */
export function checkCase(shop: Shop, purchaseCase: PurchaseCase): Finding[] {
  return errorsFirst([
    ...caseDemandFindings(shop, purchaseCase),
    ...caseChangeFindings(shop, purchaseCase),
    ...caseMoneyFindings(shop, purchaseCase),
  ]);
}

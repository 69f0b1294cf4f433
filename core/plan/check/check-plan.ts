import type { Finding } from "../../shop/finding.ts";
import type { Shop } from "../../shop/shop.ts";
import { checkCommitted } from "./check-committed.ts";
import { checkCopies } from "./check-copies.ts";
import { checkFeedstock } from "./check-feedstock.ts";
import { checkLateness } from "./check-lateness.ts";
import { checkMoney } from "./check-money.ts";
import { checkOperators } from "./check-operators.ts";
import { checkPlannedBuilds } from "./check-planned-builds.ts";
import { checkReferences } from "./check-references.ts";
import { checkReplan } from "./check-replan.ts";
import { checkSequence } from "./check-sequence.ts";
import { openCheck } from "./check-source.ts";
import { checkTasks } from "./check-tasks.ts";
import { checkTimes } from "./check-times.ts";
import type { PlanDocument } from "../plan-document.ts";

/**
 * Holds a plan to every rule of a valid one, from the shop document alone and with arithmetic of its own: nothing that the
 * search believed is used. Physics, money and calendar have one definition each (`findRoutes`, `makeBuildCosting`,
 * `workingTime`), which this shares. No findings: the plan may be used. Example: a plan that starts a build before its order
 * is released gives one finding with code "release".
 */
export function checkPlan(shop: Shop, plan: PlanDocument): Finding[] {
  const references = [...checkReferences(shop, plan), ...checkCommitted(shop, plan)];
  if (references.some(({ code }) => code === "unknown-id" || code === "other-shop")) return references;
  const source = openCheck(shop, plan);
  return [
    ...references,
    ...checkPlannedBuilds(source),
    ...checkSequence(source),
    ...checkTimes(source),
    ...checkOperators(source),
    ...checkCopies(source),
    ...checkLateness(source),
    ...checkMoney(source),
    ...checkReplan(source),
    ...checkTasks(source),
    ...checkFeedstock(source),
  ];
}

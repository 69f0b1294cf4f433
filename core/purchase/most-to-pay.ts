import { cashFlow, type CashQuestion } from "./cash-flow.ts";
import { netPresentValue } from "./present-value.ts";

/** Net present value of a cash question at its discount rate. Example: -1000 and 1100 a year later at 10 % give 0. */
export function valueOf(question: CashQuestion): number {
  return netPresentValue(cashFlow(question).total, question.financing.discountPctPerYear / 100);
}

/**
 * The price at which buying is worth exactly nothing, everything else as it is: the most to pay. The value is a straight line
 * in the price, so two points give it. Null: of several candidates, or where the price does not matter; below 0: not even as a
 * gift. Example: worth 300 at a price of 1000 that is paid once: 1300.
 */
export function mostToPay(question: CashQuestion): number | null {
  const [candidate, ...others] = question.candidates;
  if (candidate === undefined || others.length > 0) return null;
  const at = (price: number): number => valueOf({ ...question, candidates: [{ ...candidate, price }] });
  const step = Math.max(1, candidate.price);
  const slope = (at(candidate.price + step) - at(candidate.price)) / step;
  return slope === 0 ? null : candidate.price - at(candidate.price) / slope;
}

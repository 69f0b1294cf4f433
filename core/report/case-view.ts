import type { CandidateStudy, CaseStudy } from "../purchase/case-study.ts";
import type { SampleGap } from "../purchase/sample-plans.ts";
import type { PurchaseCase } from "../shop/purchase-case.ts";
import type { Shop } from "../shop/shop.ts";
import type { Finding } from "../units/finding.ts";
import { type Display, displayOf, fixedText } from "./display.ts";

/** A case with its answer and all that must be said beside it. */
export interface CaseReport {
  readonly shop: Shop;
  readonly purchaseCase: PurchaseCase;
  readonly study: CaseStudy;
  /** how far weekly figures are from real plans; null: not looked at */
  readonly gap: SampleGap | null;
  /** what was found odd about the case */
  readonly findings: readonly Finding[];
}

/** A candidate with the letter by which tables and charts name it. */
export interface LetteredStudy extends CandidateStudy {
  readonly letter: string;
}

/** A report with what its text and its sheet are both written with. */
export interface CaseView extends CaseReport {
  readonly display: Display;
  /** "61 000 EUR": cases are no invoices, so money stands in whole units */
  readonly money: (amount: number) => string;
  /** the same without the currency */
  readonly amount: (amount: number) => string;
  /** every candidate that was answered, in the order of the case */
  readonly candidates: readonly LetteredStudy[];
  /** those that are recommended, or the one that comes nearest to it; empty: none was answered */
  readonly leading: readonly LetteredStudy[];
  readonly headline: string;
}

/** Opens a report for writing. */
export function caseView(report: CaseReport): CaseView {
  const { shop, study } = report;
  const candidates = study.candidates.map((own, place) => ({ ...own, letter: letterOf(place) }));
  const leading = leadingOf(study, candidates);
  return {
    ...report,
    display: displayOf(shop),
    money: wholeMoney(shop.currency),
    amount: (amount) => fixedText(amount, 0),
    candidates,
    leading,
    headline: study.sentence ?? leading[0]?.sentence ?? NOTHING,
  };
}

const NOTHING = "Nothing is answered: the work was stopped before one scenario was done for every candidate.";

/** Money in whole units of a currency. Example: 61234.5 EUR gives "61 235 EUR". */
export function wholeMoney(currency: string): (amount: number) => string {
  return (amount) => `${fixedText(amount, 0)}\u202f${currency}`;
}

/** "A" to "Z", then "A2" and so on. Example: 27 gives "B2". */
export function letterOf(place: number): string {
  const round = Math.floor(place / ALPHABET.length);
  return `${ALPHABET[place % ALPHABET.length]}${round === 0 ? "" : round + 1}`;
}

const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

function leadingOf({ bundle }: CaseStudy, candidates: readonly LetteredStudy[]): LetteredStudy[] {
  const taken = candidates.filter(({ candidate }) => bundle?.best.candidateIds.includes(candidate.id));
  if (taken.length > 0) return byYearlyValue(taken);
  return byYearlyValue(candidates).slice(0, 1);
}

/** The best first, by the yearly value, since lives differ. */
export function byYearlyValue(candidates: readonly LetteredStudy[]): LetteredStudy[] {
  return candidates.toSorted(
    (a, b) => b.answer.answer.equivalentAnnualValue - a.answer.answer.equivalentAnnualValue,
  );
}

import { recommendation } from "../../../core/purchase/purchase-words.ts";
import { type CaseView, caseView, type LetteredStudy } from "../../../core/report/case-view.ts";
import type { Format } from "../../format/format.ts";
import type { CaseAnswered } from "./working.ts";

/** An answer as the page shows it. */
export interface AnswerView extends CaseView {
  /** true: demands, prices and bundles were asked as well */
  readonly isFurther: boolean;
}

/**
 * An answer with its letters and its sentence, money written as everywhere on the screen. Example: "Take Large machine: over
 * 10 years at 8 % it is worth 61,000 EUR more than it costs ...".
 */
export function answerView({ purchaseCase, found }: CaseAnswered, format: Format): AnswerView {
  const { shop, study, gap, findings } = found;
  const amount = (value: number): string => format.number(value, 0);
  const money = (value: number): string => `${amount(value)}\u202f${shop.currency}`;
  const view = { ...caseView({ shop, purchaseCase, study, gap, findings }), amount, money };
  return { ...view, headline: headlineOf(view), isFurther: study.bundle !== null };
}

/** The recommendation of one candidate, money as shown. */
export function sentenceOf(view: CaseView, own: LetteredStudy): string {
  const { answer, demand, makesNothing, candidate } = own;
  return recommendation(
    { names: [candidate.name], answer, demand, makesNothing },
    view.purchaseCase,
    view.money,
  );
}

/** What to take of everything; one candidate alone keeps its own condition. */
function headlineOf(view: CaseView): string {
  const { study, leading, purchaseCase, money } = view;
  const [first] = leading;
  if (first === undefined) return view.headline;
  if (study.bundle === null) return sentenceOf(view, first);
  const taken = study.bundle.best.candidateIds.length;
  if (taken === 1) return sentenceOf(view, first);
  if (taken === 0 || study.together === null) return view.headline;
  const names = leading.map(({ candidate }) => candidate.name);
  return recommendation(
    { names, answer: study.together, demand: null, makesNothing: false },
    purchaseCase,
    money,
  );
}

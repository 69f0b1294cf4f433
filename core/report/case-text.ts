import type { CaseStudy } from "../purchase/case-study.ts";
import { assumptionsOf, NOT_CONSIDERED } from "../purchase/purchase-words.ts";
import {
  BREAK_EVEN_NOTE,
  type FigureRow,
  figureRows,
  replacedText,
  runningRows,
  utilisationRows,
} from "./case-figures.ts";
import { type CaseReport, type CaseView, caseView, type LetteredStudy } from "./case-view.ts";
import { CASE_CAUTIONS, endText, INPUT_WORDS } from "./case-words.ts";
import { column, rightColumn, shortText, wrapped } from "./plain-text.ts";
import { bulleted, sectionsText, title, WIDTH } from "./text-sections.ts";

/** A purchase case as plain text, at most 100 characters wide: first what to do, then why, then what it rests on. */
export function caseText(report: CaseReport): string {
  const view = caseView(report);
  const groups = groupsOf(view.candidates);
  return sectionsText([
    headLines(view),
    candidateLines(view),
    ...groups.map((own) =>
      tableLines("What it is worth", figureRows(view, own), letters(own), BREAK_EVEN_NOTE),
    ),
    ...groups.map((own) => cashLines(view, own)),
    ...groups.map((own) =>
      tableLines("How the works runs in a mean year", runningRows(view, own), ["as it is", ...letters(own)]),
    ),
    ...groups.map((own) =>
      tableLines("Machine hours in use, of staffed hours", utilisationRows(view, own), [
        "as it is",
        ...letters(own),
      ]),
    ),
    tornadoLines(view),
    bundleLines(view),
    pointLines("Filament and pellets", [view.study.chart.sentence]),
    pointLines("Weekly figures and real plans", [gapSentence(view)]),
    pointLines("What it rests on", assumptionsOf(view.purchaseCase)),
    pointLines("Not considered", NOT_CONSIDERED),
    pointLines("Cautions", [...view.findings.map(({ sentence }) => sentence), ...CASE_CAUTIONS]),
  ]);
}

/** So many candidates stand beside each other. */
const COLUMNS = 5;
const CELL = 12;
const LABEL = WIDTH - (COLUMNS + 1) * CELL;

function groupsOf(candidates: readonly LetteredStudy[]): LetteredStudy[][] {
  const groups: LetteredStudy[][] = [];
  for (let first = 0; first < candidates.length; first += COLUMNS)
    groups.push(candidates.slice(first, first + COLUMNS));
  return groups;
}

function letters(candidates: readonly LetteredStudy[]): string[] {
  return candidates.map(({ letter }) => letter);
}

function headLines({ purchaseCase, shop, study, headline }: CaseView): string[] {
  return [
    shortText(purchaseCase.name, WIDTH),
    shortText(shop.name, WIDTH),
    "",
    ...wrapped(headline, WIDTH),
    ...wrapped(statusSentence(study.status) ?? "", WIDTH),
  ];
}

/** What is to be known of an answer that is not the whole one; null: it is. */
export function statusSentence(status: CaseStudy["status"]): string | null {
  return status === "complete" ? null : STATUS_WORDS[status];
}

const STATUS_WORDS = {
  rough: "This is a first answer from few scenarios and weeks; ask for the whole one before deciding.",
  stopped:
    "The work was stopped: this is what was answered until then, on the scenarios done for every candidate.",
} as const;

function candidateLines(view: CaseView): string[] {
  return view.candidates.flatMap((own) => [
    shortText(`${own.letter}  ${own.candidate.name}`, WIDTH),
    ...wrapped(own.sentence, WIDTH - INDENT).map(indented),
    ...wrapped(replacedText(view, own), WIDTH - INDENT).map(indented),
  ]);
}

const INDENT = 3;

function indented(line: string): string {
  return " ".repeat(INDENT) + line;
}

function tableLines(
  heading: string,
  rows: readonly FigureRow[],
  columns: readonly string[],
  note?: string,
): string[] {
  return [
    title(heading),
    tableLine("", columns),
    ...rows.map(({ label, cells }) => tableLine(label, cells)),
    ...(note === undefined ? [] : wrapped(note, WIDTH)),
  ];
}

function tableLine(label: string, cells: readonly string[]): string {
  const columns = cells.map((cell) => rightColumn(shortText(cell, CELL - 1), CELL));
  return (column(label, LABEL) + columns.join("")).trimEnd();
}

/** Cash of each year, and its sum so far below it. */
function cashLines({ amount, shop }: CaseView, candidates: readonly LetteredStudy[]): string[] {
  const flows = candidates.map(({ answer }) => answer.flow.total);
  const years = Math.max(...flows.map((total) => total.length));
  const shown = Math.min(years, MOST_YEARS + 1);
  const rows = Array.from({ length: shown }, (_, year) => ({
    label: year === 0 ? "Start" : `Year ${year}`,
    cells: flows.map((total) => (year < total.length ? amount(total[year] ?? 0) : "")),
  }));
  const sums = { label: "Sum, not discounted", cells: flows.map((total) => amount(sumOf(total))) };
  const more = years > shown ? "The later years are in cash.csv." : undefined;
  return tableLines(`Cash by year, ${shop.currency}`, [...rows, sums], letters(candidates), more);
}

const MOST_YEARS = 15;

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function tornadoLines({ leading, amount, shop }: CaseView): string[] {
  const [first] = leading;
  if (first === undefined || first.tornado.length === 0) return [];
  return [
    title(`What the value of ${first.letter} depends on, ${shop.currency}`),
    ...first.tornado.slice(0, MOST_BARS).map(({ input, low, high, unit }) => {
      const end = (own: typeof low): string =>
        `${rightColumn(endText(own.at, unit), 9)} ${rightColumn(amount(own.value), 12)}`;
      return `    ${column(INPUT_WORDS[input], 26)}${end(low)}   to ${end(high)}`;
    }),
  ];
}

const MOST_BARS = 8;

function bundleLines({ study: { bundle }, candidates, money }: CaseView): string[] {
  if (bundle === null) return [];
  const lettersOf = (ids: readonly string[]): string =>
    candidates
      .filter(({ candidate }) => ids.includes(candidate.id))
      .map(({ letter }) => letter)
      .join(" + ");
  const best = bundle.worked.toSorted((a, b) => b.value - a.value).slice(0, MOST_BUNDLES);
  return [
    title("Taken together"),
    ...bulleted(
      bundle.best.candidateIds.length === 0
        ? "Within the budget nothing is worth taking."
        : `Best within the budget: ${lettersOf(bundle.best.candidateIds)}, worth ${money(bundle.best.value)} a year for ${money(bundle.best.outlay)} at the start.`,
    ),
    ...best.map(
      ({ candidateIds, value, outlay }) =>
        `      ${column(lettersOf(candidateIds), 16)} ${rightColumn(money(value), 18)} a year, ${rightColumn(money(outlay), 18)} at the start`,
    ),
    ...bulleted(bundle.sentence),
  ];
}

const MOST_BUNDLES = 6;

/** How far the weekly figures are from real plans, where that was looked at. */
export function gapSentence({ gap }: CaseReport): string {
  return (
    gap?.sentence ??
    "No week was planned in full, so it is not known how far the weekly figures are from real plans."
  );
}

function pointLines(heading: string, sentences: readonly string[]): string[] {
  return [title(heading), ...sentences.flatMap((sentence) => bulleted(sentence))];
}

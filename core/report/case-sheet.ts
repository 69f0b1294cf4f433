import { assumptionsOf, NOT_CONSIDERED } from "../purchase/purchase-words.ts";
import { type CaseChart, cashChart, spreadChart } from "./case-charts.ts";
import { crossoverDrawing } from "./case-crossover.ts";
import { BREAK_EVEN_NOTE, figureRows, runningRows, utilisationRows } from "./case-figures.ts";
import { CASE_STYLE } from "./case-style.ts";
import { gapSentence, statusSentence } from "./case-text.ts";
import { tornadoChart } from "./case-tornado.ts";
import { byYearlyValue, type CaseReport, type CaseView, caseView, type LetteredStudy } from "./case-view.ts";
import { CASE_CAUTIONS } from "./case-words.ts";
import { countText } from "./display.ts";
import { type Html, html, nothing, when } from "./html-escape.ts";
import { shortText } from "./plain-text.ts";
import { mark } from "./sheet-head.ts";
import { nameText, scrolling } from "./sheet-parts.ts";
import { sheetPage } from "./sheet-page.ts";

/**
 * A purchase case as one HTML document that needs nothing else and prints on one page of A4 or Letter: what to do and on what
 * condition, the figures, three charts, what the value depends on, what it rests on and what nobody looked at.
 */
export function caseSheet(report: CaseReport): string {
  const view = caseView(report);
  const shown = shownCandidates(view);
  return sheetPage({
    title: `${shortText(view.purchaseCase.name, TITLE_CHARS)}, ${shortText(view.shop.name, TITLE_CHARS)}`,
    style: CASE_STYLE,
    body: html`${head(view)}<main>
${when(shown.length > 0, () => html`${figuresTable(view, shown)}${charts(view, shown)}`)}${pair(view)}</main>
${foot(view)}`,
  });
}

const TITLE_CHARS = 60;
/** More columns do not fit on the page. */
const MOST_SHOWN = 6;

/** All candidates in their order, or the best where there are too many. */
function shownCandidates({ candidates }: CaseView): LetteredStudy[] {
  const best = byYearlyValue(candidates).slice(0, MOST_SHOWN);
  return candidates.filter((own) => best.includes(own));
}

function head({ purchaseCase, shop, study, headline }: CaseView): Html {
  const status = statusSentence(study.status);
  return html`<header>
<p class="brand">${mark()}<span>Hopper &amp; Spool</span></p>
<h1>${nameText(purchaseCase.name)}<small>${nameText(shop.name)}</small></h1>
<p class="verdict"><bdi>${headline}</bdi></p>
${when(status !== null, () => html`<p class="status">${status ?? ""}</p>`)}</header>
`;
}

function figuresTable(view: CaseView, shown: readonly LetteredStudy[]): Html {
  const isLeading = shown.map((own) => view.leading.includes(own));
  const columns = shown.map(
    ({ letter, candidate }, place) =>
      html`<th scope="col" class="num${isLeading[place] ? " lead-column" : ""}"><b>${letter}</b><bdi>${shortText(candidate.name, NAME_CHARS)}</bdi></th>`,
  );
  const rows = figureRows(view, shown).map(
    ({ label, cells }) =>
      html`<tr${when(label.startsWith("Net present value"), () => html` class="main"`)}><th scope="row">${label}</th>${cells.map((cell, place) => html`<td class="num${isLeading[place] ? " lead-column" : ""}">${cell}</td>`)}</tr>
`,
  );
  const hidden = view.candidates.length - shown.length;
  const left = hidden === 0 ? "" : ` ${countText(hidden, "candidate")} worth less: in case.txt.`;
  return html`<div class="block">${scrolling(
    "The figures",
    html`<table class="figures"><caption><b>What each is worth</b> ${BREAK_EVEN_NOTE}${left}</caption><thead><tr><td></td>${columns}</tr></thead><tbody>${rows}</tbody></table>`,
  )}</div>
`;
}

const NAME_CHARS = 52;

function charts(view: CaseView, shown: readonly LetteredStudy[]): Html {
  const three = [cashChart(view, shown), spreadChart(view, shown), crossoverDrawing(view)];
  return html`<div class="block charts">${three.map(figure)}</div>
`;
}

function figure({ heading, caption, drawing }: CaseChart): Html {
  return html`<figure><h2>${heading}</h2>${drawing}<figcaption>${caption}</figcaption></figure>`;
}

/** What the value of the recommended candidate depends on, beside how the works runs with it; below each what is to be read. */
function pair(view: CaseView): Html {
  const [first] = view.leading;
  const found = view.findings.map(({ sentence }) => sentence);
  const more = found.length > MOST_FINDINGS ? [`${found.length - MOST_FINDINGS} more are in case.txt.`] : [];
  const cautions = [...found.slice(0, MOST_FINDINGS), ...more, ...CASE_CAUTIONS];
  const bundle = view.study.bundle === null ? [] : [view.study.bundle.sentence];
  const rests = [...assumptionsOf(view.purchaseCase), gapSentence(view), ...bundle];
  return html`<div class="block pair"><div>${first === undefined || first.tornado.length === 0 ? nothing : figure(tornadoChart(view, first))}${list("Not considered", NOT_CONSIDERED)}${list("Cautions", cautions)}</div>
<div>${first === undefined ? nothing : runningTable(view, first)}${list("What it rests on", rests)}</div></div>
`;
}

/** More would not leave the page one page. */
const MOST_FINDINGS = 2;

function runningTable(view: CaseView, own: LetteredStudy): Html {
  const rows = [...runningRows(view, [own]), ...utilisationRows(view, [own])].map(
    ({ label, cells }) =>
      html`<tr><th scope="row"><bdi>${shortText(label, LABEL_CHARS)}</bdi></th>${cells.map((cell) => html`<td class="num">${cell}</td>`)}</tr>
`,
  );
  const shown = rows.slice(0, MOST_ROWS);
  const left = rows.length - shown.length;
  return scrolling(
    "The works in a mean year",
    html`<table class="figures"><caption><b>The works in a mean year</b> machines: hours in use, of staffed hours${left > 0 ? `; ${left} more in case.txt` : ""}</caption><thead><tr><td></td><th scope="col" class="num">as it is</th><th scope="col" class="num">with ${own.letter}</th></tr></thead><tbody>${shown}</tbody></table>`,
  );
}

const LABEL_CHARS = 34;
/** So many rows fit beside the tornado. */
const MOST_ROWS = 18;

function list(heading: string, sentences: readonly string[]): Html {
  return html`<section class="small"><h2>${heading}</h2><ul>${sentences.map((sentence) => html`<li><bdi>${sentence}</bdi></li>`)}</ul></section>`;
}

function foot({ purchaseCase }: CaseView): Html {
  const { scenarios, weeks, seed } = purchaseCase;
  return html`<footer><p>Made by Hopper &amp; Spool from the works' own file: ${countText(scenarios, "scenario")} of ${countText(weeks, "week")}, seed ${seed}. The same file and seed give the same sheet.</p></footer>
`;
}

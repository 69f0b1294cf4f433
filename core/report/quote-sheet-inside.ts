import type { AnswerLine, DateSwing, OtherOrder } from "../quote/quote-answer.ts";
import { durationText } from "../shop/time-words.ts";
import { type Html, html, nothing, when } from "./html-escape.ts";
import {
  copiesText,
  counted,
  floorText,
  keptText,
  likelihoodText,
  type QuoteContext,
} from "./quote-facts.ts";
import { costText, crossingText } from "./quote-cost-words.ts";
import { rushTable, waysTable } from "./quote-tables.ts";
import { bar, idText, nameText, scrolling, tableHead } from "./sheet-parts.ts";

/** What only the people of the shop see: costs, ways, likelihoods, what the numbers depend on, the floor, other orders. */
export function insideSections(context: QuoteContext): Html {
  const { answer, quote } = context;
  if (!answer) return nothing;
  const lines = quote.lines.flatMap((line) => context.answerOf(line) ?? []);
  return html`<section class="inside" aria-labelledby="inside-h"><h2 id="inside-h">What stands behind it</h2>
<p class="lead">${answer.runs > 0 ? `Dates come from living through the plan ${context.display.number(answer.runs, 0)} times.` : "Dates were not simulated."}</p>
${lines.map((line) => lineSection(line, context))}${wholeSection(context)}</section>
`;
}

function lineSection(line: AnswerLine, context: QuoteContext): Html {
  const { shop } = context;
  const part = shop.parts.find(({ id }) => id === line.asked.partId);
  return html`<h3>${copiesText(line.asked.quantity)} of ${nameText(part?.name ?? line.asked.partId)}</h3>
<dl class="told">${lineFacts(line, context).map(([term, text]) => html`<dt>${term}</dt><dd><bdi>${text}</bdi></dd>`)}</dl>
${waysTable(line, context)}${rushTable(line, context)}${priceSwings(line, context)}${dateSwings(line, context)}`;
}

function lineFacts(line: AnswerLine, context: QuoteContext): [string, string][] {
  const { display } = context;
  const { promise, kept, wanted, asked, plannedMin, priceDrivers, crossover } = line;
  const crossing = crossover ? crossingText(crossover) : "";
  const band = priceDrivers?.band;
  return [
    ["Price made from", costText(line, context)],
    ...(promise && promise.likelihoodPct !== null
      ? [
          pair(
            "Promised date",
            `${display.dateTime(promise.byMin)}, kept with ${likelihoodText(promise.likelihoodPct)}`,
          ),
        ]
      : []),
    ...kept.map((date, at) => pair(at === 0 ? "Kept with" : "", keptText(date, display))),
    ...(wanted && asked.wantedMin !== null
      ? [pair("Wanted date", `${display.dateTime(asked.wantedMin)}, kept with ${counted(wanted)}`)]
      : []),
    ...(plannedMin === null ? [] : [pair("In the plan", display.dateTime(plannedMin))]),
    ...(band && band.high > band.low
      ? [
          pair(
            "Band of estimate",
            `${display.money(band.low)} to ${display.money(band.high)} by itself, if prints take 10 % less or more`,
          ),
        ]
      : []),
    ...(crossing === "" ? [] : [pair("Crossover", crossing)]),
  ];
}

function pair(term: string, text: string): [string, string] {
  return [term, text];
}

function priceSwings({ priceDrivers }: AnswerLine, { display, shop }: QuoteContext): Html {
  if (!priceDrivers || priceDrivers.drivers.length === 0) return nothing;
  const { drivers } = priceDrivers;
  const largest = Math.max(...drivers.map(({ swing }) => swing));
  const rows = drivers.map(
    ({ input, low, high, swing }) =>
      html`<tr><th scope="row">${input}</th><td>${low.change}</td><td class="num">${display.amount(low.price)}</td><td>${high.change}</td><td class="num">${display.amount(high.price)}</td><td class="bar-cell">${bar(swing, largest)}</td></tr>
`,
  );
  const head = [
    "Input",
    "Lower",
    `>Price, ${shop.currency}`,
    "Higher",
    `>Price, ${shop.currency}`,
    "How far apart",
  ];
  return scrolling(
    "What moves the price most",
    html`<table><caption><b>What moves the price by itself most</b></caption>${tableHead(head)}<tbody>${rows}</tbody></table>`,
  );
}

function dateSwings({ dateSwings: swings }: AnswerLine, { display }: QuoteContext): Html {
  if (!swings || swings.length === 0) return nothing;
  const largest = Math.max(...swings.map(({ swingMin }) => swingMin ?? 0));
  const date = ({ byMin }: DateSwing["low"]): string => (byMin === null ? "never" : display.dateTime(byMin));
  const rows = swings.map(
    ({ input, low, high, swingMin }) =>
      html`<tr><th scope="row">${input}</th><td>${low.change}</td><td class="time">${date(low)}</td><td>${high.change}</td><td class="time">${date(high)}</td><td class="bar-cell">${bar(swingMin ?? largest, largest)}</td></tr>
`,
  );
  const head = ["Input", "Lower", "Date", "Higher", "Date", "How far apart"];
  return scrolling(
    "What moves the date most",
    html`<table><caption><b>What moves the date most</b></caption>${tableHead(head)}<tbody>${rows}</tbody></table>`,
  );
}

function wholeSection(context: QuoteContext): Html {
  const { answer, display, quote } = context;
  if (!answer) return nothing;
  const { promised } = answer.together;
  return html`<h3>The whole quote</h3>
<p>${floorText(answer, display)}</p>
${when(promised !== null && quote.lines.length > 1, () => html`<p>All promised dates together are kept with ${promised ? counted(promised) : ""}.</p>`)}
${othersTable(answer.others ?? [], context)}
${when(answer.findings.length > 0, () => html`<h3>To be settled</h3><ul class="agreed">${answer.findings.map(({ sentence }) => html`<li><bdi>${sentence}</bdi></li>`)}</ul>`)}`;
}

const MOST_OTHERS = 12;

function share(value: number | null): string {
  return value === null ? "" : likelihoodText(value * 100);
}

function othersTable(others: readonly OtherOrder[], { display }: QuoteContext): Html {
  if (others.length === 0) return html`<p>No other order is finished later because of it.</p>`;
  const date = (byMin: number | null): string => (byMin === null ? "never" : display.dateTime(byMin));
  const rows = others.slice(0, MOST_OTHERS).map(
    ({ orderId, laterMin, wasByMin, isByMin, wasInTime, isInTime }) =>
      html`<tr><th scope="row">${idText(orderId)}</th><td class="num">${durationText(laterMin)}</td><td class="time">${date(wasByMin)}</td><td class="time">${date(isByMin)}</td><td class="num">${share(wasInTime)}</td><td class="num">${share(isInTime)}</td></tr>
`,
  );
  const head = ["Order", ">Later, mean", "Kept with 80 % without", "With it", ">In time without", ">With it"];
  const more = others.length > MOST_OTHERS ? `; ${others.length - MOST_OTHERS} more suffer less` : "";
  return scrolling(
    "Other orders",
    html`<table><caption><b>What it does to other orders</b>${more}</caption>${tableHead(head)}<tbody>${rows}</tbody></table>`,
  );
}

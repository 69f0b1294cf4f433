import { countText, type Display, percentAtMost } from "./display.ts";
import { headlineOf } from "./headline.ts";
import { replanText } from "./replan-words.ts";
import { type Html, html, when } from "./html-escape.ts";
import { nameText, type SheetContext } from "./sheet-parts.ts";
import { lateOrders, machineHours, unplannedCopies } from "./week-facts.ts";

/** The top of the sheet: whose week it is, what it costs, how good that is proven to be, and what needs a person first. */
export function sheetHead(context: SheetContext): Html {
  const { plan, display } = context;
  const headline = headlineOf(plan, display);
  const replan = replanText(plan, display);
  return html`<header>
<p class="brand">${mark()}<span>Hopper &amp; Spool</span></p>
<div class="top"><div>
<h1>${headline.period}<small>${nameText(plan.shopName)}</small></h1>
<p class="days">${headline.days}</p>
<div class="answer">
<p class="cost"><span class="label">This plan costs</span> <strong>${headline.cost}</strong></p>
<p class="proof">${headline.proof}</p>
<p class="${headline.allWell ? "well" : "attention"}">${headline.attention}</p>
${when(replan !== null, () => html`<p>${replan ?? ""}</p>`)}
${when(headline.ending !== null, () => html`<p class="attention">${headline.ending ?? ""}</p>`)}
</div></div>
<dl class="facts">${facts(context).map(([term, value]) => html`<div><dt>${term}</dt><dd>${value}</dd></div>`)}</dl></div>
${contents()}
</header>
`;
}

function facts({ plan, display }: SheetContext): [term: string, value: string][] {
  const massKg = plan.builds.reduce((sum, build) => sum + build.massKg, 0);
  const copies = plan.builds.flatMap((build) => build.items).reduce((sum, item) => sum + item.copies, 0);
  const packs = plan.feedstockNeeds.reduce((sum, need) => sum + need.packs, 0);
  return [
    ["Proven gap", gapText(plan.bound.value, plan.bound.gapPct)],
    ["Late orders", `${lateOrders(plan).length} of ${plan.orders.length}`],
    ["No place for", countText(unplannedCopies(plan), "copy", "copies")],
    ["Copies printed", display.number(copies, 0)],
    ["Builds", display.number(plan.builds.length, 0)],
    ["Machine hours", hoursText(machineHours(plan), display)],
    ["Feedstock", display.mass(massKg)],
    ["To buy", countText(packs, "pack")],
  ];
}

function gapText(bound: number, gapPct: number): string {
  return bound > 0 ? percentAtMost(gapPct, 1) : "not proven";
}

function hoursText(hours: number, display: Display): string {
  return `${display.number(Math.round(hours), 0)} h`;
}

const CONTENTS = [
  ["attention", "Needs attention"],
  ["week", "Week by machine"],
  ["tasks", "Operators' tasks"],
  ["orders", "Orders"],
  ["costs", "Costs"],
  ["feedstock", "Feedstock"],
  ["worth", "What it is worth"],
  ["notes", "Cautions and limits"],
] as const;

function contents(): Html {
  const links = CONTENTS.map(([id, text]) => html`<li><a href="#${id}">${text}</a></li>`);
  return html`<nav aria-label="On this sheet"><ul>${links}</ul></nav>`;
}

/** The sign of the program: a hopper above, a spool below. */
export function mark(): Html {
  return html`<svg class="mark" width="28" height="28" viewBox="0 0 28 28" aria-hidden="true"><path class="mark-hopper" d="M4 3h20l-6.5 8.5v3h-7v-3Z"/><circle class="mark-spool" cx="14" cy="20" r="6"/><circle class="mark-hole" cx="14" cy="20" r="2"/></svg>`;
}

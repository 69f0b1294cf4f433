import { durationText } from "../shop/time-words.ts";
import { countText } from "./display.ts";
import { type Html, html, nothing, when } from "./html-escape.ts";
import { idText, nameText, section, type SheetContext } from "./sheet-parts.ts";
import {
  lateOrders,
  type OrderOutcome,
  reasonsAndHelp,
  shareText,
  withoutPlace,
  type WithoutPlace,
} from "./week-facts.ts";

/** Most cards that are open at once; the others are behind a fold and in the table of orders. */
const MOST_CARDS = 6;

/** Where nothing would help, so many reasons are not folded away. */
const REASONS_WITHOUT_HELP = 2;

/** Late orders and copies without a place, each with why and what would help: what a person has to decide first. */
export function attentionSection(context: SheetContext): Html {
  const late = lateOrders(context.plan).map((order) => lateCard(order, context));
  const noPlace = withoutPlace(context.plan).map((entry) => noPlaceCard(entry, context));
  if (late.length === 0 && noPlace.length === 0) {
    const body = html`<p class="well">Every order is planned and in time. Nothing needs a decision.</p>`;
    return section("attention", "Needs attention", "Late and unplanned orders would stand here.", body);
  }
  const lead =
    "Copies that found no place, then late orders, the costliest lateness first. All of them stand at the top of the table of orders too.";
  const groups = [
    cards(noPlace, (count) => countText(count, "more order with no place", "more orders with no place")),
    cards(late, (count) => countText(count, "more late order")),
  ];
  return section("attention", "Needs attention", lead, groups);
}

function cards(all: readonly Html[], more: (count: number) => string): Html {
  if (all.length === 0) return nothing;
  const rest = all.slice(MOST_CARDS);
  return html`<div class="cards">${all.slice(0, MOST_CARDS)}</div>
${when(rest.length > 0, () => html`<details class="more"><summary>${more(rest.length)}</summary><div class="cards">${rest}</div></details>`)}`;
}

function lateCard(order: OrderOutcome, context: SheetContext): Html {
  const { display } = context;
  const finished = order.finishedAt
    ? `finished ${display.dateTime(display.minute(order.finishedAt))}`
    : "not finished in this plan";
  const { reasons, help } = reasonsAndHelp(order.why);
  const open = help.length > 0 ? 0 : REASONS_WITHOUT_HELP;
  return html`<article class="card late-card"><h3><span class="sign" aria-hidden="true">▼</span> ${idText(order.orderId)} late by ${durationText(order.lateMin)}</h3>
${orderLine(order.orderId, context)}
<p>Due ${display.dateTime(display.minute(order.dueAt))}, ${finished}. Being late costs ${display.money(order.lateCost)}.</p>
${list(reasons.slice(0, open))}${helpList(help)}${when(reasons.length > open, () => folded(reasons.slice(open)))}</article>
`;
}

function noPlaceCard(entry: WithoutPlace, context: SheetContext): Html {
  const ordered = context.names.order(entry.orderId)?.quantity;
  const outcome = context.outcomeOf(entry.orderId);
  const { reasons, help } = reasonsAndHelp(outcome && outcome.lateMin === 0 ? outcome.why : []);
  const others = reasons.filter((sentence) => !entry.sentences.includes(sentence));
  return html`<article class="card unplanned-card"><h3><span class="sign" aria-hidden="true">✕</span> ${idText(entry.orderId)} no place for ${shareText(entry.copies, ordered)}</h3>
${orderLine(entry.orderId, context)}
${list(entry.sentences)}${helpList(help)}${when(others.length > 0, () => folded(others))}</article>
`;
}

function orderLine(orderId: string, { names }: SheetContext): Html {
  const customer = names.customer(orderId);
  return html`<p class="who">${nameText(names.part(orderId))}${when(customer !== "", () => html` for ${nameText(customer)}`)}</p>`;
}

function helpList(help: readonly string[]): Html {
  return when(help.length > 0, () => html`<p class="help">What would help</p>${list(help)}`);
}

function folded(reasons: readonly string[]): Html {
  return html`<details><summary>${countText(reasons.length, "reason")} why</summary>${list(reasons)}</details>`;
}

function list(sentences: readonly string[]): Html {
  if (sentences.length === 0) return nothing;
  return html`<ul>${sentences.map((sentence) => html`<li><bdi>${sentence}</bdi></li>`)}</ul>`;
}

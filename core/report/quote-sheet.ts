import type { Mesh } from "../geometry/mesh.ts";
import type { QuoteLine } from "../shop/quote.ts";
import type { Part } from "../shop/part.ts";
import { bodyDrawing } from "./body-drawing.ts";
import { boxMesh } from "./coarse-mesh.ts";
import { type Html, html, nothing, when } from "./html-escape.ts";
import { copiesText, type QuoteContext } from "./quote-facts.ts";
import { insideSections } from "./quote-sheet-inside.ts";
import { QUOTE_STYLE } from "./quote-sheet-style.ts";
import { assumptions, PART_CAUTIONS, partFacts, quoteTitle } from "./quote-words.ts";
import { nameText } from "./sheet-parts.ts";
import { sheetPage } from "./sheet-page.ts";

/** For whom a sheet is: the customer, or the people of the shop, who see cost, floor, margin and likelihoods too. */
export type QuoteReader = "customer" | "inside";

/**
 * A quote as one HTML document that needs nothing else and prints upright on A4 and Letter: seller and customer, each part with
 * its drawing, prices by quantity, date, total, terms, assumptions and cautions. `meshes` are bodies by part id; a part without one
 * is drawn as its box. Example: 2 lines of the demo shop: 150 kB with both drawings, two pages.
 */
export function quoteSheet(
  context: QuoteContext,
  reader: QuoteReader,
  meshes: ReadonlyMap<string, Mesh> = new Map(),
): string {
  const body = html`${sheetHead(context, reader)}<main>
<section aria-labelledby="parts-h"><h2 id="parts-h">Parts and prices</h2>
${context.quote.lines.map((line) => item(line, context, meshes))}${totalTable(context)}</section>
${conditions(context)}${reader === "inside" ? insideSections(context) : nothing}</main>
<footer><p>Made by Hopper &amp; Spool from the works' own file. All times are local to ${context.shop.timeZone}.</p></footer>
`;
  return sheetPage({ title: quoteTitle(context), style: QUOTE_STYLE, body });
}

function sheetHead({ shop, quote, display }: QuoteContext, reader: QuoteReader): Html {
  const { seller } = shop;
  const day = (instant: string): string => display.day(display.date(display.minute(instant)));
  return html`<header>
${when(reader === "inside", () => html`<p class="inside-mark">For the people of the shop only: this version shows costs and likelihoods.</p>`)}
<div class="letter-head"><div><p class="seller">${nameText(seller?.name ?? shop.name)}</p>
<p class="contact lines-kept"><bdi>${seller?.address ?? ""}</bdi></p></div>
<p class="contact lines-kept"><bdi>${[seller?.contact, taxText(seller?.taxNumber)].filter(Boolean).join("\n")}</bdi></p></div>
<h1>Quote <bdi>${quote.id}</bdi></h1>
<div class="parties"><div><p class="small">For</p><p><b>${nameText(quote.customer === "" ? "whoever asked" : quote.customer)}</b></p>
<p class="lines-kept"><bdi>${quote.customerAddress}</bdi></p></div>
<dl><dt>Date</dt><dd>${day(quote.askedAt)}</dd><dt>Holds until</dt><dd>${day(quote.validUntil)}</dd></dl></div>
${when(quote.note !== "", () => html`<p class="lines-kept"><bdi>${quote.note}</bdi></p>`)}
</header>
`;
}

function taxText(taxNumber: string | undefined): string {
  return taxNumber ? `Tax number ${taxNumber}` : "";
}

function item(line: QuoteLine, context: QuoteContext, meshes: ReadonlyMap<string, Mesh>): Html {
  const { display, quote, value } = context;
  const part = context.partOf(line);
  const total = value.lines[quote.lines.indexOf(line)] ?? null;
  const deal: [string, string][] = [
    ["Copies", display.number(line.quantity, 0)],
    ["Price each", line.pricePerPiece === null ? "no price" : display.money(line.pricePerPiece)],
    ...(line.oneOffPrice > 0 ? [["Once", display.money(line.oneOffPrice)] as [string, string]] : []),
    ["In all", total === null ? "no price" : display.money(total)],
    ["Ready by", line.promisedAt === null ? "no date" : dayAndTime(line.promisedAt, context)],
  ];
  return html`<article class="item">${part ? picture(part, meshes.get(part.id)) : nothing}<div>
<h3>${nameText(part?.name ?? line.partId)}</h3>
<dl class="deal">${deal.map(([term, text]) => html`<div><dt>${term}</dt><dd>${text}</dd></div>`)}</dl>
${when(line.breaks.length > 1, () => stepTable(line, context))}
<dl class="told">${(part ? partFacts(part, display) : []).map(([term, text]) => html`<dt>${term}</dt><dd><bdi>${text}</bdi></dd>`)}</dl></div></article>
`;
}

function dayAndTime(instant: string, { display }: QuoteContext): string {
  const minute = display.minute(instant);
  return `${display.day(display.date(minute))}, ${display.clock(minute)}`;
}

function picture(part: Part, mesh: Mesh | undefined): Html {
  const { boxMm } = part.geometry.measures;
  const drawn = mesh ? bodyDrawing(mesh, `Drawing of ${part.name}`) : null;
  const figure = drawn ?? bodyDrawing(boxMesh(boxMm), `Box around ${part.name}`);
  if (!figure) return html`<div></div>`;
  return html`<figure>${figure}${when(!drawn, () => html`<figcaption>drawn as its box</figcaption>`)}</figure>`;
}

function stepTable({ breaks }: QuoteLine, { display, shop }: QuoteContext): Html {
  const counts = breaks.map(({ quantity }) => html`<td>${display.number(quantity, 0)}</td>`);
  const prices = breaks.map(({ pricePerPiece }) => html`<td>${display.amount(pricePerPiece)}</td>`);
  return html`<table class="steps"><tbody><tr><th scope="row">Copies from</th>${counts}</tr><tr><th scope="row">Each, ${shop.currency}</th>${prices}</tr></tbody></table>`;
}

function totalTable({ quote, value, display, shop }: QuoteContext): Html {
  const rows = quote.lines.map((line, at) => {
    const amount = value.lines[at] ?? null;
    const once = line.oneOffPrice > 0 ? ` and ${display.amount(line.oneOffPrice)} once` : "";
    const made = line.pricePerPiece === null ? "" : ` × ${display.amount(line.pricePerPiece)}${once}`;
    return html`<tr><th scope="row">Line ${at + 1}: ${copiesText(line.quantity)}${made}</th><td class="num">${amount === null ? "no price" : display.amount(amount)}</td></tr>`;
  });
  const added = when(
    value.minimumSurcharge > 0,
    () =>
      html`<tr><th scope="row">Added to reach the smallest order</th><td class="num">${display.amount(value.minimumSurcharge)}</td></tr>`,
  );
  const total = value.total === null ? "no price for all lines" : display.amount(value.total);
  return html`<table class="total"><tbody>${rows}${added}</tbody><tfoot><tr><th scope="row">Total, ${shop.currency}</th><td class="num">${total}</td></tr></tfoot></table>`;
}

function conditions(context: QuoteContext): Html {
  const { seller } = context.shop;
  return html`<section aria-labelledby="terms-h"><h2 id="terms-h">Terms and assumptions</h2>
${when((seller?.terms ?? "") !== "", () => html`<p class="lines-kept"><bdi>${seller?.terms ?? ""}</bdi></p>`)}
<ul class="agreed">${assumptions(context).map((text) => html`<li>${text}</li>`)}</ul>
<h3>Cautions</h3><ul class="agreed">${PART_CAUTIONS.map((text) => html`<li>${text}</li>`)}</ul></section>
`;
}

import type { PlanDocument } from "../plan/plan-document.ts";
import type { Shop } from "../shop/shop.ts";
import type { Display } from "./display.ts";
import type { FamilyMark } from "./family-marks.ts";
import { type Html, html } from "./html-escape.ts";
import type { Names } from "./names.ts";
import type { OrderOutcome } from "./week-facts.ts";

/** What every part of the sheet needs. */
export interface SheetContext {
  readonly shop: Shop;
  readonly plan: PlanDocument;
  readonly display: Display;
  readonly names: Names;
  /** what became of an order */
  outcomeOf(orderId: string): OrderOutcome | null;
  /** letter, colour and hatch of a feedstock's polymer family */
  markOf(feedstockId: string): FamilyMark;
}

/** A section with a heading that can be linked to and a sentence that says what it answers. */
export function section(id: string, heading: string, lead: string, body: Html | readonly Html[]): Html {
  return html`<section id="${id}" aria-labelledby="${id}-h"><h2 id="${id}-h">${heading}</h2><p class="lead">${lead}</p>${body}</section>
`;
}

/**
 * A name given by a person: isolated, so that right-to-left text does not turn its surroundings round, and cut by style only,
 * so that the whole text stays in the document and in the tooltip.
 */
export function nameText(name: string): Html {
  return name.length > LONG_NAME
    ? html`<bdi class="name" title="${name}">${name}</bdi>`
    : html`<bdi class="name">${name}</bdi>`;
}

/** An id, set so that it does not break. */
export function idText(id: string): Html {
  return html`<bdi class="id">${id}</bdi>`;
}

/** A bar whose length is the share of the largest value; the number stands beside it, so it is hidden from screen readers. */
export function bar(value: number, largest: number, look = "plain"): Html {
  const width = largest > 0 ? Math.max(0, Math.min(100, (100 * value) / largest)) : 0;
  return html`<svg class="bar" width="100%" height="10" aria-hidden="true"><rect class="bar-track" width="100%" height="10"/><rect class="bar-${look}" width="${percent(width)}" height="10"/></svg>`;
}

/** A swatch of a polymer family: its colour, hatch and letter. */
export function familySwatch(mark: FamilyMark): Html {
  return html`<svg class="swatch" width="26" height="16" aria-hidden="true"><rect class="outline" x=".5" y=".5" width="25" height="15" fill="url(#${mark.patternId})"/><rect class="letter-plate" x="1" y="1" width="12" height="14"/><text class="letter" x="7" y="12">${mark.letter}</text></svg>`;
}

/** A wide table in a frame that scrolls sideways on a narrow screen, by keyboard too. */
export function scrolling(label: string, table: Html): Html {
  return html`<div class="scroll" tabindex="0" role="region" aria-label="${label}">${table}</div>`;
}

/** A table head cell for each column; a column that starts with ">" holds numbers. */
export function tableHead(columns: readonly string[]): Html {
  const cells = columns.map((column) =>
    column.startsWith(">")
      ? html`<th scope="col" class="num">${column.slice(1)}</th>`
      : html`<th scope="col">${column}</th>`,
  );
  return html`<thead><tr>${cells}</tr></thead>`;
}

/** A number for an SVG attribute, in per cent. */
export function percent(value: number): string {
  return `${Number(value.toFixed(3))}%`;
}

const LONG_NAME = 40;

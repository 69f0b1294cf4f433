import type { PlanDocument } from "../plan/plan-document.ts";
import { countText } from "./display.ts";
import { type Html, html } from "./html-escape.ts";
import {
  familySwatch,
  nameText,
  percent,
  scrolling,
  section,
  type SheetContext,
  tableHead,
} from "./sheet-parts.ts";

type Need = PlanDocument["feedstockNeeds"][number];

/** What the plan needs of each feedstock, what is there, and what to buy by when: what must be bought comes first. */
export function feedstockSection(context: SheetContext): Html {
  const { plan, display } = context;
  const needs = plan.feedstockNeeds.toSorted((a, b) => orderByMin(a, context) - orderByMin(b, context));
  const rows = needs.map((need) => needRow(need, context));
  const packs = plan.feedstockNeeds.reduce((sum, need) => sum + need.packs, 0);
  const costs = plan.feedstockNeeds.reduce(
    (sum, need) => sum + need.buyKg * (context.names.grade(need.feedstockId)?.pricePerKg ?? 0),
    0,
  );
  const answer =
    packs === 0
      ? "The stock is enough for this plan."
      : `To buy: ${countText(packs, "pack")} for about ${display.money(costs)}.`;
  const head = ["Feedstock", ">Needed", ">In stock", "Need and stock", ">To buy", "Order by", "Note"];
  return section(
    "feedstock",
    "Feedstock",
    `${answer} Needs hold purge, waste and expected scrap.`,
    scrolling(
      "Table of feedstock",
      html`<table class="wide"><caption>Feedstock that the plan needs. The bar is the need, the upright line the stock; a need beyond it is hatched.</caption>
${tableHead(head)}<tbody>${rows}</tbody></table>`,
    ),
  );
}

function orderByMin(need: Need, { display }: SheetContext): number {
  return need.orderBy === null ? Number.MAX_SAFE_INTEGER : display.minute(need.orderBy);
}

function needRow(need: Need, { display, names, markOf }: SheetContext): Html {
  const buy =
    need.packs === 0
      ? html`<span class="none">nothing</span>`
      : html`<b>${display.mass(need.buyKg)}</b><br>${countText(need.packs, "pack")}`;
  const orderBy =
    need.orderBy === null
      ? html`<span class="none">stock is enough</span>`
      : html`${display.dateTime(display.minute(need.orderBy))}`;
  return html`<tr><th scope="row">${familySwatch(markOf(need.feedstockId))} ${nameText(names.feedstock(need.feedstockId))}</th><td class="num">${display.mass(need.needKg)}</td><td class="num">${display.mass(need.stockKg)}</td><td class="bar-cell">${stockBar(need)}</td><td class="num">${buy}</td><td class="time">${orderBy}</td><td class="note"><bdi>${need.note}</bdi></td></tr>
`;
}

/** Need against stock on one scale. */
function stockBar(need: Need): Html {
  const most = Math.max(need.needKg, need.stockKg);
  if (most <= 0) return html``;
  const at = (massKg: number) => percent((98 * massKg) / most);
  const covered = Math.min(need.needKg, need.stockKg);
  return html`<svg class="bar" width="100%" height="14" aria-hidden="true"><rect class="bar-track" y="2" width="100%" height="10"/><rect class="bar-plain" y="2" width="${at(covered)}" height="10"/><rect class="bar-short" fill="url(#p-change)" x="${at(covered)}" y="2" width="${at(need.needKg - covered)}" height="10"/><line class="stock-line" x1="${at(need.stockKg)}" x2="${at(need.stockKg)}" y1="0" y2="14"/></svg>`;
}

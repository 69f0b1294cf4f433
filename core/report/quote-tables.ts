import type { LineWay } from "../quote/line-ways.ts";
import type { AnswerLine } from "../quote/quote-answer.ts";
import type { RushOption } from "../quote/rush.ts";
import { type Html, html, nothing } from "./html-escape.ts";
import { refusals } from "./quote-cost-words.ts";
import { copiesText, hopelessText, type QuoteContext } from "./quote-facts.ts";
import { nameText, scrolling, tableHead } from "./sheet-parts.ts";

const MOST_WAYS = 12;
const MOST_REASONS = 8;

/** Every way to make a line's part with what a copy costs at each quantity, the cheapest for the asked one first; buying beside them. */
export function waysTable({ ways, asked }: AnswerLine, context: QuoteContext): Html {
  const { display, shop } = context;
  const { quantities, buyOut } = ways;
  if (ways.ways.length === 0 && !buyOut) {
    return html`<p>It cannot be made in this shop:</p><ul class="agreed">${refusals(ways, MOST_REASONS).map((sentence) => html`<li><bdi>${sentence}</bdi></li>`)}</ul>`;
  }
  const askedAt = quantities.indexOf(asked.quantity);
  const sorted = ways.ways.toSorted((a, b) => costAt(a, askedAt) - costAt(b, askedAt));
  const rows = sorted.slice(0, MOST_WAYS).map((way) => wayRow(way, askedAt, context));
  const bought = buyOut
    ? [
        html`<tr><th scope="row">Bought, ${display.number(buyOut.leadTimeDays, 1)} days</th>${quantities.map(() => html`<td class="num">${display.amount(buyOut.pricePerPiece)}</td>`)}<td></td><td></td><td></td></tr>`,
      ]
    : [];
  const head = [
    "Way",
    ...quantities.map((quantity) => `>${quantity}`),
    ">First order",
    ">h each",
    ">kg each",
  ];
  const more = sorted.length > MOST_WAYS ? `; ${sorted.length - MOST_WAYS} dearer ones are left out` : "";
  return scrolling(
    "Ways to make it",
    html`<table><caption><b>Ways to make it</b>: cost of one copy if so many are made, ${shop.currency}; the cost of the first order (tool paths, first loading) is shared by them${more}</caption>${tableHead(head)}<tbody>${rows}${bought}</tbody></table>`,
  );
}

function costAt(way: LineWay, at: number): number {
  return way.costs[at]?.costPerCopy ?? Infinity;
}

function wayRow(way: LineWay, askedAt: number, { display, names }: QuoteContext): Html {
  const { machineIds, feedstockId, nozzleId, costs, first, massKgPerCopy, isAllowed } = way;
  const hours = costs[askedAt]?.machineHPerCopy;
  const cells = costs.map(
    (cost) => html`<td class="num">${cost ? display.amount(cost.costPerCopy) : "–"}</td>`,
  );
  const pinned = isAllowed ? "" : " (not what was asked for)";
  return html`<tr><th scope="row"><bdi>${machineIds.join(", ")}</bdi>, ${nameText(names.feedstock(feedstockId))}, nozzle <bdi>${nozzleId}</bdi>${pinned}</th>${cells}<td class="num">${display.amount(first.engineering + first.setUp)}</td><td class="num">${hours === undefined ? "" : display.number(hours, 2)}</td><td class="num">${display.number(massKgPerCopy, 3)}</td></tr>
`;
}

/** What would hold the wanted date, with the price of each. */
export function rushTable(line: AnswerLine, context: QuoteContext): Html {
  const { rush, asked } = line;
  const { display, shop } = context;
  const hopeless = hopelessText(line, display);
  if (hopeless !== "") return html`<p>${hopeless}</p>`;
  if (!rush || rush.length === 0 || asked.wantedMin === null) return nothing;
  const wanted = display.dateTime(asked.wantedMin);
  const rows = rush.map((option) => rushRow(option, context));
  const head = ["What to do", "In time", "Ready", ">Price", ">Dearer by", ">Orders later"];
  return scrolling(
    "What would hold the wanted date",
    html`<table><caption><b>What would hold ${wanted}</b>, ${shop.currency} for all copies</caption>${tableHead(head)}<tbody>${rows}</tbody></table>`,
  );
}

function rushRow(option: RushOption, { display }: QuoteContext): Html {
  const { sentence, copiesInTime, finishMin, restMin, price, dearerBy, laterOrders } = option;
  const rest = restMin === null ? "" : `, the others ${display.dateTime(restMin)}`;
  return html`<tr><th scope="row"><bdi>${sentence}</bdi></th><td class="time">${copiesText(copiesInTime)}</td><td>${display.dateTime(finishMin)}${rest}</td><td class="num">${price ? display.amount(price.total) : ""}</td><td class="num">${dearerBy === null ? "" : display.amount(dearerBy)}</td><td class="num">${laterOrders}</td></tr>
`;
}

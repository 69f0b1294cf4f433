import { durationText } from "../shop/time-words.ts";
import { type Html, html, when } from "./html-escape.ts";
import { bar, idText, nameText, scrolling, section, type SheetContext, tableHead } from "./sheet-parts.ts";
import { lateOrders, type OrderOutcome, withoutPlace } from "./week-facts.ts";

/** Every order: due, finished, margin and cost, the late ones first, then by due date. */
export function ordersSection(context: SheetContext): Html {
  const { plan, display } = context;
  const late = lateOrders(plan);
  const noPlace = new Map(withoutPlace(plan).map((entry) => [entry.orderId, entry.copies]));
  const rank = (order: OrderOutcome) => (noPlace.has(order.orderId) ? 0 : 1);
  const rest = plan.orders
    .filter((order) => order.lateMin === 0)
    .toSorted((a, b) => rank(a) - rank(b) || display.minute(a.dueAt) - display.minute(b.dueAt));
  const largest = Math.max(...plan.orders.map((order) => order.cost), 0);
  const rows = [...late, ...rest].map((order) =>
    orderRow(order, largest, noPlace.get(order.orderId) ?? 0, context),
  );
  const head = [
    "Order",
    "Part",
    "Customer",
    ">Copies",
    "Due",
    "Finished",
    "Margin",
    `>Cost, ${plan.currency}`,
    "Share",
  ];
  return section(
    "orders",
    "Orders",
    "When each order is finished and what it costs to make, late ones and those with no place first, then by due date.",
    html`${scrolling(
      "Table of orders",
      html`<table class="wide">
<caption>Orders of the plan with all their cost; the sum is the cost of the plan.</caption>
${tableHead(head)}<tbody>${rows}</tbody>
<tfoot><tr><th scope="row" colspan="7">All orders</th><td class="num">${display.amount(plan.cost.total)}</td><td></td></tr></tfoot></table>`,
    )}${when(plan.boughtOut.length > 0, () => boughtOutTable(context))}`,
  );
}

function orderRow(order: OrderOutcome, largest: number, noPlace: number, context: SheetContext): Html {
  const { display, names } = context;
  const quantity = names.order(order.orderId)?.quantity;
  const finished =
    order.finishedAt === null ? "not in this plan" : display.dateTime(display.minute(order.finishedAt));
  return html`<tr><th scope="row">${idText(order.orderId)}</th><td>${nameText(names.part(order.orderId))}</td><td>${nameText(names.customer(order.orderId))}</td><td class="num">${quantity === undefined ? "" : display.number(quantity, 0)}</td><td class="time">${display.dateTime(display.minute(order.dueAt))}</td><td class="time">${finished}</td><td class="time">${margin(order, noPlace, context)}</td><td class="num">${display.amount(order.cost)}</td><td class="bar-cell">${bar(order.cost, largest)}</td></tr>
`;
}

function margin(order: OrderOutcome, noPlace: number, { display }: SheetContext): Html {
  if (order.lateMin > 0)
    return html`<span class="bad"><span aria-hidden="true">▼</span> ${durationText(order.lateMin)} late</span>`;
  if (noPlace > 0)
    return html`<span class="bad"><span aria-hidden="true">✕</span> no place for ${noPlace}</span>`;
  if (order.finishedAt === null) return html`<span class="none">nothing to do</span>`;
  return html`${durationText(display.minute(order.dueAt) - display.minute(order.finishedAt))} early`;
}

/** Copies made elsewhere, with their price and the day they arrive. */
function boughtOutTable({ plan, display, names }: SheetContext): Html {
  const rows = plan.boughtOut.map(
    (
      entry,
    ) => html`<tr><th scope="row">${idText(entry.orderId)}</th><td>${nameText(names.part(entry.orderId))}</td><td class="num">${display.number(entry.copies, 0)}</td><td class="time">${display.dateTime(display.minute(entry.arriveAt))}</td><td class="num">${display.amount(entry.cost)}</td></tr>
`,
  );
  const table = html`<table><caption><b>Bought out</b></caption>${tableHead(["Order", "Part", ">Copies", "Here by", `>Price, ${plan.currency}`])}<tbody>${rows}</tbody></table>`;
  return html`<div class="beside">${scrolling("Bought out", table)}</div>`;
}

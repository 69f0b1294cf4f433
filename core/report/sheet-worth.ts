import { fixedText, untilText } from "./display.ts";
import { type Html, html, when } from "./html-escape.ts";
import { bar, nameText, scrolling, section, type SheetContext, tableHead } from "./sheet-parts.ts";
import {
  capital,
  type HourWorth,
  hoursWorth,
  lateOrders,
  unplannedCopies,
  withoutPlaceText,
} from "./week-facts.ts";

/** What planning saves against rules of thumb, and what one more hour of a machine or an operator would be worth. */
export function worthSection(context: SheetContext): Html {
  return section(
    "worth",
    "What it is worth",
    "This plan beside the lower bound and two rules of thumb, and the price of one hour more or less.",
    html`<div class="columns">${comparison(context)}${hourPrices(context)}</div>`,
  );
}

function comparison({ plan, display }: SheetContext): Html {
  const { total } = plan.cost;
  const rows = [
    ...(plan.bound.value > 0
      ? [{ name: "No plan can cost less than", cost: plan.bound.value, late: "", without: 0, look: "bound" }]
      : []),
    {
      name: "This plan",
      cost: total,
      late: String(lateOrders(plan).length),
      without: unplannedCopies(plan),
      look: "own",
    },
    ...plan.handRules.map((rule) => ({
      ...rule,
      late: String(rule.lateOrders),
      without: rule.unplannedCopies,
      look: "plain",
    })),
  ];
  const largest = Math.max(...rows.map((row) => row.cost), 0);
  const body = rows.map(
    (
      row,
    ) => html`<tr class="row-${row.look}"><th scope="row"><bdi>${capital(row.name)}</bdi>${when(row.without > 0, () => html`, ${withoutPlaceText(row.without)}`)}</th><td class="num">${display.amount(row.cost)}</td><td class="num">${row.look === "own" ? "" : againstText(row.cost, total)}</td><td class="num">${row.late}</td><td class="bar-cell">${bar(row.cost, largest, row.look)}</td></tr>
`,
  );
  return scrolling(
    "Against rules of thumb",
    html`<table class="cost"><caption><b>Against rules of thumb</b></caption>
${tableHead(["Plan", `>${plan.currency}`, ">Against this", ">Late", "Bar"])}<tbody>${body}</tbody></table>`,
  );
}

function againstText(cost: number, total: number): string {
  if (total <= 0) return "";
  const difference = (100 * (cost - total)) / total;
  return `${difference > 0 ? "+" : ""}${fixedText(difference, 1)} %`;
}

function hourPrices(context: SheetContext): Html {
  const { plan } = context;
  const rows = hoursWorth(plan);
  const shown = rows.slice(0, MOST_PRICES);
  const left = rows.length - shown.length;
  return scrolling(
    "Price of an hour",
    html`<table class="cost"><caption><b>Price of an hour</b>, ${plan.currency} per hour</caption>
${tableHead(["Where", "When", ">One more saves", ">One less costs"])}
<tbody>${shown.map((price) => priceRow(price, context))}${when(rows.length === 0, () => html`<tr><td colspan="4">No price: no hour is short in the relaxed problem behind the bound, or there was no time to price one.</td></tr>`)}</tbody>
${when(left > 0, () => html`<tfoot><tr><td colspan="4">${left} smaller ones are in the plan file.</td></tr></tfoot>`)}</table>`,
  );
}

const MOST_PRICES = 10;

function priceRow(price: HourWorth, context: SheetContext): Html {
  const { display } = context;
  const from = display.minute(price.from);
  const to = display.minute(price.to);
  const span = `${display.dateTime(from)} to ${untilText(from, to, display)}`;
  return html`<tr><th scope="row">${whose(price, context)}</th><td class="time">${span}</td><td class="num">${display.amount(price.moreSavesPerH)}</td><td class="num">${display.amount(price.lessCostsPerH)}</td></tr>
`;
}

function whose({ machineIds, calendarId }: HourWorth, { shop, names }: SheetContext): Html {
  if (calendarId === null) return nameText(machineIds.map((id) => names.machine(id)).join(", "));
  const calendar = shop.calendars.find(({ id }) => id === calendarId);
  return html`Operator, ${nameText(calendar?.name ?? calendarId)}`;
}

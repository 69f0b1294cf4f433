import { COST_KINDS } from "../cost/cost-line.ts";
import { fixedText } from "./display.ts";
import { type Html, html } from "./html-escape.ts";
import { costLinesTable, openedExample } from "./sheet-cost-lines.ts";
import {
  bar,
  familySwatch,
  idText,
  nameText,
  scrolling,
  section,
  type SheetContext,
  tableHead,
} from "./sheet-parts.ts";
import { KIND_WORDS } from "./words.ts";

interface CostRow {
  readonly label: Html;
  readonly amount: number;
}

/** One total in three views with bars, one line opened down to its inputs, and every line behind a fold. */
export function costsSection(context: SheetContext): Html {
  const { plan } = context;
  const { byKind, byMachine, byFeedstock } = plan.cost;
  const kinds = COST_KINDS.map((kind) => ({ label: html`${KIND_WORDS[kind]}`, amount: byKind[kind] }));
  return section(
    "costs",
    "Costs",
    "One total, opened three ways; each adds up to the same amount. By order it stands in the table above.",
    html`<div class="columns">
${costTable("By kind of cost", "Kind", kinds, context)}
${costTable("By machine", "Machine", largestFirst(byMachine).map(machineRow(context)), context)}
${costTable("By feedstock", "Feedstock", largestFirst(byFeedstock).map(feedstockRow(context)), context)}
${openedExample(context)}
</div>
${costLinesTable(context)}`,
  );
}

function costTable(
  caption: string,
  what: string,
  rows: readonly CostRow[],
  { plan, display }: SheetContext,
): Html {
  const largest = Math.max(...rows.map((row) => row.amount), 0);
  const shown = rows.filter((row) => row.amount !== 0);
  const table = html`<table class="cost"><caption><b>${caption}</b></caption>
${tableHead([what, `>${plan.currency}`, ">Share", "Bar"])}
<tbody>${shown.map(
    (
      row,
    ) => html`<tr><th scope="row">${row.label}</th><td class="num">${display.amount(row.amount)}</td><td class="num">${shareText(row.amount, plan.cost.total)}</td><td class="bar-cell">${bar(row.amount, largest)}</td></tr>
`,
  )}</tbody>
<tfoot><tr><th scope="row">Total</th><td class="num">${display.amount(plan.cost.total)}</td><td></td><td></td></tr></tfoot></table>`;
  return scrolling(caption, table);
}

function machineRow({ names }: SheetContext): (entry: { id: string; total: number }) => CostRow {
  return ({ id, total }) => ({
    label: id === "" ? html`No machine` : html`${idText(id)} ${nameText(names.machine(id))}`,
    amount: total,
  });
}

function feedstockRow({ names, markOf }: SheetContext): (entry: { id: string; total: number }) => CostRow {
  return ({ id, total }) => ({
    label:
      id === "" ? html`No feedstock` : html`${familySwatch(markOf(id))} ${nameText(names.feedstock(id))}`,
    amount: total,
  });
}

function largestFirst(view: readonly { id: string; total: number }[]): { id: string; total: number }[] {
  return view.toSorted((a, b) => b.total - a.total);
}

function shareText(amount: number, total: number): string {
  return total > 0 ? `${fixedText((100 * amount) / total, 1)} %` : "";
}

import type { CostInput, CostLine } from "../cost/cost-line.ts";
import { countText } from "./display.ts";
import { type Html, html, nothing } from "./html-escape.ts";
import { idText, nameText, scrolling, type SheetContext, tableHead } from "./sheet-parts.ts";
import { shownCostLines } from "./week-facts.ts";
import { KIND_WORDS } from "./words.ts";

/** The largest machine line of the plan, opened: amount, formula in words, and every number in it. */
export function openedExample(context: SheetContext): Html {
  const lines = shownCostLines(context.plan);
  const ofBuilds = lines.filter(({ line }) => line.kind === "machine");
  const [largest] = (ofBuilds.length > 0 ? ofBuilds : lines).toSorted(
    (a, b) => b.line.amount - a.line.amount,
  );
  if (!largest) return nothing;
  const { line, shown } = largest;
  const inputs = line.inputs.map(
    (input) =>
      html`<tr><th scope="row"><bdi>${input.name}</bdi></th><td class="num">${inputText(input, context)}</td></tr>`,
  );
  return html`<figure class="example"><figcaption>How a number is made: the largest line of its kind, opened</figcaption>
<p>${KIND_WORDS[line.kind]} ${ofWhat(line, context)}</p>
<p class="formula"><bdi>${line.formula}</bdi></p>
<table><caption class="unseen">Inputs of the formula</caption><tbody>${inputs}</tbody>
<tfoot><tr><th scope="row">Amount</th><td class="num">${context.display.money(shown)}</td></tr></tfoot></table></figure>
`;
}

/** Every cost line with formula and inputs, folded away. */
export function costLinesTable(context: SheetContext): Html {
  const lines = shownCostLines(context.plan);
  const rows = lines.map(({ line, shown }) => lineRow(line, shown, context));
  const head = [
    "Kind",
    "Order",
    "Machine",
    "Feedstock",
    "Build",
    "Formula and inputs",
    `>${context.plan.currency}`,
  ];
  return html`<details><summary>Every cost line: ${countText(lines.length, "line")} with formula and inputs</summary>
${scrolling("Table of cost lines", html`<table class="wide lines"><caption>Amounts are rounded so that they add up to the total.</caption>${tableHead(head)}<tbody>${rows}</tbody></table>`)}</details>
`;
}

function lineRow(line: CostLine, shown: number, context: SheetContext): Html {
  const { display } = context;
  const inputs = line.inputs.map((input) => `${input.name} ${inputText(input, context)}`).join("; ");
  return html`<tr><th scope="row">${KIND_WORDS[line.kind]}</th><td>${idText(line.orderId)}</td><td>${idText(line.machineId ?? "")}</td><td>${idText(line.feedstockId ?? "")}</td><td>${idText(line.buildId ?? "")}</td><td><bdi class="formula">${line.formula}</bdi><br><bdi class="inputs">${inputs}</bdi></td><td class="num">${display.amount(shown)}</td></tr>
`;
}

function ofWhat(line: CostLine, { names }: SheetContext): Html {
  const build = line.buildId === undefined ? nothing : html`, build ${idText(line.buildId)}`;
  const machine =
    line.machineId === undefined ? nothing : html` on ${nameText(names.machine(line.machineId))}`;
  return html`of order ${idText(line.orderId)}${build}${machine}`;
}

function inputText(input: CostInput, { display }: SheetContext): string {
  return `${display.number(input.value, MOST_DECIMALS)} ${input.unit}`.trim();
}

const MOST_DECIMALS = 4;

import { COST_KINDS } from "../cost/cost-line.ts";
import type { PlanDocument, PlannedBuild } from "../plan/plan-document.ts";
import type { Shop } from "../shop/shop.ts";
import { type Display, displayOf, untilText } from "./display.ts";
import { headlineOf } from "./headline.ts";
import { replanText } from "./replan-words.ts";
import { type Names, namesOf } from "./names.ts";
import { column, rightColumn, shortText, visibleText, wrapped } from "./plain-text.ts";
import { itemsText, lateOrders, unplannedCopies, withoutPlaceText } from "./week-facts.ts";
import { KIND_WORDS } from "./words.ts";

/** A plan and what its text is written with. */
export interface TextContext {
  readonly shop: Shop;
  readonly plan: PlanDocument;
  readonly display: Display;
  readonly names: Names;
}

/** Opens a plan for writing it as text. */
export function textContext(shop: Shop, plan: PlanDocument): TextContext {
  return { shop, plan, display: displayOf(shop, plan.plannedFrom), names: namesOf(shop) };
}

/** Sections with an empty line between them; those without lines are left out. */
export function sectionsText(sections: readonly (readonly string[])[]): string {
  const texts = sections.filter((lines) => lines.length > 0).map((lines) => lines.join("\n"));
  return `${texts.join("\n\n")}\n`;
}

/** No line is longer, characters. */
export const WIDTH = 100;
const BAR_WIDTH = 30;

/** The answer: what was planned, its cost, the bound in words, what is late. */
export function headlineLines({ plan, display }: TextContext): string[] {
  const headline = headlineOf(plan, display);
  const replan = replanText(plan, display);
  return [
    shortText(plan.shopName, WIDTH),
    `${headline.period}: ${headline.days}`,
    "",
    `This plan costs ${headline.cost}.`,
    ...wrapped(headline.proof, WIDTH),
    headline.attention,
    ...(replan ? wrapped(replan, WIDTH) : []),
    ...(headline.ending ? [headline.ending] : []),
  ];
}

/** Amounts by kind of cost with bars; of moving planned builds only where that cost something. */
export function costLines({ plan, display }: TextContext): string[] {
  const { byKind, total } = plan.cost;
  const largest = Math.max(...COST_KINDS.map((kind) => byKind[kind]), 0);
  const row = (label: string, amount: number) =>
    `    ${column(label, 26)} ${rightColumn(display.amount(amount), 14)}`;
  return [
    title(`Cost by kind, ${plan.currency}`),
    ...COST_KINDS.filter((kind) => kind !== "moving" || byKind[kind] !== 0).map((kind) =>
      `${row(KIND_WORDS[kind], byKind[kind])}  ${barText(byKind[kind], largest)}`.trimEnd(),
    ),
    row("Total", total),
  ];
}

/** A bar in eighths of a character. */
function barText(amount: number, largest: number): string {
  if (largest <= 0 || amount <= 0) return "";
  const eighths = Math.max(1, Math.round((amount / largest) * BAR_WIDTH * 8));
  return "█".repeat(Math.floor(eighths / 8)) + ("▏▎▍▌▋▊▉"[(eighths % 8) - 1] ?? "");
}

/** This plan beside the rules of thumb. */
export function handRuleLines({ plan, display }: TextContext): string[] {
  if (plan.handRules.length === 0) return [];
  const rows = [
    ...plan.handRules.map((rule) => ({ ...rule, late: rule.lateOrders, without: rule.unplannedCopies })),
    {
      name: "this plan",
      cost: plan.cost.total,
      late: lateOrders(plan).length,
      without: unplannedCopies(plan),
    },
  ];
  return [
    title("What a rule of thumb would have cost"),
    ...rows.flatMap(({ name, cost, late, without }) => [
      `    ${column(name, 50)} ${rightColumn(display.money(cost), 18)}, ${late} late`,
      ...(without > 0 ? [`      ${withoutPlaceText(without)}`] : []),
    ]),
  ];
}

/** From set-up to unloaded, in columns; the day of the end only where it is another. */
export function buildTimes(build: PlannedBuild, display: Display): string {
  const from = display.minute(build.setUpStart);
  const to = display.minute(build.unloadEnd);
  return `${column(display.dateTime(from), 16)} to ${column(untilText(from, to, display), 16)}`;
}

/** Feedstock of a build, then its copies in at most so many characters with how far it is where it is more than planned. */
export function buildContents(build: PlannedBuild, names: Names, most: number): string {
  const state = build.state === "planned" ? "" : ` (${build.state})`;
  return `${column(names.feedstock(build.feedstockId), 18)} ${shortText(itemsText(build) + state, most)}`;
}

/** A heading, underlined. */
export function title(text: string): string {
  return `${text}\n${"─".repeat([...text].length)}`;
}

/** A sentence as a point of a list, wrapped. */
export function bulleted(text: string): string[] {
  return wrapped(visibleText(text), WIDTH - 6).map((line, index) =>
    index === 0 ? `    - ${line}` : `      ${line}`,
  );
}

/** An instant as people say it. */
export function whenText(instant: string, display: Display): string {
  return display.dateTime(display.minute(instant));
}

import { COST_KINDS } from "../cost/cost-line.ts";
import type { PlanDocument, PlannedBuild } from "../plan/plan-document.ts";
import type { Shop } from "../shop/shop.ts";
import { countText, type Display, displayOf, durationText } from "./display.ts";
import { headlineOf } from "./headline.ts";
import { type Names, namesOf } from "./names.ts";
import { column, rightColumn, shortText, visibleText, wrapped } from "./plain-text.ts";
import {
  buildsByMachine,
  itemsText,
  lateOrders,
  reasonsAndHelp,
  tasksByDay,
  withoutPlace,
} from "./week-facts.ts";
import { CAUTIONS, KIND_WORDS, TASK_WORDS } from "./words.ts";

interface TextContext {
  readonly shop: Shop;
  readonly plan: PlanDocument;
  readonly display: Display;
  readonly names: Names;
}

/** A plan as plain text for a terminal, at most 100 characters wide: first the answer, then what needs a person, then the week. */
export function weekText(shop: Shop, plan: PlanDocument): string {
  const context = { shop, plan, display: displayOf(shop, plan.plannedFrom), names: namesOf(shop) };
  const sections = [
    headlineLines(context),
    lateLines(context),
    unplannedLines(context),
    machineLines(context),
    boughtOutLines(context),
    taskLines(context),
    feedstockLines(context),
    costLines(context),
    handRuleLines(context),
    cautionLines(),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")}\n`;
}

const WIDTH = 100;
const BAR_WIDTH = 30;
/** So many late orders are explained, with so many reasons each; the sheet has them all. */
const MOST_EXPLAINED = 8;
const MOST_REASONS = 3;

function headlineLines({ plan, display }: TextContext): string[] {
  const headline = headlineOf(plan, display);
  return [
    shortText(plan.shopName, WIDTH),
    `${headline.period}: ${headline.days}`,
    "",
    `This plan costs ${headline.cost}.`,
    headline.proof,
    headline.attention,
    ...(plan.status === "stopped"
      ? ["The search was stopped before its time; this is the best plan it had."]
      : []),
  ];
}

function lateLines({ plan, display, names }: TextContext): string[] {
  const late = lateOrders(plan);
  if (late.length === 0) return [];
  return [
    title("Late orders"),
    ...late.flatMap((order, index) => [
      `! ${column(order.orderId, 12)} ${column(names.part(order.orderId), 30)} late by ${durationText(order.lateMin)}, costs ${display.money(order.lateCost)}`,
      `  due ${whenText(order.dueAt, display)}, finished ${order.finishedAt ? whenText(order.finishedAt, display) : "not in this plan"}`,
      ...(index < MOST_EXPLAINED ? explained(order.why) : []),
    ]),
    ...(late.length > MOST_EXPLAINED ? ["  (why, for all of them: in the sheet and in orders.csv)"] : []),
  ];
}

function unplannedLines({ plan, names }: TextContext): string[] {
  const noPlace = withoutPlace(plan);
  if (noPlace.length === 0) return [];
  return [
    title("Without a place in the plan"),
    ...noPlace.flatMap((entry) => [
      `x ${column(entry.orderId, 12)} ${column(names.part(entry.orderId), 30)} ${entry.copies} of ${names.order(entry.orderId)?.quantity ?? "?"} copies`,
      ...entry.sentences.flatMap((sentence) => bulleted(sentence)),
      ...explained(helpFor(entry.orderId, plan)),
    ]),
  ];
}

/** What would help, and the first reasons. */
function explained(why: readonly string[]): string[] {
  const { reasons, help } = reasonsAndHelp(why);
  const shown = [...reasons.slice(0, MOST_REASONS), ...help.map((sentence) => `Would help: ${sentence}`)];
  return shown.flatMap((sentence) => bulleted(sentence));
}

/** What would help an order that is only unplanned; a late one has said it already. */
function helpFor(orderId: string, plan: PlanDocument): readonly string[] {
  const outcome = plan.orders.find((order) => order.orderId === orderId);
  return outcome && outcome.lateMin === 0 ? outcome.why : [];
}

function machineLines(context: TextContext): string[] {
  const groups = buildsByMachine(context.shop, context.plan);
  return [
    title("The week by machine"),
    ...groups.flatMap(({ machineId, builds }) => [
      shortText(`${machineId}  ${context.names.machine(machineId)}`, WIDTH),
      ...(builds.length === 0 ? ["    nothing planned"] : builds.map((build) => buildLine(build, context))),
    ]),
  ];
}

function buildLine(build: PlannedBuild, { display, names }: TextContext): string {
  const from = display.minute(build.setUpStart);
  const to = display.minute(build.unloadEnd);
  const state = build.state === "planned" ? "" : ` (${build.state})`;
  const sameDay = display.date(from) === display.date(to);
  const until = sameDay ? display.clock(to) : display.dateTime(to);
  const times = `${column(display.dateTime(from), 16)} to ${column(until, 16)}`;
  return `    ${times} ${column(build.id, 8)} ${column(names.feedstock(build.feedstockId), 20)} ${shortText(itemsText(build) + state, 28)}`;
}

function boughtOutLines({ plan, display, names }: TextContext): string[] {
  if (plan.boughtOut.length === 0) return [];
  return [
    title("Bought out"),
    ...plan.boughtOut.map((entry) => {
      const what = `${column(entry.orderId, 12)} ${column(names.part(entry.orderId), 26)}`;
      return `    ${what} ${countText(entry.copies, "copy", "copies")} for ${display.money(entry.cost)}, here ${whenText(entry.arriveAt, display)}`;
    }),
  ];
}

function taskLines({ plan, display }: TextContext): string[] {
  const days = tasksByDay(plan, display.date);
  if (days.length === 0) return [];
  return [
    title("Operators' tasks"),
    ...days.flatMap(({ date, tasks }) => [
      display.day(date),
      ...tasks.map((task) => {
        const from = display.clock(display.minute(task.at));
        const doing = `[ ] ${column(TASK_WORDS[task.kind], 11)} ${column(task.machineId ?? "", 8)} ${shortText(task.text, 65)}`;
        return `    ${column(from, 5)} ${doing}`;
      }),
    ]),
  ];
}

function feedstockLines({ plan, display, names }: TextContext): string[] {
  const toBuy = plan.feedstockNeeds.filter((need) => need.packs > 0);
  if (toBuy.length === 0) return [title("Feedstock to buy"), "    nothing: the stock is enough"];
  return [
    title("Feedstock to buy"),
    ...toBuy.flatMap((need) => [
      `    ${column(names.feedstock(need.feedstockId), 28)} ${rightColumn(display.mass(need.buyKg), 12)} in ${countText(need.packs, "pack")}, order by ${need.orderBy ? whenText(need.orderBy, display) : "any time"}`,
      ...(need.note ? bulleted(need.note) : []),
    ]),
  ];
}

function costLines({ plan, display }: TextContext): string[] {
  const { byKind, total } = plan.cost;
  const largest = Math.max(...COST_KINDS.map((kind) => byKind[kind]), 0);
  const row = (label: string, amount: number) =>
    `    ${column(label, 26)} ${rightColumn(display.amount(amount), 14)}`;
  return [
    title(`Cost by kind, ${plan.currency}`),
    ...COST_KINDS.map((kind) =>
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

function handRuleLines({ plan, display }: TextContext): string[] {
  if (plan.handRules.length === 0) return [];
  return [
    title("What a rule of thumb would have cost"),
    ...plan.handRules.map(
      (rule) =>
        `    ${column(rule.name, 50)} ${rightColumn(display.money(rule.cost), 18)}, ${rule.lateOrders} late`,
    ),
    `    ${column("this plan", 50)} ${rightColumn(display.money(plan.cost.total), 18)}, ${lateOrders(plan).length} late`,
  ];
}

function cautionLines(): string[] {
  return [
    title("Cautions"),
    ...CAUTIONS.flatMap(({ title: heading, text }) => bulleted(`${heading}: ${text}`)),
  ];
}

function title(text: string): string {
  return `${text}\n${"─".repeat([...text].length)}`;
}

function bulleted(text: string): string[] {
  return wrapped(visibleText(text), WIDTH - 6).map((line, index) =>
    index === 0 ? `    - ${line}` : `      ${line}`,
  );
}

function whenText(instant: string, display: Display): string {
  return display.dateTime(display.minute(instant));
}

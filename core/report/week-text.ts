import type { PlanDocument, PlannedBuild } from "../plan/plan-document.ts";
import type { Shop } from "../shop/shop.ts";
import { durationText } from "../shop/time-words.ts";
import { countText, type Display } from "./display.ts";
import { column, rightColumn, shortText, wrapped } from "./plain-text.ts";
import {
  buildContents,
  buildTimes,
  bulleted,
  costLines,
  handRuleLines,
  headlineLines,
  sectionsText,
  textContext,
  type TextContext,
  title,
  whenText,
  WIDTH,
} from "./text-sections.ts";
import {
  buildsByMachine,
  lateOrders,
  type PlanTask,
  reasonsAndHelp,
  shareText,
  tasksByDay,
  withoutPlace,
  withMark,
} from "./week-facts.ts";
import { CAUTIONS, TASK_WORDS } from "./words.ts";

/** A plan as plain text, at most 100 characters wide: first the answer, then what needs a person, then the week. */
export function weekText(shop: Shop, plan: PlanDocument): string {
  const context = textContext(shop, plan);
  return sectionsText([
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
  ]);
}

/** So many late orders are explained, with so many reasons each; the sheet has them all. */
const MOST_EXPLAINED = 8;
const MOST_REASONS = 3;

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
      `x ${column(entry.orderId, 12)} ${column(names.part(entry.orderId), 30)} ${shareText(entry.copies, names.order(entry.orderId)?.quantity)}`,
      ...entry.sentences.flatMap((sentence) => bulleted(sentence)),
      ...helpFor(entry.orderId, plan).flatMap((sentence) => bulleted(withMark(sentence))),
    ]),
  ];
}

/** What would help, and the first reasons. */
function explained(why: readonly string[]): string[] {
  const { reasons, help } = reasonsAndHelp(why);
  const shown = [...reasons.slice(0, MOST_REASONS), ...help.map(withMark)];
  return shown.flatMap((sentence) => bulleted(sentence));
}

/** What would help an order that is only unplanned; a late one has said it already. */
function helpFor(orderId: string, plan: PlanDocument): readonly string[] {
  const outcome = plan.orders.find((order) => order.orderId === orderId);
  return outcome && outcome.lateMin === 0 ? reasonsAndHelp(outcome.why).help : [];
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
  return `    ${buildTimes(build, display)} ${column(build.id, 12)} ${buildContents(build, names, 27)}`;
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
      ...tasks.flatMap((task) => taskText(task, display)),
    ]),
  ];
}

/** When, a box to tick, what and where; the words wrapped beside them. */
function taskText(task: PlanTask, display: Display): string[] {
  const clock = column(display.clock(display.minute(task.at)), 5);
  const head = `    ${clock} [ ] ${column(TASK_WORDS[task.kind], 11)} ${column(task.machineId ?? "", 8)} `;
  return wrapped(task.text, WIDTH - head.length).map(
    (line, index) => (index === 0 ? head : " ".repeat(head.length)) + line,
  );
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

function cautionLines(): string[] {
  return [
    title("Cautions"),
    ...CAUTIONS.flatMap(({ title: heading, text }) => bulleted(`${heading}: ${text}`)),
  ];
}

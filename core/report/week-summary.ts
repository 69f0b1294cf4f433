import type { PlanDocument, PlannedBuild } from "../plan/plan-document.ts";
import type { Shop } from "../shop/shop.ts";
import { durationText } from "../shop/time-words.ts";
import { countText } from "./display.ts";
import { column, rightColumn, shortText } from "./plain-text.ts";
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
  type HourWorth,
  hoursWorth,
  inTimeOrder,
  lateOrders,
  reasonsAndHelp,
  shareText,
  withoutPlace,
  withMark,
} from "./week-facts.ts";
import { CAUTIONS } from "./words.ts";

/** A plan in a screen or two for a terminal, at most 100 characters wide: what to decide first, the rest by name. */
export function weekSummary(shop: Shop, plan: PlanDocument): string {
  const context = textContext(shop, plan);
  return sectionsText([
    headlineLines(context),
    lateLines(context),
    unplannedLines(context),
    machineLines(context),
    boughtOutLines(context),
    costLines(context),
    feedstockLines(context),
    handRuleLines(context),
    hourLines(context),
    cautionLines(),
  ]);
}

/** So many entries of a list are shown, the dearest or first. */
const MOST_SHOWN = 5;
const MOST_SENTENCES = 2;
const MOST_HOURS = 3;
/** Lines for builds: on all machines together, and on one. */
const BUILD_LINES = 24;
const BUILDS_LEAST = 2;
const BUILDS_MOST = 12;

function lateLines({ plan, display, names }: TextContext): string[] {
  const late = lateOrders(plan);
  if (late.length === 0) return [];
  return [
    title("Late orders"),
    ...late
      .slice(0, MOST_SHOWN)
      .flatMap((order) => [
        shortText(
          `! ${column(order.orderId, 10)} ${column(names.part(order.orderId), 24)} late by ${durationText(order.lateMin)}, costs ${display.money(order.lateCost)}, due ${whenText(order.dueAt, display)}`,
          WIDTH,
        ),
        ...mostHelpful(order.why).flatMap((sentence) => bulleted(sentence)),
      ]),
    ...moreLine(late.length - MOST_SHOWN),
  ];
}

/** What would help comes first; that an order is late, and since when, its line has said already. */
function mostHelpful(why: readonly string[]): string[] {
  const { reasons, help } = reasonsAndHelp(why);
  const sentences = [...help.map(withMark), ...reasons.slice(1), ...reasons];
  return sentences.slice(0, Math.min(MOST_SENTENCES, why.length));
}

function unplannedLines({ plan, names }: TextContext): string[] {
  const noPlace = withoutPlace(plan);
  if (noPlace.length === 0) return [];
  const hidden = noPlace.slice(MOST_SHOWN);
  const hiddenCopies = hidden.reduce((sum, { copies }) => sum + copies, 0);
  return [
    title("Without a place in the plan"),
    ...noPlace
      .slice(0, MOST_SHOWN)
      .flatMap((entry) => [
        `x ${column(entry.orderId, 10)} ${column(names.part(entry.orderId), 24)} ${shareText(entry.copies, names.order(entry.orderId)?.quantity)}`,
        ...entry.sentences.slice(0, 1).flatMap((sentence) => bulleted(sentence)),
      ]),
    ...moreLine(hidden.length, `, ${countText(hiddenCopies, "copy", "copies")},`),
  ];
}

function machineLines(context: TextContext): string[] {
  const groups = buildsByMachine(context.shop, context.plan);
  if (groups.length === 0) return [];
  const share = Math.floor(BUILD_LINES / groups.length);
  const most = Math.min(BUILDS_MOST, Math.max(BUILDS_LEAST, share));
  return [
    title("The week by machine"),
    ...groups.flatMap(({ machineId, builds }) => {
      const name = column(`${machineId}  ${context.names.machine(machineId)}`, NAME_WIDTH);
      if (builds.length === 0) return [`${name} nothing planned`];
      return [
        ...builds
          .slice(0, most)
          .map(
            (build, index) => `${index === 0 ? name : " ".repeat(NAME_WIDTH)} ${buildText(build, context)}`,
          ),
        ...moreBuilds(builds, most, context),
      ];
    }),
  ];
}

const NAME_WIDTH = 20;

function buildText(build: PlannedBuild, { display, names }: TextContext): string {
  return `${buildTimes(build, display)} ${buildContents(build, names, 23)}`;
}

function moreBuilds(builds: readonly PlannedBuild[], most: number, { display }: TextContext): string[] {
  const last = builds.at(-1);
  if (!last || builds.length <= most) return [];
  const text = `\u2026 ${builds.length - most} more, the last off at ${whenText(last.unloadEnd, display)}`;
  return [`${" ".repeat(NAME_WIDTH)} ${text}`];
}

function boughtOutLines({ plan, display }: TextContext): string[] {
  if (plan.boughtOut.length === 0) return [];
  const orders = new Set(plan.boughtOut.map(({ orderId }) => orderId));
  const copies = plan.boughtOut.reduce((sum, entry) => sum + entry.copies, 0);
  const cost = plan.boughtOut.reduce((sum, entry) => sum + entry.cost, 0);
  const what = `${countText(copies, "copy", "copies")} of ${countText(orders.size, "order")}`;
  return [`Bought out: ${what} for ${display.money(cost)}.`];
}

function feedstockLines(context: TextContext): string[] {
  const { plan } = context;
  const toBuy = plan.feedstockNeeds.filter((need) => need.packs > 0);
  if (toBuy.length === 0) return ["Feedstock to buy: nothing, the stock is enough."];
  const first = inTimeOrder(toBuy, ({ orderBy }) => orderBy ?? plan.plannedFrom, plan.timeZone);
  return [
    title("Feedstock to buy"),
    ...first.slice(0, MOST_SHOWN).map((need) => needText(need, context)),
    ...moreLine(toBuy.length - MOST_SHOWN),
  ];
}

function needText(
  need: PlanDocument["feedstockNeeds"][number],
  { plan, display, names }: TextContext,
): string {
  const what = `${column(names.feedstock(need.feedstockId), 34)} ${rightColumn(display.mass(need.buyKg), 12)}`;
  if (!need.orderBy) return `    ${what}`;
  const past = display.minute(need.orderBy) < display.minute(plan.plannedFrom) ? ", which is past" : "";
  return `    ${what}, order by ${whenText(need.orderBy, display)}${past}`;
}

function hourLines(context: TextContext): string[] {
  const worth = hoursWorth(context.plan);
  if (worth.length === 0) return [];
  return [
    title("Price of an hour"),
    ...worth.slice(0, MOST_HOURS).map((hour) => hourText(hour, context)),
    ...moreLine(worth.length - MOST_HOURS),
  ];
}

function hourText(hour: HourWorth, { shop, display, names }: TextContext): string {
  const calendar = shop.calendars.find(({ id }) => id === hour.calendarId);
  const who = calendar
    ? `Operator, ${calendar.name}`
    : hour.machineIds.map((id) => names.machine(id)).join(", ");
  const day = display.dateTime(display.minute(hour.from));
  const worth = `one more saves ${display.money(hour.moreSavesPerH)}, one less costs ${display.amount(hour.lessCostsPerH)}`;
  return shortText(`    ${column(who, 26)} ${column(day, 16)} ${worth}`, WIDTH);
}

function cautionLines(): string[] {
  const subjects = CAUTIONS.map(({ title: heading }) => heading).join(", ");
  return [
    title("Cautions"),
    ...bulleted(
      `${subjects}: this plan judges none of them. Local rules and qualified people decide. The cautions stand in week.html and week.txt.`,
    ),
  ];
}

function moreLine(count: number, what = ""): string[] {
  return count > 0 ? [`    ${count} more${what} in week.html (written with --out)`] : [];
}

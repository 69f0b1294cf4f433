import type { AnswerLine, DateSwing, OtherOrder } from "../quote/quote-answer.ts";
import type { LineWay } from "../quote/line-ways.ts";
import type { RushOption } from "../quote/rush.ts";
import { durationText } from "../shop/time-words.ts";
import { countText, type Display } from "./display.ts";
import { column, rightColumn, shortText, wrapped } from "./plain-text.ts";
import {
  copiesText,
  counted,
  floorText,
  hopelessText,
  keptText,
  LEAST_TOLD,
  likelihoodText,
  type QuoteContext,
} from "./quote-facts.ts";
import { costText, crossingText, refusals } from "./quote-cost-words.ts";
import { bulleted, sectionsText, title, WIDTH } from "./text-sections.ts";

/** A quote with all that stands behind it as plain text for the people of the shop, at most 100 characters wide. */
export function quoteText(context: QuoteContext): string {
  const { quote } = context;
  return sectionsText([
    headLines(context),
    ...quote.lines.flatMap((line) => {
      const answer = context.answerOf(line);
      return answer ? sectionsOf(answer, context) : [];
    }),
    floorLines(context),
    otherLines(context),
    findingLines(context),
  ]);
}

function sectionsOf(line: AnswerLine, context: QuoteContext): string[][] {
  return [
    lineLines(line, context),
    rushLines(line, context),
    wayLines(line, context),
    driverLines(line, context),
    swingLines(line, context),
  ];
}

const LABEL = 18;

function labelled(label: string, text: string): string[] {
  return wrapped(text, WIDTH - LABEL - 2).map(
    (line, at) => `  ${column(at === 0 ? label : "", LABEL - 2)}  ${line}`,
  );
}

function headLines({ quote, value, display, answer }: QuoteContext): string[] {
  const { customer, validUntil, id } = quote;
  const whom = customer === "" ? "" : ` for ${shortText(customer, 50)}`;
  const total = value.total === null ? "No price for all of it" : `${display.money(value.total)} in all`;
  const surcharge =
    value.minimumSurcharge > 0
      ? [`of which ${display.money(value.minimumSurcharge)} are added to reach the smallest order`]
      : [];
  const together = answer?.together.promised;
  return [
    title(`Quote ${shortText(id, 40)}${whom}`),
    `${total}; holds until ${display.day(display.date(display.minute(validUntil)))}.`,
    ...surcharge,
    ...(together && quote.lines.length > 1
      ? [`All promised dates together are kept with ${counted(together)}.`]
      : []),
  ];
}

function lineLines(line: AnswerLine, context: QuoteContext): string[] {
  const { display, answer, shop } = context;
  const { asked, price, breaks, promise, kept, wanted, plannedMin } = line;
  const part = shop.parts.find(({ id }) => id === asked.partId);
  return [
    title(`${copiesText(asked.quantity)} of ${shortText(part?.name ?? asked.partId, 60)}`),
    ...labelled("Price", priceText(line, context)),
    ...(breaks.length > 1 && price
      ? labelled(
          "By quantity",
          breaks.map((step) => `${step.quantity} at ${display.amount(step.pricePerPiece)}`).join(", "),
        )
      : []),
    ...(answer ? labelled("Made from", costText(line, context)) : []),
    ...(promise
      ? labelled(
          "Date to promise",
          `${display.dateTime(promise.byMin)}${promise.likelihoodPct === null ? ", not simulated" : `, kept with ${likelihoodText(promise.likelihoodPct)}`}`,
        )
      : []),
    ...(plannedMin === null ? [] : labelled("In the plan", display.dateTime(plannedMin))),
    ...kept.flatMap((date, at) => labelled(at === 0 ? "Kept with" : "", keptText(date, display))),
    ...(asked.wantedMin !== null && wanted
      ? labelled("Wanted", `${display.dateTime(asked.wantedMin)}: kept with ${counted(wanted)}`)
      : []),
  ];
}

function priceText({ price, asked }: AnswerLine, { display }: QuoteContext): string {
  if (!price) return "none: see below";
  const once = price.oneOffPrice > 0 ? ` and ${display.money(price.oneOffPrice)} once` : "";
  return `${display.money(price.pricePerPiece)} each${once}, ${display.money(price.total)} for ${asked.quantity}`;
}

function rushLines(line: AnswerLine, { display }: QuoteContext): string[] {
  const { rush, asked } = line;
  const hopeless = hopelessText(line, display);
  if (hopeless !== "") return wrapped(hopeless, WIDTH);
  if (!rush || asked.wantedMin === null || rush.length === 0) return [];
  return [
    title(`What would hold ${display.dateTime(asked.wantedMin)}`),
    ...rush.slice(0, MOST_RUSHES).flatMap((option) => {
      const { sentence, finishMin, restMin, laterOrders } = option;
      const rest = restMin === null ? "" : `, the others ${display.dateTime(restMin)}`;
      const others = laterOrders > 0 ? `; ${countText(laterOrders, "order")} later` : "";
      return bulleted(
        `${sentence} ${rushPrice(option, display)}; ready ${display.dateTime(finishMin)}${rest}${others}.`,
      );
    }),
  ];
}

function rushPrice({ price, dearerBy }: RushOption, display: Display): string {
  if (!price) return "No price";
  const total = display.money(price.total);
  if (dearerBy === null) return total;
  return dearerBy < LEAST_TOLD
    ? `${total}, as with no date`
    : `${total}, ${display.money(dearerBy)} more than with no date`;
}

const MOST_RUSHES = 5;

function driverLines({ priceDrivers, crossover }: AnswerLine, { display }: QuoteContext): string[] {
  if (!priceDrivers || priceDrivers.drivers.length === 0) return [];
  const { drivers, band } = priceDrivers;
  const crossing = crossover ? crossingText(crossover) : "";
  return [
    title("What moves the price by itself most"),
    ...drivers.map(
      ({ input, low, high }) =>
        `  ${column(input, 28)} ${column(low.change, 14)} ${rightColumn(display.amount(low.price), 10)}   ${column(high.change, 14)} ${rightColumn(display.amount(high.price), 10)}`,
    ),
    ...wrapped(
      `If prints take 10 % less or more: ${display.money(band.low)} to ${display.money(band.high)}. ${crossing}`.trimEnd(),
      WIDTH - 2,
    ).map((line) => `  ${line}`),
  ];
}

const MOST_WAYS = 6;
/** Quantities in the table of ways: the asked one and some of the usual ones. */
const SHOWN_QUANTITIES = 6;

function row(label: string, cells: readonly string[]): string {
  return `  ${column(label, 40)}${cells.map((cell) => rightColumn(cell, 9)).join("")}`.trimEnd();
}

function wayLines({ ways, asked }: AnswerLine, context: QuoteContext): string[] {
  const { display, shop } = context;
  const shown = quantitiesShown(ways.quantities, asked.quantity);
  const at = (quantity: number): number => ways.quantities.indexOf(quantity);
  const askedAt = at(asked.quantity);
  const sorted = ways.ways.toSorted(
    (a, b) => (a.costs[askedAt]?.costPerCopy ?? Infinity) - (b.costs[askedAt]?.costPerCopy ?? Infinity),
  );
  const amounts = (costs: LineWay["costs"]): string[] =>
    shown.map((quantity) => {
      const cost = costs[at(quantity)];
      return cost ? display.amount(cost.costPerCopy) : "–";
    });
  const bought = ways.buyOut;
  const refused = ways.ways.length === 0 ? refusals(ways, MOST_REASONS).flatMap(bulleted) : [];
  return [
    title(`Ways to make it: cost of one copy, ${shop.currency}, if so many are made`),
    ...(sorted.length > 0 || bought
      ? [
          row(
            "",
            shown.map((quantity) => `${quantity}`),
          ),
        ]
      : []),
    ...sorted.slice(0, MOST_WAYS).map((way) => row(wayText(way, context), amounts(way.costs))),
    ...(bought
      ? [
          row(
            `bought, ${bought.leadTimeDays} d`,
            shown.map(() => display.amount(bought.pricePerPiece)),
          ),
        ]
      : []),
    ...firstCostLines(sorted[0], context),
    ...(sorted.length > MOST_WAYS ? [`  and ${sorted.length - MOST_WAYS} dearer ones`] : []),
    ...refused,
  ];
}

function quantitiesShown(quantities: readonly number[], asked: number): number[] {
  const others = quantities.filter(
    (quantity) => quantity !== asked && [1, 5, 10, 20, 50, 100].includes(quantity),
  );
  return [...others.slice(0, SHOWN_QUANTITIES - 1), asked].toSorted((a, b) => a - b);
}

function wayText({ machineIds, feedstockId, nozzleId }: LineWay, { names }: QuoteContext): string {
  const more = machineIds.length > 1 ? ` +${machineIds.length - 1}` : "";
  return `${shortText(machineIds[0] ?? "", 8)}${more}, ${shortText(names.feedstock(feedstockId), 20)}, nozzle ${shortText(nozzleId, 6)}`;
}

function firstCostLines(way: LineWay | undefined, { display }: QuoteContext): string[] {
  if (!way) return [];
  const { engineering, setUp } = way.first;
  const text = `In the first order, and not again: tool paths ${display.money(engineering)}, first loading ${display.money(setUp)}.`;
  return wrapped(text, WIDTH - 2).map((line) => `  ${line}`);
}

const MOST_REASONS = 6;

function swingLines({ dateSwings }: AnswerLine, { display }: QuoteContext): string[] {
  if (!dateSwings || dateSwings.length === 0) return [];
  const side = ({ change, byMin }: DateSwing["low"]): string =>
    `${change} ${byMin === null ? "never" : display.dateTime(byMin)}`;
  return [
    title("What moves the date most"),
    ...dateSwings.flatMap(({ input, low, high }) => labelledWide(input, `${side(low)}; ${side(high)}`)),
  ];
}

function labelledWide(label: string, text: string): string[] {
  const wide = 38;
  return wrapped(text, WIDTH - wide - 2).map(
    (line, at) => `  ${column(at === 0 ? label : "", wide - 2)}  ${line}`,
  );
}

function floorLines({ answer, display }: QuoteContext): string[] {
  if (!answer?.floor) return [];
  return [title("Floor of the price"), ...wrapped(floorText(answer, display), WIDTH)];
}

const MOST_OTHERS = 5;

function otherLines({ answer, display }: QuoteContext): string[] {
  if (!answer?.others) return [];
  if (answer.others.length === 0) {
    return answer.runs > 0 ? [title("Other orders"), "No other order is finished later because of it."] : [];
  }
  const more = answer.others.length - MOST_OTHERS;
  return [
    title("Other orders"),
    ...answer.others
      .slice(0, MOST_OTHERS)
      .map((order) => `  ${column(order.orderId, 14)} ${otherText(order)}`),
    ...(more > 0 ? [`  and ${more} more that suffer less`] : []),
    ...movedCost(answer.others, display.money),
  ];
}

function otherText({ laterMin, wasInTime, isInTime }: OtherOrder): string {
  const shift = laterMin >= 0 ? `${durationText(laterMin)} later` : `${durationText(-laterMin)} earlier`;
  const inTime =
    wasInTime === null || isInTime === null
      ? ""
      : `, in time with ${likelihoodText(isInTime * 100)} instead of ${likelihoodText(wasInTime * 100)}`;
  return `on average ${shift}${inTime}`;
}

function movedCost(others: readonly OtherOrder[], money: (amount: number) => string): string[] {
  const cost = others.reduce((sum, { moved }) => sum + (moved?.extraLateCost ?? 0), 0);
  return cost >= LEAST_TOLD
    ? [`Their lateness costs ${money(cost)} more in the plan; the price holds that.`]
    : [];
}

function findingLines({ answer }: QuoteContext): string[] {
  if (!answer || answer.findings.length === 0) return [];
  return [title("To be settled"), ...answer.findings.flatMap(({ sentence }) => bulleted(sentence))];
}

import { about, type EntryFindings, type Finding, listed } from "./finding.ts";
import { dayNumberOf, isDay, isTimeZone, localDayNumber } from "./instants.ts";
import type { PurchaseCase } from "./purchase-case.ts";
import type { Shop } from "./shop.ts";
import { minuteOrNull } from "./shop-index.ts";
import { weekOfDay } from "./week-number.ts";

/** Findings about the demand of a case: dates, parts, how much there is to draw from, growth and season. */
export function caseDemandFindings(shop: Shop, purchaseCase: PurchaseCase): Finding[] {
  const say = about("cases", purchaseCase.id);
  return [
    ...dayFindings(say, purchaseCase),
    ...partFindings(say, shop, purchaseCase),
    ...amountFindings(say, shop, purchaseCase),
    ...growthFindings(say, purchaseCase),
    ...seasonFindings(say, purchaseCase),
  ];
}

function dayFindings(say: EntryFindings, { startsOn, demand }: PurchaseCase): Finding[] {
  const findings: Finding[] = [];
  const noSuch = (field: string, day: string): void => {
    findings.push(say.error(field, "no-such-date", `there is no date ${day}; correct it`));
  };
  if (!isDay(startsOn)) noSuch("startsOn", startsOn);
  if (demand.kind === "rows") {
    for (const { dueOn } of demand.rows) if (!isDay(dueOn)) noSuch("demand", dueOn);
  }
  if (demand.kind !== "orders") return findings;
  for (const end of [demand.from, demand.to]) if (end !== undefined && !isDay(end)) noSuch("demand", end);
  if (findings.length === 0 && (demand.from ?? "") > (demand.to ?? LATEST)) {
    findings.push(
      say.error(
        "demand",
        "ends-before-start",
        `the orders that count begin on ${demand.from} and end before, on ${demand.to}; swap or correct them`,
      ),
    );
  }
  return findings;
}

const LATEST = "9999-12-31";

function partFindings(say: EntryFindings, shop: Shop, { demand }: PurchaseCase): Finding[] {
  if (demand.kind === "orders") return [];
  const known = new Set(shop.parts.map(({ id }) => id));
  const named = demand.kind === "rows" ? demand.rows : demand.lines;
  const unknown = [...new Set(named.map(({ partId }) => partId))].filter((id) => !known.has(id));
  if (unknown.length === 0) return [];
  const noPart = `the demand names parts that the shop does not have: ${listed(unknown)}; correct them or add the parts`;
  return [say.error("demand", "unknown-part", noPart)];
}

function amountFindings(say: EntryFindings, shop: Shop, { demand }: PurchaseCase): Finding[] {
  if (demand.kind === "typed") {
    if (demand.lines.length > 0) return [];
    return [say.error("demand", "no-demand", "no part is expected; type at least one line of demand")];
  }
  const days = demand.kind === "rows" ? rowDays(demand.rows) : orderDays(shop, demand);
  if (days.length === 0) {
    const none =
      demand.kind === "rows"
        ? "there is no order in the file of the past; choose another file or type the demand"
        : "the shop has no order that counts, so there is no history to draw weeks from; enter orders, take a file, or type the demand";
    return [say.error("demand", "no-history", none)];
  }
  const weeks = new Set(days.map(weekOfDay)).size;
  if (weeks >= FEWEST_WEEKS) return [];
  return [
    say.warning(
      "demand",
      "short-history",
      `the history has orders in only ${weeks} ${weeks === 1 ? "week" : "weeks"}, so every scenario repeats them; ${FEWEST_WEEKS} weeks or more, better a whole year, say more`,
    ),
  ];
}

/** Common sense, no source: a quarter of a year or so. */
const FEWEST_WEEKS = 12;

function rowDays(rows: readonly { readonly dueOn: string }[]): number[] {
  return rows.filter(({ dueOn }) => isDay(dueOn)).map(({ dueOn }) => dayNumberOf(dueOn));
}

function orderDays(
  shop: Shop,
  { from, to }: { readonly from?: string | undefined; readonly to?: string | undefined },
): number[] {
  const zone = isTimeZone(shop.timeZone) ? shop.timeZone : "UTC";
  const fromDay = from !== undefined && isDay(from) ? dayNumberOf(from) : Number.NEGATIVE_INFINITY;
  const toDay = to !== undefined && isDay(to) ? dayNumberOf(to) : Number.POSITIVE_INFINITY;
  return shop.orders
    .map(({ dueAt }) => minuteOrNull(dueAt, zone))
    .filter((dueMin) => dueMin !== null)
    .map((dueMin) => localDayNumber(dueMin, zone))
    .filter((day) => day >= fromDay && day <= toDay);
}

function growthFindings(say: EntryFindings, { growthPctPerYear }: PurchaseCase): Finding[] {
  if (growthPctPerYear >= -30 && growthPctPerYear <= 50) return [];
  return [
    say.warning(
      "growthPctPerYear",
      "unusual",
      `growth is ${growthPctPerYear} % per year, usual is -30 to 50 %; check it, for it counts in every year`,
    ),
  ];
}

function seasonFindings(say: EntryFindings, { seasonByMonth }: PurchaseCase): Finding[] {
  if (seasonByMonth === undefined) return [];
  const mean = seasonByMonth.reduce((sum, factor) => sum + factor, 0) / seasonByMonth.length;
  if (mean === 0)
    return [
      say.error(
        "seasonByMonth",
        "no-demand",
        "every month has the factor 0, so nothing is ever ordered; correct them",
      ),
    ];
  if (Math.abs(mean - 1) <= 0.05) return [];
  return [
    say.warning(
      "seasonByMonth",
      "season-not-one",
      `the factors of the months are ${mean.toFixed(2)} in the mean, not 1, so the season changes the year's orders too; divide each by ${mean.toFixed(2)} unless that is meant`,
    ),
  ];
}

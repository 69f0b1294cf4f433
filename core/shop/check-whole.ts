import type { Costing } from "./costing.ts";
import { about, type Finding } from "./finding.ts";
import { isTimeZone } from "./instants.ts";
import type { Shop } from "./shop.ts";
import { ENTRY_WORD, SHOP_LISTS } from "./shop-lists.ts";

/** Code of the finding about the second and later entries with one id: only those are in error, not the first. */
export const DUPLICATE_ID = "duplicate-id";

/** Findings about the shop as a whole: time zone, currency, empty lists, ids used twice, money rules. */
export function checkWhole(shop: Shop): Finding[] {
  return [
    ...zoneFindings(shop.timeZone),
    ...currencyFindings(shop.currency),
    ...emptyListFindings(shop),
    ...duplicateFindings(shop),
    ...costingFindings(shop.costing),
  ];
}

function zoneFindings(timeZone: string): Finding[] {
  if (isTimeZone(timeZone)) return [];
  const sentence = `Time zone ${timeZone} is unknown: name the works' own, such as Europe/Berlin or America/Chicago.`;
  return [{ severity: "error", code: "unknown-time-zone", where: "timeZone", sentence }];
}

function currencyFindings(currency: string): Finding[] {
  if (Intl.supportedValuesOf("currency").includes(currency)) return [];
  const sentence = `Currency ${currency} is no known code of ISO 4217: amounts are shown with two digits; check the code.`;
  return [{ severity: "warning", code: "unknown-currency", where: "currency", sentence }];
}

function emptyListFindings(shop: Shop): Finding[] {
  const findings: Finding[] = [];
  const add = (severity: Finding["severity"], where: string, sentence: string): void => {
    findings.push({ severity, code: "empty-list", where, sentence });
  };
  if (shop.machines.length === 0)
    add("error", "machines", "There are no machines: add at least one to plan on.");
  if (shop.feedstocks.length === 0)
    add("error", "feedstocks", "There are no feedstocks: add at least one to print with.");
  if (shop.orders.length === 0)
    add("warning", "orders", "There are no orders: nothing is left to plan; add order lines.");
  return findings;
}

function duplicateFindings(shop: Shop): Finding[] {
  return SHOP_LISTS.flatMap((list) => {
    const counts = new Map<string, number>();
    for (const { id } of shop[list]) counts.set(id, (counts.get(id) ?? 0) + 1);
    return [...counts]
      .filter(([, count]) => count > 1)
      .map(([id, count]) =>
        about(list, id).error(
          "id",
          DUPLICATE_ID,
          `${count} entries have this id; the first is kept, give every other ${ENTRY_WORD[list]} an id of its own`,
        ),
      );
  });
}

function costingFindings(costing: Costing): Finding[] {
  const findings: Finding[] = [];
  const warn = (field: keyof Costing, code: string, sentence: string): void => {
    findings.push({ severity: "warning", code, where: `costing/${field}`, sentence });
  };
  if (costing.labourPerH === 0)
    warn(
      "labourPerH",
      "costs-nothing",
      "An hour of an operator costs 0: set-ups and finishing look free; enter the cost.",
    );
  if (costing.interestPctPerYear > 30)
    warn(
      "interestPctPerYear",
      "unusual",
      `Imputed interest of ${costing.interestPctPerYear} % per year is unusual, 0 to 30 % is usual; check it.`,
    );
  if (costing.overheadPct > 300)
    warn(
      "overheadPct",
      "unusual",
      `Overhead of ${costing.overheadPct} % is unusual, 0 to 300 % is usual; check it.`,
    );
  return [...findings, ...marginFindings(costing)];
}

function marginFindings({ marginPct, marginOn }: Costing): Finding[] {
  const where = "costing/marginPct";
  if (marginOn === "cost") {
    if (marginPct <= 400) return [];
    const sentence = `A mark-up of ${marginPct} % on cost makes prices of more than five times the cost; check it.`;
    return [{ severity: "warning", code: "unusual", where, sentence }];
  }
  if (marginPct >= 100) {
    const sentence = `A margin of ${marginPct} % of the price leaves nothing for the cost: enter less than 100, or say that it is a mark-up on cost.`;
    return [{ severity: "warning", code: "margin-of-all", where, sentence }];
  }
  if (marginPct < 95) return [];
  const sentence = `A margin of ${marginPct} % of the price makes prices of twenty times the cost and more; check it.`;
  return [{ severity: "warning", code: "unusual", where, sentence }];
}

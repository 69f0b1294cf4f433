import { about, type EntryFindings, type Finding, listed } from "./finding.ts";
import type { Machine } from "./machine.ts";
import type { Candidate, PurchaseCase } from "./purchase-case.ts";
import type { Shop } from "./shop.ts";

/** Findings about the money and the time of a case: prices, lives, rates, budget, weeks. */
export function caseMoneyFindings(shop: Shop, purchaseCase: PurchaseCase): Finding[] {
  const say = about("cases", purchaseCase.id);
  return [
    ...purchaseCase.candidates.flatMap((candidate) => candidateFindings(say, shop, candidate)),
    ...rateFindings(say, purchaseCase),
    ...givenRateFindings(say, shop, purchaseCase),
    ...budgetFindings(say, purchaseCase),
    ...weekFindings(say, purchaseCase),
  ];
}

function candidateFindings(say: EntryFindings, shop: Shop, candidate: Candidate): Finding[] {
  const { id, name, price, residualValue, lifeYears, changes } = candidate;
  const who = `candidate ${id} (${name})`;
  const findings: Finding[] = [];
  const warn = (code: string, what: string): void => {
    findings.push(say.warning("candidates", code, `${who} ${what}`));
  };
  const added = changes.flatMap((change) => addedMachine(shop, change));
  if (added.length > 0 && price === 0) warn("costs-nothing", "adds a machine for nothing; enter its price");
  if (residualValue > price)
    warn("residual-above-price", `brings ${residualValue} at the end and costs ${price}; check both`);
  if (lifeYears > LONGEST_LIFE_YEARS)
    warn("unusual", `is to last ${lifeYears} years, usual is up to ${LONGEST_LIFE_YEARS}; check its life`);
  const known = added.reduce((sum, { hourRate }) => sum + purchasePriceOf(hourRate), 0);
  if (known > 0 && price > 0 && Math.abs(price - known) > PRICE_TOLERANCE * price) {
    warn(
      "two-prices",
      `costs ${price}, but the machines it adds say ${known} in their machine-hour rate; maintenance is reckoned from the second, so make them agree`,
    );
  }
  for (const change of changes) {
    if (change.kind !== "sell-machine") continue;
    const rate = shop.machines.find((machine) => machine.id === change.machineId)?.hourRate ?? 0;
    const bought = purchasePriceOf(rate);
    if (bought > 0 && change.proceeds > bought)
      warn(
        "absurd-proceeds",
        `sells ${change.machineId} for ${change.proceeds}, more than its ${bought} when new; check both`,
      );
  }
  return findings;
}

/** Common practice of the trade, no source. */
const LONGEST_LIFE_YEARS = 20;
const PRICE_TOLERANCE = 0.2;

function addedMachine(shop: Shop, change: Candidate["changes"][number]): Machine[] {
  if (change.kind === "add-machine") return [change.machine];
  if (change.kind !== "add-alike") return [];
  return shop.machines.filter(({ id }) => id === change.alike);
}

function purchasePriceOf(hourRate: Machine["hourRate"]): number {
  return typeof hourRate === "number" ? 0 : hourRate.purchasePrice;
}

function rateFindings(say: EntryFindings, { financing }: PurchaseCase): Finding[] {
  const { discountPctPerYear, taxPct, depreciation } = financing;
  const findings: Finding[] = [];
  if (discountPctPerYear < 0 || discountPctPerYear > 30) {
    findings.push(
      say.warning(
        "financing/discountPctPerYear",
        "unusual",
        `the discount rate is ${discountPctPerYear} % per year, usual is 0 to 30 %; check it`,
      ),
    );
  }
  if (taxPct > 0 && depreciation === "none") {
    findings.push(
      say.warning(
        "financing/depreciation",
        "no-depreciation",
        "tax is taken but no depreciation, so the price never lowers the tax; choose straight-line unless that is meant",
      ),
    );
  }
  return findings;
}

function givenRateFindings(say: EntryFindings, shop: Shop, purchaseCase: PurchaseCase): Finding[] {
  if (purchaseCase.givenRateCashPct !== undefined) return [];
  const added = purchaseCase.candidates.flatMap(({ changes }) =>
    changes.flatMap((change) => (change.kind === "add-machine" ? [change.machine] : [])),
  );
  const given = [...shop.machines, ...added].filter(({ hourRate }) => typeof hourRate === "number");
  if (given.length === 0) return [];
  return [
    say.warning(
      "givenRateCashPct",
      "rate-not-split",
      `the machine-hour rate of ${listed(given.map(({ id }) => id))} is one number, which does not say what of it is cash; none of it is counted. Enter the inputs of the rate, or the share that is cash for each hour`,
    ),
  ];
}

function budgetFindings(say: EntryFindings, { budget, candidates }: PurchaseCase): Finding[] {
  if (budget === null || candidates.length === 0) return [];
  const least = Math.min(...candidates.map(outlayOf));
  if (least <= budget) return [];
  return [
    say.warning(
      "budget",
      "budget-too-small",
      `the budget of ${budget} pays for no candidate, the cheapest takes ${least} at the start; raise it or add one that costs less`,
    ),
  ];
}

/**
 * What a candidate takes at the start: price, installation and training, less what sold machines bring.
 * Example: 90 000 + 6 000 + 4 000 and a sale of 15 000 take 85 000.
 */
export function outlayOf({ price, installation, training, changes }: Candidate): number {
  return price + installation + training - proceedsOf(changes);
}

function proceedsOf(changes: Candidate["changes"]): number {
  return changes.reduce((sum, change) => (change.kind === "sell-machine" ? sum + change.proceeds : sum), 0);
}

function weekFindings(say: EntryFindings, { weeks, scenarios }: PurchaseCase): Finding[] {
  const findings: Finding[] = [];
  if (weeks < WEEKS_PER_YEAR) {
    findings.push(
      say.warning(
        "weeks",
        "part-of-year",
        `only ${weeks} of the ${WEEKS_PER_YEAR} weeks of a year are planned and counted for the whole of it; the season and the holidays of the rest are left out`,
      ),
    );
  } else if (weeks % WEEKS_PER_YEAR !== 0) {
    findings.push(
      say.warning(
        "weeks",
        "part-of-year",
        `${weeks} weeks are no whole years of ${WEEKS_PER_YEAR}; the last ${weeks % WEEKS_PER_YEAR} are left out`,
      ),
    );
  }
  if (scenarios < FEWEST_SCENARIOS) {
    findings.push(
      say.warning(
        "scenarios",
        "few-scenarios",
        `${scenarios} ${scenarios === 1 ? "scenario says" : "scenarios say"} little about chance; take ${FEWEST_SCENARIOS} or more`,
      ),
    );
  }
  return findings;
}

const WEEKS_PER_YEAR = 52;
const FEWEST_SCENARIOS = 10;

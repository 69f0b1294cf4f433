import type { RateAnswer } from "../purchase/answer.ts";
import type { BreakEven } from "../purchase/break-even.ts";
import { listed } from "../shop/finding.ts";
import type { CaseView, LetteredStudy } from "./case-view.ts";
import { fixedText } from "./display.ts";

/** One figure of every candidate, as text, in the order of the candidates. */
export interface FigureRow {
  readonly label: string;
  readonly cells: readonly string[];
}

/**
 * The table of a case: figures as rows, candidates as columns. Example: value 61 234 EUR, internal rate 14.5 %, back after
 * 4.2 years.
 */
export function figureRows(
  { amount, shop: { currency } }: CaseView,
  candidates: readonly LetteredStudy[],
): FigureRow[] {
  const row = (label: string, cell: (own: LetteredStudy) => string): FigureRow => ({
    label,
    cells: candidates.map(cell),
  });
  return [
    row(`Paid at the start, ${currency}`, ({ answer }) => amount(answer.answer.outlay)),
    row("Life, years", ({ answer }) => fixedText(answer.lifeYears, 0)),
    row(`Net present value, ${currency}`, ({ answer }) => amount(answer.answer.netPresentValue)),
    row(`The same each year, ${currency}`, ({ answer }) => amount(answer.answer.equivalentAnnualValue)),
    row(`Cost of having it each year, ${currency}`, ({ answer }) =>
      amount(answer.answer.equivalentAnnualCost),
    ),
    row("Internal rate of return", ({ answer }) => rateText(answer.answer.rate)),
    row("Modified rate of return", ({ answer }) => shareText(answer.answer.modifiedRate)),
    row("Payback, years", ({ answer }) => yearsText(answer.answer.paybackYears)),
    row("Payback discounted, years", ({ answer }) => yearsText(answer.answer.discountedPaybackYears)),
    row(`Most to pay for it, ${currency}`, ({ answer }) =>
      answer.mostToPay === null ? "no price" : amount(answer.mostToPay),
    ),
    row("Pays at demand", ({ demand }) => breakEvenText(demand)),
    row("Pays at pellet prices", ({ pelletPrice }) => breakEvenText(pelletPrice)),
    row("Pays at filament prices", ({ filamentPrice }) => breakEvenText(filamentPrice)),
    row(`1 of 10 scenarios below, ${currency}`, ({ answer }) => amount(answer.distribution.p10)),
    row(`Half of them below, ${currency}`, ({ answer }) => amount(answer.distribution.p50)),
    row(`9 of 10 below, ${currency}`, ({ answer }) => amount(answer.distribution.p90)),
    row("Chance of loss", ({ answer }) => chanceText(answer.distribution.lossChance)),
  ];
}

/** What break-evens mean, for below the table. */
export const BREAK_EVEN_NOTE =
  "Pays at: multiples of what is expected or of today's price at which the value is not below 0; any and none: as far as was looked at.";

/** An internal rate that cannot mislead. Example: rates 0.25 and 4 give "not unique". */
export function rateText(rate: RateAnswer): string {
  if (rate.kind === "unique") return shareText(rate.rate);
  return rate.kind === "none" ? "none" : "not unique";
}

function shareText(share: number | null): string {
  return share === null ? "none" : `${fixedText(share * 100, 1)} %`;
}

function yearsText(years: number): string {
  return Number.isFinite(years) ? fixedText(years, 1) : "never";
}

/** A chance as people count it. Example: 0.05 gives "5 of 100". */
export function chanceText(share: number): string {
  return `${fixedText(share * 100, 0)} of 100`;
}

function breakEvenText(breakEven: BreakEven | null): string {
  if (breakEven === null) return "not asked";
  const at = breakEven.crossings.map((factor) => fixedText(factor * 100, 0));
  switch (breakEven.kind) {
    case "above":
      return `from ${at[0]} %`;
    case "below":
      return `up to ${at[0]} %`;
    case "always":
      return "any";
    case "never":
      return "none";
    case "several":
      return `turns at ${listed(at)} %`;
  }
}

/** How the works runs in a mean year, first as it is, then with each candidate. */
export function runningRows(
  { amount, study, shop: { currency } }: CaseView,
  candidates: readonly LetteredStudy[],
): FigureRow[] {
  const fleets = [study.without, ...candidates.map(({ figures }) => figures)];
  const row = (label: string, cell: (own: (typeof fleets)[number]) => string): FigureRow => ({
    label,
    cells: fleets.map(cell),
  });
  return [
    row("Orders", ({ orders }) => fixedText(orders, 0)),
    row("Late orders", ({ lateOrders }) => fixedText(lateOrders, 0)),
    row("Lost orders", ({ lostOrders }) => fixedText(lostOrders, 0)),
    row(`Revenue, ${currency}`, ({ revenue }) => amount(revenue)),
    row(`Cost of making, ${currency}`, (own) => amount(own.operatingCost - own.boughtOutCost)),
    row(`Bought out, ${currency}`, ({ boughtOutCost }) => amount(boughtOutCost)),
    row(`Lateness, ${currency}`, ({ lateCost }) => amount(lateCost)),
    row("Filament, kg", ({ filamentKg }) => fixedText(filamentKg, 0)),
    row("Pellets, kg", ({ pelletKg }) => fixedText(pelletKg, 0)),
  ];
}

/**
 * Hours in use of staffed hours by machine, first as it is, then with each candidate; a machine that is not there: "-".
 * Neighbours with the same figures share a row. Example: "Bench 1 and 3 more", 100 %, 98 %.
 */
export function utilisationRows(
  { study, shop }: CaseView,
  candidates: readonly LetteredStudy[],
): FigureRow[] {
  const fleets = [study.without, ...candidates.map(({ figures }) => figures)];
  const ids = [...new Set(fleets.flatMap(({ hours }) => hours.map(({ machineId }) => machineId)))];
  const names = machineNames(shop.machines, candidates);
  const rows = ids.map((id) => ({
    label: names.get(id) ?? id,
    cells: fleets.map(({ hours }) => {
      const own = hours.find(({ machineId }) => machineId === id);
      if (own === undefined) return "-";
      return own.staffedH > 0 ? `${fixedText((100 * own.usedH) / own.staffedH, 0)} %` : "no hours";
    }),
  }));
  return neighbours(rows).map(([first, ...others]) => ({
    ...first,
    label: others.length === 0 ? first.label : `${first.label} and ${others.length} more`,
  }));
}

/** Rows that follow each other with the same cells, together. */
function neighbours(rows: readonly FigureRow[]): [FigureRow, ...FigureRow[]][] {
  const groups: [FigureRow, ...FigureRow[]][] = [];
  for (const row of rows) {
    const last = groups.at(-1);
    if (last?.[0].cells.join() === row.cells.join()) last.push(row);
    else groups.push([row]);
  }
  return groups;
}

function machineNames(
  machines: readonly { readonly id: string; readonly name: string }[],
  candidates: readonly LetteredStudy[],
): Map<string, string> {
  const added = candidates.flatMap(({ candidate }) =>
    candidate.changes.flatMap((change): [string, string][] => {
      if (change.kind === "add-machine") return [[change.machine.id, change.machine.name]];
      return change.kind === "add-alike" ? [[change.id, change.name]] : [];
    }),
  );
  return new Map([...added, ...machines.map(({ id, name }) => [id, name] as const)]);
}

/**
 * What a candidate replaces, in one sentence for each that is worth telling. Example: "bought out 12 000 EUR less a year (of
 * 20 000 EUR)".
 */
export function replacedText({ study, money }: CaseView, { figures }: LetteredStudy): string {
  const before = study.without;
  const parts = [
    changeText("bought out", before.boughtOutCost, figures.boughtOutCost, money),
    changeText("lateness", before.lateCost, figures.lateCost, money),
    changeText("lost orders", before.lostOrders, figures.lostOrders, (count) => fixedText(count, 0)),
    changeText("filament", before.filamentKg, figures.filamentKg, (kg) => `${fixedText(kg, 0)} kg`),
    changeText("pellets", before.pelletKg, figures.pelletKg, (kg) => `${fixedText(kg, 0)} kg`),
  ].filter((part) => part !== null);
  return parts.length === 0 ? "Nothing is replaced." : `In a mean year: ${parts.join("; ")}.`;
}

function changeText(
  what: string,
  before: number,
  after: number,
  text: (amount: number) => string,
): string | null {
  const change = after - before;
  if (Math.abs(change) < Math.max(HALF, LEAST_SHARE * Math.abs(before))) return null;
  return `${what} ${text(Math.abs(change))} ${change < 0 ? "less" : "more"} (of ${text(before)})`;
}

/** Less than half a unit or a thousandth is not told. */
const HALF = 0.5;
const LEAST_SHARE = 0.001;

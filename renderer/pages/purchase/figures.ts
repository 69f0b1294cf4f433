import type { RateAnswer } from "../../../core/purchase/answer.ts";
import type { BreakEven } from "../../../core/purchase/break-even.ts";
import type { OperatingFigures } from "../../../core/purchase/operating-figures.ts";
import type { LetteredStudy } from "../../../core/report/case-view.ts";
import { listed } from "../../../core/shop/finding.ts";
import { lbFromKg } from "../../../core/units/conversions.ts";
import type { Format } from "../../format/format.ts";

/** One figure of every candidate as text. */
export interface FigureLine {
  readonly label: string;
  readonly cells: readonly string[];
  /** true: the one that decides */
  readonly isMain?: boolean;
}

export interface FigureGroup {
  readonly title: string;
  readonly lines: readonly FigureLine[];
}

/** The table of a case: figures in groups, a cell for each candidate. */
export function figureGroups(
  candidates: readonly LetteredStudy[],
  format: Format,
  hasAsked: boolean,
): FigureGroup[] {
  const { currency } = format;
  const line = (label: string, cell: (own: LetteredStudy) => string): FigureLine => ({
    label,
    cells: candidates.map(cell),
  });
  const whole = (value: number): string => format.number(value, 0);
  const share = (value: number | null): string => (value === null ? "none" : pct(format, value));
  const years = (value: number): string => (Number.isFinite(value) ? format.fixed(value, 1) : "never");
  return [
    {
      title: "Worth",
      lines: [
        {
          ...line(`Net present value, ${currency}`, ({ answer }) => whole(answer.answer.netPresentValue)),
          isMain: true,
        },
        line(`The same each year, ${currency}`, ({ answer }) => whole(answer.answer.equivalentAnnualValue)),
        line(`Paid at the start, ${currency}`, ({ answer }) => whole(answer.answer.outlay)),
        line(`Most to pay for it, ${currency}`, ({ answer: { mostToPay } }) =>
          mostToPay === null ? "no price" : whole(mostToPay),
        ),
        line(`Cost of having it a year, ${currency}`, ({ answer }) =>
          whole(answer.answer.equivalentAnnualCost),
        ),
        line("Life, years", ({ answer }) => whole(answer.lifeYears)),
      ],
    },
    {
      title: "Return",
      lines: [
        line("Internal rate", ({ answer }) => rateText(answer.answer.rate, format)),
        line("Modified rate", ({ answer }) => share(answer.answer.modifiedRate)),
        line("Payback, years", ({ answer }) => years(answer.answer.paybackYears)),
        line("Payback discounted, years", ({ answer }) => years(answer.answer.discountedPaybackYears)),
      ],
    },
    {
      title: `Net present value over scenarios, ${currency}`,
      lines: [
        line("1 of 10 is below (P10)", ({ answer }) => whole(answer.distribution.p10)),
        line("Half are below (P50)", ({ answer }) => whole(answer.distribution.p50)),
        line("9 of 10 are below (P90)", ({ answer }) => whole(answer.distribution.p90)),
        line("Chance of loss", ({ answer }) => pct(format, answer.distribution.lossChance, 0)),
      ],
    },
    breakEvenGroup(line, format, hasAsked),
  ];
}

/** At which demand and which prices each still pays; not asked in a first answer. */
function breakEvenGroup(
  line: (label: string, cell: (own: LetteredStudy) => string) => FigureLine,
  format: Format,
  hasAsked: boolean,
): FigureGroup {
  const at = (breakEven: BreakEven | null): string => (hasAsked ? breakEvenText(breakEven, format) : "…");
  return {
    title: "Pays at, of what is expected",
    lines: [
      line("Demand", ({ demand }) => at(demand)),
      line("Pellet prices", ({ pelletPrice }) => at(pelletPrice)),
      line("Filament prices", ({ filamentPrice }) => at(filamentPrice)),
    ],
  };
}

/** An internal rate that cannot mislead. Example: rates 0.25 and 4 give "not unique: 25 and 400 %". */
export function rateText(rate: RateAnswer, format: Format): string {
  if (rate.kind === "unique") return pct(format, rate.rate);
  if (rate.kind === "none") return "none";
  return `not unique: ${listed(rate.rates.map((one) => format.number(one * 100, 0)))}\u202f%`;
}

/** A share in percent. Example: 0.1449 gives "14.5 %". */
export function pct(format: Format, share: number, decimals = 1): string {
  return `${format.fixed(share * 100, decimals)}\u202f%`;
}

function breakEvenText(breakEven: BreakEven | null, format: Format): string {
  if (breakEven === null) return "not asked";
  const at = breakEven.crossings.map((factor) => format.number(factor * 100, 0));
  switch (breakEven.kind) {
    case "above":
      return `from ${at[0]}\u202f%`;
    case "below":
      return `up to ${at[0]}\u202f%`;
    case "always":
      return "any";
    case "never":
      return "none";
    case "several":
      return `turns at ${listed(at)}\u202f%`;
  }
}

/** One figure of a mean year: as it is, with the candidate, and the change. */
export interface RunningLine {
  readonly label: string;
  readonly without: string;
  readonly withIt: string;
  readonly change: string;
}

/** How the works runs in a mean year of 52 weeks, as it is and with a candidate. */
export function runningLines(
  without: OperatingFigures,
  withIt: OperatingFigures,
  format: Format,
): RunningLine[] {
  const { currency } = format;
  const line = (label: string, of: (own: OperatingFigures) => number, decimals = 0): RunningLine => {
    const change = of(withIt) - of(without);
    const text = (value: number): string => format.number(value, decimals);
    const isSame = text(of(withIt)) === text(of(without));
    return {
      label,
      without: text(of(without)),
      withIt: text(of(withIt)),
      change: isSame ? "same" : `${change > 0 ? "+" : ""}${text(change)}`,
    };
  };
  const mass = (kg: number): number => (format.mass === "kg" ? kg : lbFromKg(kg));
  return [
    line("Orders due", ({ orders }) => orders),
    line("Late orders", ({ lateOrders }) => lateOrders),
    line("Lost orders", ({ lostOrders }) => lostOrders),
    line(`Price of lost orders, ${currency}`, ({ lostRevenue }) => lostRevenue),
    line(`Revenue, ${currency}`, ({ revenue }) => revenue),
    line(`Cost of making, ${currency}`, (own) => own.operatingCost - own.boughtOutCost),
    line(`Bought elsewhere, ${currency}`, ({ boughtOutCost }) => boughtOutCost),
    line(`Cost of lateness, ${currency}`, ({ lateCost }) => lateCost),
    line(`Filament, ${format.mass}`, ({ filamentKg }) => mass(filamentKg)),
    line(`Pellets, ${format.mass}`, ({ pelletKg }) => mass(pelletKg)),
  ];
}

/** Use of one machine, or of neighbours with the same figures; null: it is not there. */
export interface MachineUse {
  readonly name: string;
  readonly without: number | null;
  readonly withIt: number | null;
}

/** Hours in use over staffed hours by machine, as it is and with a candidate; above 1 where it also runs with nobody there. */
export function machineUses(
  without: OperatingFigures,
  withIt: OperatingFigures,
  names: ReadonlyMap<string, string>,
): MachineUse[] {
  const ids = [...new Set([...without.hours, ...withIt.hours].map(({ machineId }) => machineId))];
  const uses = ids.map((id) => ({
    name: names.get(id) ?? id,
    without: useOf(without, id),
    withIt: useOf(withIt, id),
  }));
  const groups: { readonly first: MachineUse; more: number }[] = [];
  for (const use of uses) {
    const last = groups.at(-1);
    if (last && isAlike(last.first, use)) last.more += 1;
    else groups.push({ first: use, more: 0 });
  }
  return groups.map(({ first, more }) =>
    more === 0 ? first : { ...first, name: `${first.name} and ${more} more` },
  );
}

function useOf({ hours }: OperatingFigures, id: string): number | null {
  const own = hours.find(({ machineId }) => machineId === id);
  return own && own.staffedH > 0 ? own.usedH / own.staffedH : null;
}

/** Less than half a percent is not seen. */
const ALIKE = 0.005;

function isAlike(a: MachineUse, b: MachineUse): boolean {
  return isNear(a.without, b.without) && isNear(a.withIt, b.withIt);
}

function isNear(one: number | null, other: number | null): boolean {
  return one === null || other === null ? one === other : Math.abs(one - other) < ALIKE;
}

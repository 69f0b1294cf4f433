import type { Candidate, Financing, PurchaseCase } from "../../../core/shop/purchase-case.ts";
import { dayColumn } from "../../components/entry/time-columns.ts";
import { type ValueColumn, type ValueColumns, valueColumns } from "../../components/entry/value-columns.ts";
import { useStores } from "../../store/stores.ts";

type Field = ValueColumn<PurchaseCase>;

/** Fields of a case, by where they stand. Their ids are their places in the case, where findings look for them. */
export interface CaseFields {
  readonly names: readonly Field[];
  /** how demand goes on from its source */
  readonly growth: readonly Field[];
  /** factor of each month */
  readonly months: readonly Field[];
  readonly history: readonly Field[];
  readonly time: readonly Field[];
  readonly financing: readonly Field[];
  readonly valuing: readonly Field[];
}

const LOWEST_PCT = -99.99;
const HIGHEST_RATE_PCT = 99.99;
const MOST_WEEKS = 520;
const MOST_SCENARIOS = 1000;
const MOST_GROWTH_PCT = 1000;

export function createCaseFields(): CaseFields {
  const { format } = useStores();
  const make = valueColumns<PurchaseCase>(format);
  return {
    names: nameFields(make),
    growth: growthFields(make),
    months: MONTHS.map((title, month) => monthField(make, title, month)),
    history: createHistoryFields(),
    time: createTimeFields(),
    financing: createMoneyFields(),
    valuing: valuingFields(make),
  };
}

type Make = ValueColumns<PurchaseCase>;

function nameFields(make: Make): Field[] {
  return [
    make.text({ id: "name", title: "Name", get: (row) => row.name, set: (row, name) => ({ ...row, name }) }),
    make.text({
      id: "note",
      title: "Note",
      isOptional: true,
      get: (row) => row.note,
      set: (row, note) => ({ ...row, note }),
    }),
  ];
}

function growthFields({ number }: Make): Field[] {
  return [
    number({
      id: "growthPctPerYear",
      title: "Growth of orders",
      unit: "% per year",
      least: LOWEST_PCT,
      most: MOST_GROWTH_PCT,
      get: (row) => row.growthPctPerYear,
      set: (row, growthPctPerYear) => ({ ...row, growthPctPerYear }),
    }),
    number({
      id: "patienceWeeks",
      title: "Lost when later than",
      unit: "weeks",
      isWhole: true,
      most: MOST_WEEKS,
      get: (row) => row.patienceWeeks,
      set: (row, patienceWeeks) => ({ ...row, patienceWeeks }),
    }),
  ];
}

function monthField({ number }: Make, title: string, month: number): Field {
  return number({
    id: `seasonByMonth/${month}`,
    title,
    most: 100,
    get: (row) => row.seasonByMonth?.[month],
    set: (row, value) => ({
      ...row,
      seasonByMonth: (row.seasonByMonth ?? EVEN_SEASON).with(month, value),
    }),
  });
}

function createTimeFields(): Field[] {
  const { format } = useStores();
  const { number } = valueColumns<PurchaseCase>(format);
  return [
    dayColumn<PurchaseCase>(format, {
      id: "startsOn",
      title: "Starts in the week of",
      get: (row) => row.startsOn,
      set: (row, startsOn) => ({ ...row, startsOn }),
    }),
    number({
      id: "weeks",
      title: "Weeks planned",
      isWhole: true,
      least: 1,
      most: MOST_WEEKS,
      get: (row) => row.weeks,
      set: (row, weeks) => ({ ...row, weeks }),
    }),
    number({
      id: "scenarios",
      title: "Scenarios of demand",
      isWhole: true,
      least: 1,
      most: MOST_SCENARIOS,
      get: (row) => row.scenarios,
      set: (row, scenarios) => ({ ...row, scenarios }),
    }),
    number({
      id: "seed",
      title: "Seed of chance",
      isWhole: true,
      get: (row) => row.seed,
      set: (row, seed) => ({ ...row, seed }),
    }),
  ];
}

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** Every month like the mean one. */
export const EVEN_SEASON: readonly number[] = MONTHS.map(() => 1);

/** From when to when the shop's own orders count. */
function createHistoryFields(): Field[] {
  const { format } = useStores();
  const end = (key: "from" | "to", title: string): Field => {
    const column = dayColumn<PurchaseCase>(format, {
      id: `demand/${key}`,
      title,
      get: ({ demand }) => (demand.kind === "orders" ? (demand[key] ?? "") : ""),
      set: (row, day) =>
        row.demand.kind === "orders" ? { ...row, demand: { ...row.demand, [key]: day } } : row,
    });
    return {
      ...column,
      put: (row, text) => {
        if (text.trim() !== "" || row.demand.kind !== "orders") return column.put(row, text);
        const { [key]: _, ...demand } = row.demand;
        return { ...row, demand };
      },
    };
  };
  return [end("from", "Due from, empty: first"), end("to", "Due until, empty: last")];
}

function createMoneyFields(): Field[] {
  const { format } = useStores();
  const make = valueColumns<PurchaseCase>(format);
  return [
    make.number({
      id: "financing/discountPctPerYear",
      title: "Discount rate",
      unit: "% per year",
      least: LOWEST_PCT,
      most: HIGHEST_RATE_PCT,
      get: (row) => row.financing.discountPctPerYear,
      set: (row, discountPctPerYear) => withRates(row, { discountPctPerYear }),
    }),
    make.number({
      id: "financing/reinvestPctPerYear",
      title: "Returns earn, empty: the same",
      unit: "% per year",
      least: LOWEST_PCT,
      most: HIGHEST_RATE_PCT,
      get: (row) => row.financing.reinvestPctPerYear,
      set: (row, reinvestPctPerYear) => withRates(row, { reinvestPctPerYear }),
      clear: (row) => {
        const { reinvestPctPerYear: _, ...financing } = row.financing;
        return { ...row, financing };
      },
    }),
    make.number({
      id: "financing/taxPct",
      title: "Tax on the gain",
      unit: "%",
      most: HIGHEST_RATE_PCT,
      get: (row) => row.financing.taxPct,
      set: (row, taxPct) => withRates(row, { taxPct }),
    }),
    make.choice({
      id: "financing/depreciation",
      title: "Depreciation for tax",
      choices: () => DEPRECIATIONS,
      get: (row) => row.financing.depreciation,
      set: (row, value) => withRates(row, { depreciation: value === "none" ? "none" : "straight-line" }),
    }),
    make.money({
      id: "budget",
      title: "Budget, empty: none",
      above: 0,
      get: (row) => row.budget,
      set: (row, budget) => ({ ...row, budget }),
      clear: (row) => ({ ...row, budget: null }),
    }),
  ];
}

function withRates(row: PurchaseCase, part: Partial<Financing>): PurchaseCase {
  return { ...row, financing: { ...row.financing, ...part } };
}

const DEPRECIATIONS = [
  { value: "straight-line", label: "straight-line" },
  { value: "none", label: "none" },
];

function valuingFields({ number }: Make): Field[] {
  return [
    number({
      id: "assumedMarginPct",
      title: "Margin without a price, empty: the shop's",
      unit: "% of price",
      most: HIGHEST_RATE_PCT,
      get: (row) => row.assumedMarginPct,
      set: (row, assumedMarginPct) => ({ ...row, assumedMarginPct }),
      clear: ({ assumedMarginPct: _, ...row }) => row,
    }),
    number({
      id: "givenRateCashPct",
      title: "Cash share of hour rates given as one number",
      unit: "%",
      most: 100,
      get: (row) => row.givenRateCashPct,
      set: (row, givenRateCashPct) => ({ ...row, givenRateCashPct }),
      clear: ({ givenRateCashPct: _, ...row }) => row,
    }),
  ];
}

const MOST_LIFE_YEARS = 50;

/** Name and money of a candidate. */
export function createCandidateFields(): readonly ValueColumn<Candidate>[] {
  const { format } = useStores();
  const make = valueColumns<Candidate>(format);
  const money = (
    id: "price" | "installation" | "training" | "yearlyCost" | "residualValue",
    title: string,
    per = "",
  ): ValueColumn<Candidate> =>
    make.money({
      id,
      title,
      unit: () => `${format().currency}${per}`,
      get: (row) => row[id],
      set: (row, value) => (id === "price" ? withPrice(row, value) : { ...row, [id]: value }),
    });
  return [
    make.text({ id: "name", title: "Name", get: (row) => row.name, set: (row, name) => ({ ...row, name }) }),
    money("price", "Price"),
    money("installation", "Installation"),
    money("training", "Training"),
    money("yearlyCost", "Beside that each year", " a year"),
    make.number({
      id: "lifeYears",
      title: "Useful life",
      unit: "years",
      isWhole: true,
      least: 1,
      most: MOST_LIFE_YEARS,
      get: (row) => row.lifeYears,
      set: (row, lifeYears) => ({ ...row, lifeYears }),
    }),
    money("residualValue", "Worth at its end"),
  ];
}

/** Maintenance is reckoned from the price in the hour rate of a new machine, so that one follows where both were the same. */
function withPrice(row: Candidate, price: number): Candidate {
  const changes = row.changes.map((change) => {
    if (change.kind !== "add-machine" || typeof change.machine.hourRate === "number") return change;
    const { hourRate } = change.machine;
    if (hourRate.purchasePrice !== row.price || price === 0) return change;
    return { ...change, machine: { ...change.machine, hourRate: { ...hourRate, purchasePrice: price } } };
  });
  return { ...row, price, changes };
}

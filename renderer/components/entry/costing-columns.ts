import { settingsOf } from "../../../core/shop/change.ts";
import type { Costing } from "../../../core/shop/costing.ts";
import { type ValueColumn, valueColumns } from "./value-columns.ts";
import { type Stores, useStores } from "../../store/stores.ts";

/** The money rules of the works as columns, for the fields in which they are edited. */
export function createCostingColumns(): ValueColumn<Costing>[] {
  const { format } = useStores();
  const make = valueColumns<Costing>(format);
  const money = (id: MoneyField, title: string, per: string) =>
    make.money({
      id,
      title,
      unit: () => `${format().currency} per ${per}`,
      get: (row) => row[id],
      set: (row, value) => ({ ...row, [id]: value }),
    });
  const number = (id: NumberField, title: string, unit: string, most?: number) =>
    make.number({
      id,
      title,
      unit,
      ...(most === undefined ? {} : { most }),
      get: (row) => row[id],
      set: (row, value) => ({ ...row, [id]: value }),
    });
  return [
    money("labourPerH", "An operator", "h"),
    money("engineeringPerH", "Preparing tool paths", "h"),
    number("engineeringFilamentH", "Tool paths, filament", "h a part"),
    number("engineeringPelletH", "Tool paths, pellets", "h a part"),
    money("energyPerKWh", "Electricity", "kWh"),
    money("floorPerM2Year", "Floor", "m² and year"),
    number("interestPctPerYear", "Interest", "% a year"),
    make.choice({
      id: "interestOn",
      title: "Interest on",
      choices: () => [
        { value: "mean-capital", label: "half of bought for and worth at the end" },
        { value: "half-purchase", label: "half of bought for" },
      ],
      get: (row) => row.interestOn,
      set: (row, value) => ({
        ...row,
        interestOn: value === "half-purchase" ? "half-purchase" : "mean-capital",
      }),
    }),
    number("overheadPct", "Overhead", "% of making"),
    ...quoteRules(make, format),
    money("defaultLateCostPerDay", "A late order", "day"),
    make.money({
      id: "moveCostPerBuild",
      title: "Moving a planned build",
      unit: () => `${format().currency} per build`,
      get: (row) => row.moveCostPerBuild,
      set: (row, value) => ({ ...row, moveCostPerBuild: value }),
      clear: ({ moveCostPerBuild: _, ...row }) => row,
    }),
  ];
}

/** Rules of prices offered: margin or mark-up, and the least that a quote comes to. */
function quoteRules(
  make: ReturnType<typeof valueColumns<Costing>>,
  format: Stores["format"],
): ValueColumn<Costing>[] {
  return [
    make.number({
      id: "marginPct",
      title: "Margin in quotes",
      unit: "%",
      get: (row) => row.marginPct,
      set: (row, value) => ({ ...row, marginPct: value }),
    }),
    make.choice({
      id: "marginOn",
      title: "Margin is a share of",
      choices: () => [
        { value: "price", label: "the price" },
        { value: "cost", label: "the cost (mark-up)" },
      ],
      get: (row) => row.marginOn ?? "price",
      set: (row, value) => ({ ...row, marginOn: value === "cost" ? "cost" : "price" }),
    }),
    make.money({
      id: "minimumOrder",
      title: "Least that a quote comes to",
      unit: () => format().currency,
      get: (row) => row.minimumOrder,
      set: (row, value) => ({ ...row, minimumOrder: value }),
      clear: ({ minimumOrder: _, ...row }) => row,
    }),
  ];
}

/** Puts new money rules in place of the old ones, as one step of undo. */
export function putCosting({ shop }: Stores, costing: Costing, what: string): void {
  shop.apply(`money rule: ${what.toLowerCase()}`, [
    { kind: "settings", settings: { ...settingsOf(shop.shop()), costing } },
  ]);
}

type MoneyField =
  | "labourPerH"
  | "engineeringPerH"
  | "energyPerKWh"
  | "floorPerM2Year"
  | "defaultLateCostPerDay";
type NumberField = "engineeringFilamentH" | "engineeringPelletH" | "interestPctPerYear" | "overheadPct";

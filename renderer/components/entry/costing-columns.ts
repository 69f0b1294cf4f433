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
    number("marginPct", "Margin in quotes", "% of price", 100),
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

/** Puts new money rules in place of the old ones, as one step of undo. */
export function putCosting({ shop }: Stores, costing: Costing, what: string): void {
  const { name, timeZone, currency, display } = shop.shop();
  shop.apply(`money rule: ${what.toLowerCase()}`, [
    { kind: "settings", settings: { name, timeZone, currency, display, costing } },
  ]);
}

type MoneyField =
  | "labourPerH"
  | "engineeringPerH"
  | "energyPerKWh"
  | "floorPerM2Year"
  | "defaultLateCostPerDay";
type NumberField =
  | "engineeringFilamentH"
  | "engineeringPelletH"
  | "interestPctPerYear"
  | "overheadPct"
  | "marginPct";

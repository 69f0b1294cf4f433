import type { Accessor } from "solid-js";
import type { FeedstockNeed } from "../../../core/plan/write/feedstock-needs.ts";
import type { Feedstock } from "../../../core/shop/feedstock.ts";
import { createFamilyMarks, FamilyMark } from "../../components/family-mark.tsx";
import type { GridColumn } from "../../components/grid/grid-column.ts";
import { type ColumnGroup, valueColumns } from "../../components/entry/value-columns.ts";
import { useStores } from "../../store/stores.ts";
import {
  buyingFields,
  identityFields,
  meltFields,
  originFields,
  propertyFields,
  runningFields,
} from "./feedstock-fields.ts";

/** Columns of feedstocks: those of the grid, and all of them in groups for the panel. */
export interface FeedstockColumns {
  readonly grid: readonly GridColumn<Feedstock>[];
  readonly groups: readonly ColumnGroup<Feedstock>[];
}

export function createFeedstockColumns(
  needs: Accessor<ReadonlyMap<string, FeedstockNeed>>,
): FeedstockColumns {
  const { format } = useStores();
  const marks = createFamilyMarks();
  const make = valueColumns<Feedstock>(format);
  const is = identityFields(make);
  const buying = buyingFields(make);
  const running = runningFields(make);
  const massColumn = (
    columnId: string,
    title: string,
    of: (need: FeedstockNeed) => number,
  ): GridColumn<Feedstock> => {
    const amount = (row: Feedstock): number | null => {
      const need = needs().get(row.id);
      return need ? of(need) : null;
    };
    return {
      id: columnId,
      title,
      widthPx: 100,
      align: "end",
      unit: () => format().mass,
      text: (row) => (amount(row) ? format().massNumber(amount(row) ?? 0) : ""),
      amount,
      isSummed: true,
    };
  };
  const orderBy = (row: Feedstock): string => {
    const by = needs().get(row.id)?.orderBy;
    return by ? format().dateTime(by) : "";
  };
  return {
    grid: [
      is.id,
      is.name,
      {
        ...is.family,
        draw: (row) => <FamilyMark mark={marks().get(row.family)} name={row.family} />,
      },
      is.form,
      buying.price,
      buying.stock,
      massColumn("needKg", "Plan needs", (one) => one.needKg),
      massColumn("buyKg", "To buy", (one) => one.buyKg),
      { id: "orderBy", title: "Order by", widthPx: 140, text: orderBy },
      buying.lead,
      running.dryC,
      running.dryH,
      running.nozzleMin,
      running.nozzleMax,
      running.platform,
      is.abrasive,
    ],
    groups: [
      { title: "What it is", columns: Object.values(is) },
      { title: "Buying", columns: Object.values(buying) },
      { title: "Running it", columns: Object.values(running) },
      { title: "How it melts and cools", columns: meltFields(make) },
      { title: "What a part of it bears", columns: propertyFields(make) },
      { title: "Where it comes from", columns: originFields(make) },
    ],
  };
}

/** Column of the grid in which a finding about a field is shown. */
export function feedstockColumnOf(field: string): string {
  if (field === "nozzleC") return "nozzleC/min";
  return IN_GRID.has(field) ? field : "id";
}

const IN_GRID = new Set([
  "name",
  "family",
  "form",
  "pricePerKg",
  "stockKg",
  "leadTimeDays",
  "dryC",
  "dryH",
  "nozzleC/min",
  "nozzleC/max",
  "platformC",
  "abrasive",
]);

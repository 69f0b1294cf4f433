import { createMemo } from "solid-js";
import type { DemandRow, TypedDemand } from "../../../core/shop/purchase-demand.ts";
import { dayColumn } from "../../components/entry/time-columns.ts";
import { type ValueColumn, type ValueColumns, valueColumns } from "../../components/entry/value-columns.ts";
import type { CellChoice } from "../../components/grid/grid-column.ts";
import { useStores } from "../../store/stores.ts";
import type { Placed } from "./demand-rows.ts";

type Line = Placed<TypedDemand>;
type Row = Placed<DemandRow>;

/** Columns of what is expected in a mean week. */
export function createTypedColumns(): ValueColumn<Line>[] {
  const { format } = useStores();
  const make = valueColumns<Line>(format);
  return [
    partColumn(make, createPartChoices()),
    make.number({
      id: "ordersPerWeek",
      title: "Orders",
      unit: "a week",
      widthPx: 72,
      above: 0,
      get: (row) => row.ordersPerWeek,
      set: (row, ordersPerWeek) => ({ ...row, ordersPerWeek }),
    }),
    quantityColumn(make),
    priceColumn(make),
    lateColumn(make),
  ];
}

/** Columns of order lines of the past. */
export function createPastColumns(): ValueColumn<Row>[] {
  const { format } = useStores();
  const make = valueColumns<Row>(format);
  return [
    dayColumn<Row>(format, {
      id: "dueOn",
      title: "Due",
      get: (row) => row.dueOn,
      set: (row, dueOn) => ({ ...row, dueOn }),
    }),
    partColumn(make, createPartChoices()),
    quantityColumn(make),
    priceColumn(make),
    lateColumn(make),
  ];
}

function createPartChoices(): () => readonly CellChoice[] {
  const { shop } = useStores();
  return createMemo(() => shop.shop().parts.map(({ id, name }) => ({ value: id, label: name })));
}

/** What both kinds of lines have. */
interface AnyLine {
  readonly partId: string;
  readonly quantity: number;
  readonly pricePerPiece?: number | undefined;
  readonly lateCostPerDay?: number | undefined;
}

function partColumn<One extends AnyLine>(
  make: ValueColumns<One>,
  choices: () => readonly CellChoice[],
): ValueColumn<One> {
  return make.choice({
    id: "partId",
    title: "Part",
    widthPx: 132,
    choices,
    get: (row) => row.partId,
    set: (row, partId) => ({ ...row, partId }),
  });
}

function quantityColumn<One extends AnyLine>(make: ValueColumns<One>): ValueColumn<One> {
  return make.number({
    id: "quantity",
    title: "Copies",
    unit: "an order",
    widthPx: 76,
    isWhole: true,
    least: 1,
    get: (row) => row.quantity,
    set: (row, quantity) => ({ ...row, quantity }),
  });
}

function priceColumn<One extends AnyLine>(make: ValueColumns<One>): ValueColumn<One> {
  return make.money({
    id: "pricePerPiece",
    title: "Price, each",
    widthPx: 96,
    get: (row) => row.pricePerPiece,
    set: (row, pricePerPiece) => ({ ...row, pricePerPiece }),
    clear: (row) => without(row, "pricePerPiece"),
  });
}

function lateColumn<One extends AnyLine>(make: ValueColumns<One>): ValueColumn<One> {
  return make.money({
    id: "lateCostPerDay",
    title: "Late, a day",
    widthPx: 96,
    get: (row) => row.lateCostPerDay,
    set: (row, lateCostPerDay) => ({ ...row, lateCostPerDay }),
    clear: (row) => without(row, "lateCostPerDay"),
  });
}

/** A key that is left out means what is usual in the shop. */
function without<One extends AnyLine>(row: One, key: "pricePerPiece" | "lateCostPerDay"): One {
  const { [key]: _, ...others } = row;
  return others as One;
}

import type { PlanDocument } from "../plan/plan-document.ts";
import { sideUp } from "../shop/direction.ts";
import type { Shop } from "../shop/shop.ts";
import { namesOf } from "./names.ts";
import { withoutTurns } from "./plain-text.ts";
import {
  boughtOutCopies,
  inTimeOrder,
  type OrderOutcome,
  shownCostLines,
  withoutPlace,
} from "./week-facts.ts";

/** A text file with its name. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

type Cell = string | number | null;

/**
 * The plan as five tables by RFC 4180 (Shafranovich 2005): CRLF, a header, the same number of fields in every row, quotes
 * where needed. Numbers have a decimal point and no grouping; the unit is in the column's name; instants are written as in
 * the plan. Text that a spreadsheet would run as a formula gets an apostrophe in front, and
 * characters that turn the reading direction round are written out.
 */
export function csvFiles(shop: Shop, plan: PlanDocument): TextFile[] {
  return [
    { name: "builds.csv", text: csvText(buildRows(shop, plan)) },
    { name: "orders.csv", text: csvText(orderRows(shop, plan)) },
    { name: "costs.csv", text: csvText(costRows(plan)) },
    { name: "tasks.csv", text: csvText(taskRows(shop, plan)) },
    { name: "feedstock.csv", text: csvText(feedstockRows(shop, plan)) },
  ];
}

/** Rows as CSV text. Example: [["a", "1,5"], ["=x", 2]] gives `a,"1,5"`, `'=x,2`, each line ended by CRLF. */
export function csvText(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(",")}\r\n`).join("");
}

function cellText(cell: Cell): string {
  if (cell === null) return "";
  if (typeof cell === "number") return Number.isFinite(cell) ? String(Number(cell.toPrecision(DIGITS))) : "";
  const text = withoutTurns(cell);
  const guarded = RUNS_AS_FORMULA.test(text) ? `'${text}` : text;
  return /[",\r\n]|^\s|\s$/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

/** Enough for every figure, and without the dust of binary fractions. */
const DIGITS = 12;

/** Spreadsheets take a cell as a formula that starts so, full-width forms and leading blanks included (OWASP, "CSV Injection"). */
const RUNS_AS_FORMULA = /^[\s\p{Cc}\p{Cf}]*[=+\-@\uff0b\uff0d\uff1d\uff20]|^[\t\r\n]/u;

/** One row per build and item, so that a mixed build takes several rows. */
function buildRows(shop: Shop, plan: PlanDocument): Cell[][] {
  const names = namesOf(shop);
  const head = [
    "build",
    "item",
    "state",
    "machine",
    "machine_name",
    "nozzle",
    "feedstock",
    "feedstock_name",
    "order",
    "part",
    "copies",
    "layer_height_mm",
    "bead_width_mm",
    "vertical_axis",
    "set_up_start",
    "print_start",
    "print_end",
    "unload_end",
    "changeover_min",
    "build_mass_kg",
  ];
  const rows = plan.builds.flatMap((build) =>
    build.items.map((item, index): Cell[] => [
      build.id,
      index + 1,
      build.state,
      build.machineId,
      names.machine(build.machineId),
      build.nozzleId,
      build.feedstockId,
      names.feedstock(build.feedstockId),
      item.orderId,
      names.part(item.orderId),
      item.copies,
      build.layerHeightMm,
      build.beadWidthMm,
      build.orientation.startsWith("-") ? sideUp(build.orientation) : build.orientation,
      build.setUpStart,
      build.printStart,
      build.printEnd,
      build.unloadEnd,
      build.changeoverMin,
      build.massKg,
    ]),
  );
  return [head, ...rows];
}

function orderRows(shop: Shop, plan: PlanDocument): Cell[][] {
  const names = namesOf(shop);
  const unplanned = new Map(withoutPlace(plan).map((entry) => [entry.orderId, entry]));
  const boughtOut = boughtOutCopies(plan);
  const head = [
    "order",
    "customer",
    "part",
    "quantity",
    "due",
    "finished",
    "late_min",
    `late_cost_${plan.currency}`,
    `cost_${plan.currency}`,
    "bought_out_copies",
    "unplanned_copies",
    "why_and_what_would_help",
  ];
  const sentencesOf = ({ orderId, why }: OrderOutcome): string =>
    [...new Set([...(unplanned.get(orderId)?.sentences ?? []), ...why])].join(" ");
  const rows = plan.orders.map((order): Cell[] => [
    order.orderId,
    names.customer(order.orderId),
    names.part(order.orderId),
    names.order(order.orderId)?.quantity ?? null,
    order.dueAt,
    order.finishedAt,
    order.lateMin,
    order.lateCost,
    order.cost,
    boughtOut.get(order.orderId) ?? 0,
    unplanned.get(order.orderId)?.copies ?? 0,
    sentencesOf(order),
  ]);
  return [head, ...rows];
}

/** Every cost line. The amounts are rounded so that they add up to the plan's total; the inputs are given in full. */
function costRows(plan: PlanDocument): Cell[][] {
  const head = [
    "kind",
    `amount_${plan.currency}`,
    "order",
    "machine",
    "feedstock",
    "build",
    "formula",
    "inputs",
  ];
  const rows = shownCostLines(plan).map(({ line, shown }): Cell[] => [
    line.kind,
    shown,
    line.orderId,
    line.machineId ?? "",
    line.feedstockId ?? "",
    line.buildId ?? "",
    line.formula,
    line.inputs.map((input) => `${input.name} = ${input.value} ${input.unit}`.trim()).join("; "),
  ]);
  return [head, ...rows];
}

function taskRows(shop: Shop, plan: PlanDocument): Cell[][] {
  const names = namesOf(shop);
  const rows = inTimeOrder(plan.tasks, (task) => task.at, plan.timeZone).map((task): Cell[] => [
    task.at,
    task.endAt,
    task.kind,
    task.machineId ?? "",
    task.machineId ? names.machine(task.machineId) : "",
    [task.buildId, ...(task.alsoFor ?? [])].join(" "),
    task.text,
  ]);
  return [["start", "end", "kind", "machine", "machine_name", "build", "what_to_do"], ...rows];
}

function feedstockRows(shop: Shop, plan: PlanDocument): Cell[][] {
  const names = namesOf(shop);
  const head = [
    "feedstock",
    "name",
    "family",
    "form",
    "need_kg",
    "stock_kg",
    "buy_kg",
    "packs",
    "pack_kg",
    `price_per_kg_${plan.currency}`,
    "order_by",
    "note",
  ];
  const rows = plan.feedstockNeeds.map((need): Cell[] => {
    const grade = names.grade(need.feedstockId);
    return [
      need.feedstockId,
      names.feedstock(need.feedstockId),
      grade?.family ?? "",
      grade?.form ?? "",
      need.needKg,
      need.stockKg,
      need.buyKg,
      need.packs,
      grade?.packKg ?? null,
      grade?.pricePerKg ?? null,
      need.orderBy,
      need.note,
    ];
  });
  return [head, ...rows];
}

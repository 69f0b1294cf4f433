import { type Accessor, createMemo } from "solid-js";
import { isInstant, minuteOf } from "../../../core/shop/instants.ts";
import type { Order } from "../../../core/shop/order.ts";
import type { CellChoice, GridColumn, Unfit } from "../../components/grid/grid-column.ts";
import type { Format } from "../../format/format.ts";
import { useStores } from "../../store/stores.ts";
import { type OrderField, NO_PART, orderReadingOf, putOrderField } from "./order-fields.ts";
import { NOT_PLANNED, type Outcome, outcomeWords } from "./order-outcomes.ts";

interface Named {
  readonly id: string;
  readonly name: string;
}

/** What the columns are made with. */
interface Tools {
  readonly format: Accessor<Format>;
  readonly put: (field: OrderField) => (order: Order, text: string) => Order | Unfit;
}

/** The columns of the orders, in the order in which a planner reads them. */
export function createOrderColumns(outcomes: Accessor<ReadonlyMap<string, Outcome>>): GridColumn<Order>[] {
  const { shop, format } = useStores();
  const parts = createMemo(() => shop.shop().parts);
  const machines = createMemo(() => shop.shop().machines);
  const feedstocks = createMemo(() => shop.shop().feedstocks);
  // An edit of an order leaves these lists as they are, so that nothing is made anew.
  const reading = createMemo(() =>
    orderReadingOf({ parts: parts(), machines: machines(), feedstocks: feedstocks() }, format()),
  );
  const tools: Tools = {
    format,
    put: (field) => (order, text) => putOrderField(order, field, text, reading()),
  };
  const { put } = tools;
  return [
    { id: "id", title: "Order", widthPx: 92, isSticky: true, text: ({ id }) => id, put: put("id") },
    stateColumn(outcomes, format),
    partColumn(parts, tools),
    copiesColumn(tools),
    dateColumn("due", "Due", ({ dueAt }) => dueAt, tools),
    plainColumn("customer", "Customer", ({ customer }) => customer, tools),
    dateColumn("release", "Not before", ({ releaseAt }) => releaseAt, tools),
    amountColumn("lateCost", "Late, a day", ({ lateCostPerDay }) => lateCostPerDay, tools),
    amountColumn("price", "Price, each", ({ pricePerPiece }) => pricePerPiece, tools),
    ...promiseColumns(tools),
    ...pinColumns(machines, feedstocks, tools),
    plainColumn("note", "Note", ({ note }) => note, tools),
  ];
}

function stateColumn(
  outcomes: Accessor<ReadonlyMap<string, Outcome>>,
  format: Accessor<Format>,
): GridColumn<Order> {
  const outcomeOf = (order: Order): Outcome => outcomes().get(order.id) ?? NOT_PLANNED;
  const words = (order: Order): string => outcomeWords(outcomeOf(order), format().duration);
  return {
    id: "state",
    title: "In the plan",
    widthPx: 172,
    text: words,
    draw: (order) => <span class={TONES[outcomeOf(order).kind]}>{words(order)}</span>,
    amount: (order) => (outcomeOf(order).kind === "not-planned" ? null : rankOf(outcomeOf(order))),
  };
}

function partColumn(parts: Accessor<readonly Named[]>, { put }: Tools): GridColumn<Order> {
  const names = createMemo(() => new Map(parts().map(({ id, name }) => [id, name])));
  const choices = createMemo(() => choicesOf(parts()));
  return {
    id: "part",
    title: "Part",
    widthPx: 190,
    text: ({ partId }) => (partId === NO_PART ? "" : (names().get(partId) ?? partId)),
    editText: ({ partId }) => (partId === NO_PART ? "" : partId),
    put: put("part"),
    choices,
  };
}

function copiesColumn({ format, put }: Tools): GridColumn<Order> {
  return {
    id: "quantity",
    title: "Copies",
    widthPx: 78,
    align: "end",
    text: ({ quantity }) => format().number(quantity, 0),
    editText: ({ quantity }) => format().edited(quantity),
    put: put("quantity"),
    amount: ({ quantity }) => quantity,
    isSummed: true,
  };
}

function plainColumn(
  id: "customer" | "note",
  title: string,
  text: (order: Order) => string,
  { put }: Tools,
): GridColumn<Order> {
  return { id, title, widthPx: 200, text, put: put(id) };
}

function dateColumn(
  id: "due" | "release",
  title: string,
  of: (order: Order) => string,
  { format, put }: Tools,
): GridColumn<Order> {
  return {
    id,
    title,
    widthPx: 148,
    text: (order) => format().dateTime(of(order)),
    editText: (order) => format().editedDateTime(of(order)),
    put: put(id),
    amount: (order) => (isInstant(of(order)) ? minuteOf(of(order), format().timeZone) : null),
  };
}

function amountColumn(
  id: "lateCost" | "price",
  title: string,
  of: (order: Order) => number | undefined,
  { format, put }: Tools,
): GridColumn<Order> {
  const written = (order: Order, words: (amount: number) => string): string => {
    const amount = of(order);
    return amount === undefined ? "" : words(amount);
  };
  return {
    id,
    title,
    unit: () => format().currency,
    widthPx: 112,
    align: "end",
    text: (order) => written(order, format().amount),
    editText: (order) => written(order, format().edited),
    put: put(id),
    amount: (order) => of(order) ?? null,
    isSummed: true,
  };
}

function promiseColumns({ put }: Tools): GridColumn<Order>[] {
  return [
    {
      id: "allowLate",
      title: "May be late",
      widthPx: 92,
      text: ({ allowLate }) => (allowLate ? "yes" : "no"),
      put: put("allowLate"),
      choices: () => YES_NO,
    },
    {
      id: "perPiece",
      title: "Counts when done",
      widthPx: 116,
      text: ({ perPiece }) => (perPiece ? "each copy" : "all copies"),
      put: put("perPiece"),
      choices: () => EACH_ALL,
    },
  ];
}

function pinColumns(
  machines: Accessor<readonly Named[]>,
  feedstocks: Accessor<readonly Named[]>,
  { put }: Tools,
): GridColumn<Order>[] {
  return [
    {
      id: "machine",
      title: "Only on",
      widthPx: 96,
      text: ({ pinned }) => pinned?.machineId ?? "",
      put: put("machine"),
      choices: createMemo(() => [ANY, ...choicesOf(machines())]),
    },
    {
      id: "feedstock",
      title: "Only of",
      widthPx: 140,
      text: ({ pinned }) => pinned?.feedstockId ?? "",
      put: put("feedstock"),
      choices: createMemo(() => [ANY, ...choicesOf(feedstocks())]),
    },
  ];
}

function choicesOf(entries: readonly Named[]): CellChoice[] {
  return entries.map(({ id, name }) => ({ value: id, label: name }));
}

const ANY: CellChoice = { value: "", label: "any" };
const YES_NO: readonly CellChoice[] = [
  { value: "yes", label: "late only costs" },
  { value: "no", label: "a promise that must hold" },
];
const EACH_ALL: readonly CellChoice[] = [
  { value: "all copies", label: "the line counts when all are done" },
  { value: "each copy", label: "each copy counts when it is done" },
];

const TONES: Readonly<Record<Outcome["kind"], string>> = {
  late: "bad",
  "no-place": "bad",
  "bought-out": "",
  "in-time": "",
  "nothing-to-do": "quiet",
  "not-planned": "quiet",
};

/** Worst first when sorted upwards: no place, then the latest, then by what is left. */
function rankOf(outcome: Outcome): number {
  return outcome.kind === "no-place" ? -1e9 : outcome.marginMin;
}

const COLUMN_OF_FIELD: Readonly<Record<string, string>> = {
  partId: "part",
  quantity: "quantity",
  dueAt: "due",
  releaseAt: "release",
  customer: "customer",
  lateCostPerDay: "lateCost",
  pricePerPiece: "price",
  note: "note",
  "pinned/feedstockId": "feedstock",
};

/** Column of the grid in which a finding about a field is shown; what is about the whole line stands at its name. */
export function orderColumnOf(field: string): string {
  const [first = ""] = field.split("/");
  return COLUMN_OF_FIELD[field] ?? COLUMN_OF_FIELD[first] ?? (first === "pinned" ? "machine" : "id");
}

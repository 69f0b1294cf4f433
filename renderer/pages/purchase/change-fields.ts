import { createMemo } from "solid-js";
import type { PurchaseChange } from "../../../core/shop/purchase-change.ts";
import { clockColumn } from "../../components/entry/time-columns.ts";
import { type ValueColumn, valueColumns } from "../../components/entry/value-columns.ts";
import type { CellChoice } from "../../components/grid/grid-column.ts";
import { useStores } from "../../store/stores.ts";

export type ChangeOf<Kind extends PurchaseChange["kind"]> = Extract<PurchaseChange, { kind: Kind }>;
export type AddShift = ChangeOf<"add-shift">;

type Columns<Kind extends PurchaseChange["kind"]> = readonly ValueColumn<ChangeOf<Kind>>[];

/** Fields of each kind of change but for a new machine, which has many. */
interface ChangeFields {
  readonly alike: Columns<"add-alike">;
  readonly sell: Columns<"sell-machine">;
  readonly shift: Columns<"add-shift">;
  readonly approve: Columns<"approve-unattended">;
  readonly buyOut: Columns<"buy-out">;
}

interface Choices {
  readonly machines: () => readonly CellChoice[];
  readonly calendars: () => readonly CellChoice[];
  readonly parts: () => readonly CellChoice[];
}

const SAME_CALENDAR = "";
const MOST_PREMIUM_PCT = 1000;
const MOST_ID_CHARS = 64;

export function createChangeFields(): ChangeFields {
  const { shop } = useStores();
  const choices: Choices = {
    machines: createMemo(() => shop.shop().machines.map(choiceOf)),
    calendars: createMemo(() => shop.shop().calendars.map(choiceOf)),
    parts: createMemo(() => shop.shop().parts.map(choiceOf)),
  };
  return {
    alike: alikeFields(choices),
    sell: sellFields(choices),
    shift: shiftFields(choices),
    approve: approveFields(choices),
    buyOut: buyOutFields(choices),
  };
}

function choiceOf({ id, name }: { readonly id: string; readonly name: string }): CellChoice {
  return { value: id, label: `${id} · ${name}` };
}

function alikeFields({ machines, calendars }: Choices): Columns<"add-alike"> {
  const make = valueColumns<ChangeOf<"add-alike">>(useStores().format);
  return [
    make.choice({
      id: "alike",
      title: "Like",
      choices: machines,
      get: (row) => row.alike,
      set: (row, alike) => ({ ...row, alike }),
    }),
    make.text({
      id: "id",
      title: "Its id",
      mostChars: MOST_ID_CHARS,
      get: (row) => row.id,
      set: (row, id) => ({ ...row, id }),
    }),
    make.text({
      id: "name",
      title: "Its name",
      get: (row) => row.name,
      set: (row, name) => ({ ...row, name }),
    }),
    make.choice({
      id: "calendarId",
      title: "Served by",
      choices: () => [{ value: SAME_CALENDAR, label: "as the other" }, ...calendars()],
      get: (row) => row.calendarId ?? SAME_CALENDAR,
      set: (row, value) => {
        const { calendarId: _, ...others } = row;
        return value === SAME_CALENDAR ? others : { ...others, calendarId: value };
      },
    }),
  ];
}

function sellFields({ machines }: Choices): Columns<"sell-machine"> {
  const { format } = useStores();
  const make = valueColumns<ChangeOf<"sell-machine">>(format);
  return [
    make.choice({
      id: "machineId",
      title: "Machine",
      choices: machines,
      get: (row) => row.machineId,
      set: (row, machineId) => ({ ...row, machineId }),
    }),
    make.money({
      id: "proceeds",
      title: "It brings today",
      get: (row) => row.proceeds,
      set: (row, proceeds) => ({ ...row, proceeds }),
    }),
    make.money({
      id: "bookValue",
      title: "In the books, for tax",
      unit: () => `${format().currency}, empty: the same`,
      get: (row) => row.bookValue,
      set: (row, bookValue) => ({ ...row, bookValue }),
      clear: ({ bookValue: _, ...row }) => row,
    }),
    make.money({
      id: "laterValue",
      title: "It would have brought at the end",
      unit: () => `${format().currency}, empty: 0`,
      get: (row) => row.laterValue,
      set: (row, laterValue) => ({ ...row, laterValue }),
      clear: ({ laterValue: _, ...row }) => row,
    }),
  ];
}

function shiftFields({ calendars }: Choices): Columns<"add-shift"> {
  const make = valueColumns<AddShift>(useStores().format);
  return [
    make.choice({
      id: "calendarId",
      title: "Calendar",
      choices: calendars,
      get: (row) => row.calendarId,
      set: (row, calendarId) => ({ ...row, calendarId }),
    }),
    make.number({
      id: "operators",
      title: "Operators",
      isWhole: true,
      get: (row) => row.shift.operators,
      set: (row, operators) => ({ ...row, shift: { ...row.shift, operators } }),
    }),
    clockColumn<AddShift>({
      id: "start",
      title: "Starts",
      get: (row) => row.shift.start,
      set: (row, start) => ({ ...row, shift: { ...row.shift, start } }),
    }),
    clockColumn<AddShift>({
      id: "end",
      title: "Ends",
      get: (row) => row.shift.end,
      set: (row, end) => ({ ...row, shift: { ...row.shift, end } }),
    }),
    make.number({
      id: "premiumPct",
      title: "Premium on wages",
      unit: "%",
      most: MOST_PREMIUM_PCT,
      get: (row) => row.premiumPct,
      set: (row, premiumPct) => ({ ...row, premiumPct }),
    }),
    make.number({
      id: "otherWorkPct",
      title: "Time of other use",
      unit: "% of it paid anyway",
      most: 100,
      get: (row) => row.otherWorkPct,
      set: (row, otherWorkPct) => ({ ...row, otherWorkPct }),
    }),
  ];
}

function approveFields({ machines }: Choices): Columns<"approve-unattended"> {
  const make = valueColumns<ChangeOf<"approve-unattended">>(useStores().format);
  return [
    make.choice({
      id: "machineId",
      title: "Machine",
      choices: machines,
      get: (row) => row.machineId,
      set: (row, machineId) => ({ ...row, machineId }),
    }),
    make.number({
      id: "mostH",
      title: "Longest stretch alone",
      unit: "h, empty: any",
      above: 0,
      get: (row) => row.mostH,
      set: (row, mostH) => ({ ...row, mostH }),
      clear: ({ mostH: _, ...row }) => row,
    }),
  ];
}

function buyOutFields({ parts }: Choices): Columns<"buy-out"> {
  const make = valueColumns<ChangeOf<"buy-out">>(useStores().format);
  return [
    make.choice({
      id: "partId",
      title: "Part",
      choices: parts,
      get: (row) => row.partId,
      set: (row, partId) => ({ ...row, partId }),
    }),
    make.money({
      id: "pricePerPiece",
      title: "Price of one",
      get: (row) => row.pricePerPiece,
      set: (row, pricePerPiece) => ({ ...row, pricePerPiece }),
    }),
    make.number({
      id: "leadTimeDays",
      title: "From order to delivery",
      unit: "days",
      get: (row) => row.leadTimeDays,
      set: (row, leadTimeDays) => ({ ...row, leadTimeDays }),
    }),
  ];
}

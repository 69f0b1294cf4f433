import type { Accessor } from "solid-js";
import { MM_PER_IN } from "../../../core/units/conversions.ts";
import type { Format } from "../../format/format.ts";
import { perKgFromShown, perShownMass } from "../../format/per-mass.ts";
import type { CellChoice, GridColumn, Unfit } from "../grid/grid-column.ts";

/** A column that can stand in a grid and, as a labelled field, in a panel. */
export interface ValueColumn<Row> extends GridColumn<Row> {
  readonly kind: "text" | "choice" | "tick";
  readonly put: (row: Row, text: string) => Row | Unfit;
}

/** Fields of an entry under one title. */
export interface ColumnGroup<Row> {
  readonly title: string;
  readonly columns: readonly ValueColumn<Row>[];
}

interface Named {
  readonly id: string;
  readonly title: string;
  readonly widthPx?: number;
}

interface NumberOptions<Row> extends Named {
  readonly get: (row: Row) => number | null | undefined;
  readonly set: (row: Row, value: number) => Row;
  /** for an empty text; absent: a number must be there */
  readonly clear?: (row: Row) => Row;
  /** what the number counts in */
  readonly unit?: string | (() => string);
  /** the number must be above this one */
  readonly above?: number;
  /** the number must be at least this one; 0 where nothing is said */
  readonly least?: number;
  readonly most?: number;
  readonly isWhole?: boolean;
}

interface ChoiceOptions<Row> extends Named {
  readonly get: (row: Row) => string;
  readonly set: (row: Row, value: string) => Row;
  readonly choices: () => readonly CellChoice[];
}

interface TextOptions<Row> extends Named {
  readonly get: (row: Row) => string;
  readonly set: (row: Row, text: string) => Row;
  readonly isOptional?: boolean;
  readonly mostChars?: number;
  readonly isSticky?: boolean;
}

interface TickOptions<Row> extends Named {
  readonly get: (row: Row) => boolean;
  readonly set: (row: Row, value: boolean) => Row;
}

/** How a number of one kind is written, edited and read. */
interface Writing {
  readonly show: (value: number) => string;
  readonly edit: (value: number) => string;
  readonly read: (text: string) => number | null;
  readonly unit: () => string;
}

/** Makes columns whose values are written and read as everywhere on the screen. */
export interface ValueColumns<Row> {
  readonly text: (options: TextOptions<Row>) => ValueColumn<Row>;
  readonly number: (options: NumberOptions<Row>) => ValueColumn<Row>;
  readonly length: (options: NumberOptions<Row>) => ValueColumn<Row>;
  readonly mass: (options: NumberOptions<Row>) => ValueColumn<Row>;
  /** mm² or in² */
  readonly area: (options: NumberOptions<Row>) => ValueColumn<Row>;
  /** mm³ or in³ */
  readonly volume: (options: NumberOptions<Row>) => ValueColumn<Row>;
  /** cm³ or in³ per h */
  readonly flow: (options: NumberOptions<Row>) => ValueColumn<Row>;
  /** an amount of the shop's currency; `unit` says per what */
  readonly money: (options: NumberOptions<Row>) => ValueColumn<Row>;
  readonly perMass: (options: NumberOptions<Row>) => ValueColumn<Row>;
  readonly choice: (options: ChoiceOptions<Row>) => ValueColumn<Row>;
  readonly tick: (options: TickOptions<Row>) => ValueColumn<Row>;
}

const MOST_DECIMALS = 4;
const MM_PER_CM = 10;

export function valueColumns<Row>(format: Accessor<Format>): ValueColumns<Row> {
  const plain: Writing = {
    show: (value) => format().number(value, MOST_DECIMALS),
    edit: (value) => format().edited(value),
    read: (text) => format().readNumber(text),
    unit: () => "",
  };
  const length: Writing = {
    show: (value) => format().lengthNumber(value),
    edit: (value) => format().editedLength(value),
    read: (text) => format().readLengthMm(text),
    unit: () => format().length,
  };
  const mass: Writing = {
    show: (value) => format().massNumber(value),
    edit: (value) => format().editedMass(value),
    read: (text) => format().readMassKg(text),
    unit: () => format().mass,
  };
  const money: Writing = {
    ...plain,
    show: (value) => format().amount(value),
    unit: () => format().currency,
  };
  const perMass: Writing = {
    show: (value) => format().amount(perShownMass(value, format())),
    edit: (value) => format().edited(perShownMass(value, format())),
    read: (text) => {
      const value = format().readNumber(text);
      return value === null ? null : perKgFromShown(value, format());
    },
    unit: () => `${format().currency} per ${format().mass}`,
  };
  const of =
    (writing: Writing) =>
    (options: NumberOptions<Row>): ValueColumn<Row> =>
      numberColumn(options, writing);
  return {
    text: textColumn,
    number: of(plain),
    length: of(length),
    mass: of(mass),
    area: of(scaled(format, "mm²", "in²", MM_PER_IN ** 2)),
    volume: of(scaled(format, "mm³", "in³", MM_PER_IN ** 3)),
    flow: of(scaled(format, "cm³/h", "in³/h", (MM_PER_IN / MM_PER_CM) ** 3)),
    money: of(money),
    perMass: of(perMass),
    choice: choiceColumn,
    tick: tickColumn,
  };
}

/** A number that is kept in metric units and shown in others with inches. */
function scaled(format: Accessor<Format>, metric: string, inch: string, perInch: number): Writing {
  const scale = (): number => (format().length === "mm" ? 1 : perInch);
  return {
    show: (value) => format().number(value / scale(), MOST_DECIMALS),
    edit: (value) => format().edited(value / scale()),
    read: (text) => {
      const value = format().readNumber(text);
      return value === null ? null : value * scale();
    },
    unit: () => (format().length === "mm" ? metric : inch),
  };
}

function numberColumn<Row>(options: NumberOptions<Row>, writing: Writing): ValueColumn<Row> {
  const { id, title, widthPx = 84, get, unit } = options;
  const write = (row: Row, as: (value: number) => string): string => {
    const value = get(row);
    return value === null || value === undefined ? "" : as(value);
  };
  return {
    id,
    title,
    widthPx,
    align: "end",
    kind: "text",
    unit: () => (typeof unit === "function" ? unit() : (unit ?? writing.unit())),
    text: (row) => write(row, writing.show),
    editText: (row) => write(row, writing.edit),
    amount: (row) => get(row) ?? null,
    put: (row, text) => putNumber(options, writing, row, text.trim()),
  };
}

function putNumber<Row>(
  { title, set, clear, above, least = 0, most, isWhole }: NumberOptions<Row>,
  { read, show }: Writing,
  row: Row,
  text: string,
): Row | Unfit {
  if (text === "" && clear) return clear(row);
  const value = read(text);
  if (value === null) return { unfit: `${title}: write a number${clear ? ", or nothing" : ""}.` };
  if (above !== undefined && value <= above)
    return { unfit: `${title}: write a number above ${show(above)}.` };
  if (above === undefined && value < least)
    return { unfit: `${title}: write a number from ${show(least)} on.` };
  if (most !== undefined && value > most) return { unfit: `${title}: write a number up to ${show(most)}.` };
  if (isWhole && !Number.isSafeInteger(value)) return { unfit: `${title}: write a whole number.` };
  return set(row, value);
}

const MOST_NAME_CHARS = 10_000;

function textColumn<Row>(options: TextOptions<Row>): ValueColumn<Row> {
  const { id, title, widthPx = 140, get, set, isOptional, mostChars = MOST_NAME_CHARS, isSticky } = options;
  return {
    id,
    title,
    widthPx,
    kind: "text",
    ...(isSticky ? { isSticky } : {}),
    text: get,
    put: (row, text) => {
      const value = text.trim();
      if (value === "" && !isOptional) return { unfit: `${title}: write at least one character.` };
      if (value.length > mostChars) return { unfit: `${title}: write at most ${mostChars} characters.` };
      return set(row, value);
    },
  };
}

function choiceColumn<Row>(options: ChoiceOptions<Row>): ValueColumn<Row> {
  const { id, title, widthPx = 120, get, set, choices } = options;
  const find = (text: string): CellChoice | undefined =>
    choices().find(({ value }) => value === text) ??
    choices().find(
      ({ value, label }) =>
        value.toLowerCase() === text.toLowerCase() || label.toLowerCase() === text.toLowerCase(),
    );
  return {
    id,
    title,
    widthPx,
    kind: "choice",
    choices,
    text: (row) => find(get(row))?.label ?? get(row),
    editText: get,
    put: (row, text) => {
      const chosen = find(text.trim());
      if (chosen) return set(row, chosen.value);
      const some = choices()
        .slice(0, 6)
        .map(({ value }) => value);
      return { unfit: `${title}: choose one that exists${some.length > 0 ? `: ${some.join(", ")}` : ""}.` };
    },
  };
}

const YES_NO: readonly CellChoice[] = [
  { value: "yes", label: "yes" },
  { value: "no", label: "no" },
];

function tickColumn<Row>({ id, title, widthPx = 84, get, set }: TickOptions<Row>): ValueColumn<Row> {
  return {
    ...choiceColumn<Row>({
      id,
      title,
      widthPx,
      choices: () => YES_NO,
      get: (row) => (get(row) ? "yes" : "no"),
      set: (row, value) => set(row, value === "yes"),
    }),
    kind: "tick",
  };
}

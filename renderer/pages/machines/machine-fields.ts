import type { Machine } from "../../../core/shop/machine.ts";
import { COLDEST_C, nameColumns } from "../../components/entry/shared-columns.ts";
import type { ValueColumn, ValueColumns } from "../../components/entry/value-columns.ts";
import type { CellChoice } from "../../components/grid/grid-column.ts";

type Make = ValueColumns<Machine>;
type Fields<Name extends string> = Readonly<Record<Name, ValueColumn<Machine>>>;

const PROCESSES: readonly CellChoice[] = [
  { value: "filament", label: "filament" },
  { value: "pellet", label: "pellet" },
];

/** What a machine is: names, process, who serves it. */
export function identityFields(
  make: Make,
  calendars: () => readonly CellChoice[],
): Fields<"id" | "name" | "process" | "calendar" | "hardened" | "mixed"> {
  return {
    ...nameColumns(make, { title: "Machine", idPx: 92, namePx: 130 }),
    process: make.choice({
      id: "process",
      title: "Runs on",
      widthPx: 90,
      choices: () => PROCESSES,
      get: (row) => row.process,
      set: (row, value) => ({ ...row, process: value === "pellet" ? "pellet" : "filament" }),
    }),
    calendar: make.choice({
      id: "calendarId",
      title: "Served by",
      widthPx: 150,
      choices: calendars,
      get: (row) => row.calendarId,
      set: (row, value) => ({ ...row, calendarId: value }),
    }),
    hardened: make.tick({
      id: "hardened",
      title: "Takes abrasives",
      get: (row) => row.hardened,
      set: (row, value) => ({ ...row, hardened: value }),
    }),
    mixed: make.tick({
      id: "mixedPlatform",
      title: "Orders share a build",
      get: (row) => row.mixedPlatform,
      set: (row, value) => ({ ...row, mixedPlatform: value }),
    }),
  };
}

/** The room in which it builds. */
export function roomFields(make: Make): Fields<"x" | "y" | "z" | "edge" | "gap"> {
  const side = (axis: "x" | "y" | "z", title: string): ValueColumn<Machine> =>
    make.length({
      id: `envelopeMm/${axis}`,
      title,
      above: 0,
      get: (row) => row.envelopeMm[axis],
      set: (row, value) => ({ ...row, envelopeMm: { ...row.envelopeMm, [axis]: value } }),
    });
  return {
    x: side("x", "Across"),
    y: side("y", "Deep"),
    z: side("z", "High"),
    edge: length(make, "edgeMarginMm", "Free edge"),
    gap: length(make, "partGapMm", "Gap between parts"),
  };
}

export function heatFields(make: Make): Fields<"nozzle" | "platform" | "chamber"> {
  return {
    nozzle: number(make, "maxNozzleC", "Hottest nozzle", "°C", 0),
    platform: number(make, "maxPlatformC", "Hottest platform", "°C"),
    chamber: make.number({
      id: "chamberC",
      title: "Air round the part",
      unit: "°C",
      least: COLDEST_C,
      get: (row) => row.chamberC,
      set: (row, value) => ({ ...row, chamberC: value }),
    }),
  };
}

/** Times of a build and of what is changed before it. */
export function timeFields(make: Make): Fields<"setUp" | "unload"> & {
  readonly others: readonly ValueColumn<Machine>[];
} {
  const change = (field: "sameFamilyMin" | "newFamilyMin" | "nozzleMin", title: string) =>
    make.number({
      id: `changeover/${field}`,
      title,
      unit: "min",
      get: (row) => row.changeover[field],
      set: (row, value) => ({ ...row, changeover: { ...row.changeover, [field]: value } }),
    });
  return {
    setUp: number(make, "setUpMin", "Set-up", "min"),
    unload: number(make, "unloadMin", "Unloading", "min"),
    others: [
      number(make, "warmUpMin", "Warming up", "min"),
      number(make, "coolDownMin", "Cooling down", "min"),
      change("sameFamilyMin", "Other grade, same family"),
      change("newFamilyMin", "Other family"),
      change("nozzleMin", "Other nozzle"),
      make.mass({
        id: "changeover/purgeKg",
        title: "Purged at a change",
        get: (row) => row.changeover.purgeKg,
        set: (row, value) => ({ ...row, changeover: { ...row.changeover, purgeKg: value } }),
      }),
    ],
  };
}

/** How fast it is and what it loses; `lengthUnit` is the one shown. */
export function paceFields(make: Make, lengthUnit: () => string): readonly ValueColumn<Machine>[] {
  return [
    length(make, "maxSpeedMmPerS", "Fastest", { unit: () => `${lengthUnit()}/s`, above: 0 }),
    length(make, "accelerationMmPerS2", "Acceleration", { unit: () => `${lengthUnit()}/s²`, above: 0 }),
    length(make, "cornerDeviationMm", "Cuts corners by", { above: 0 }),
    number(make, "layerChangeS", "Lost at each layer", "s"),
    number(make, "travelS", "Lost at each island", "s"),
    number(make, "startPurgeG", "Lost at each start", "g"),
    make.number({
      id: "maxWaitPerLayerS",
      title: "Longest pause in a layer",
      unit: "s, empty: any",
      get: (row) => row.maxWaitPerLayerS,
      set: (row, value) => ({ ...row, maxWaitPerLayerS: value }),
      clear: ({ maxWaitPerLayerS: _, ...row }) => row,
    }),
    number(make, "failuresPer1000H", "Fail in 1000 h", "builds"),
    number(make, "timeFactor", "Real over estimated time", "", 0),
  ];
}

function number(make: Make, field: NumberField, title: string, unit: string, above?: number) {
  return make.number({
    id: field,
    title,
    unit,
    ...(above === undefined ? {} : { above }),
    get: (row) => row[field],
    set: (row, value) => ({ ...row, [field]: value }),
  });
}

function length(
  make: Make,
  field: NumberField,
  title: string,
  more: { readonly unit?: () => string; readonly above?: number } = {},
) {
  return make.length({
    id: field,
    title,
    ...more,
    get: (row) => row[field],
    set: (row, value) => ({ ...row, [field]: value }),
  });
}

type NumberField =
  | "edgeMarginMm"
  | "partGapMm"
  | "maxNozzleC"
  | "maxPlatformC"
  | "maxSpeedMmPerS"
  | "accelerationMmPerS2"
  | "cornerDeviationMm"
  | "layerChangeS"
  | "travelS"
  | "startPurgeG"
  | "warmUpMin"
  | "coolDownMin"
  | "setUpMin"
  | "unloadMin"
  | "failuresPer1000H"
  | "timeFactor";

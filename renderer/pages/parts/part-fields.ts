import type { Measures, Part, PartNeeds } from "../../../core/shop/part.ts";
import { COLDEST_C, flameColumn } from "../../components/entry/shared-columns.ts";
import type { ValueColumn, ValueColumns } from "../../components/entry/value-columns.ts";
import type { CellChoice } from "../../components/grid/grid-column.ts";

type Make = ValueColumns<Part>;
type Column = ValueColumn<Part>;
type Fields<Name extends string> = Readonly<Record<Name, Column>>;

const NONE = "";
const AXES: readonly CellChoice[] = [
  { value: NONE, label: "not named" },
  ...["x", "y", "z"].map((axis) => ({ value: axis, label: `along ${axis}` })),
];
/** Offered with the first price of having it made elsewhere. */
const USUAL_DELIVERY_DAYS = 10;

/** Families that the customer accepts; none named: any that meets the needs. */
export function familiesField(make: Make): Column {
  return make.text({
    id: "families",
    title: "Families accepted",
    widthPx: 130,
    isOptional: true,
    get: (row) => row.families.join(", "),
    set: (row, text) => ({ ...row, families: wordsOf(text) }),
  });
}

/** What the material must bear. */
export function needFields(make: Make): readonly Column[] {
  const need = (field: Exclude<keyof PartNeeds, "flameClass">, title: string, unit: string): Column =>
    make.number({
      id: `needs/${field}`,
      title,
      unit: `${unit}, or empty`,
      ...(field === "heatDeflectionC" ? { least: COLDEST_C } : { above: 0 }),
      get: (row) => row.needs[field],
      set: (row, value) => ({ ...row, needs: { ...row.needs, [field]: value } }),
      clear: (row) => {
        const { [field]: _, ...needs } = row.needs;
        return { ...row, needs };
      },
    });
  return [
    need("heatDeflectionC", "Heat", "°C"),
    need("tensileModulusMPa", "Stiffness", "MPa"),
    need("tensileStrengthMPa", "Strength", "MPa"),
    need("acrossLayersMPa", "Across layers", "MPa"),
    flameColumn(make, {
      id: "needs/flameClass",
      get: (row) => row.needs,
      set: (row, needs) => ({ ...row, needs }),
    }),
    loadField(make),
  ];
}

/** Detail, layers, walls and filling. */
export function wallFields(make: Make): Fields<"feature" | "layer" | "shells" | "solid" | "infill"> {
  const length = (field: "smallestFeatureMm" | "maxLayerHeightMm", title: string): Column =>
    make.length({
      id: field,
      title,
      above: 0,
      get: (row) => row[field],
      set: (row, value) => ({ ...row, [field]: value }),
    });
  const whole = (field: "shells" | "solidLayers", title: string, least: number): Column =>
    make.number({
      id: field,
      title,
      least,
      isWhole: true,
      get: (row) => row[field],
      set: (row, value) => ({ ...row, [field]: value }),
    });
  return {
    feature: length("smallestFeatureMm", "Smallest detail"),
    layer: length("maxLayerHeightMm", "Thickest layer"),
    shells: whole("shells", "Walls", 1),
    solid: whole("solidLayers", "Solid layers", 0),
    infill: make.number({
      id: "infillPct",
      title: "Filling",
      unit: "%",
      most: 100,
      get: (row) => row.infillPct,
      set: (row, value) => ({ ...row, infillPct: value }),
    }),
  };
}

/** How it may stand, and for which processes its tool paths are there. */
export function buildFields(make: Make): readonly Column[] {
  const toolPaths = (process: "filament" | "pellet", title: string): Column =>
    make.tick({
      id: `toolPathsReady/${process}`,
      title,
      get: (row) => row.toolPathsReady.includes(process),
      set: (row, isOn) => {
        const others = row.toolPathsReady.filter((one) => one !== process);
        return { ...row, toolPathsReady: isOn ? [...others, process] : others };
      },
    });
  return [
    make.text({
      id: "orientations",
      title: "Sides up, empty: any",
      isOptional: true,
      get: (row) => row.orientations?.join(", ") ?? "",
      set: (row, text) => {
        const { orientations: _, ...rest } = row;
        const named = wordsOf(text);
        return named.length > 0 ? { ...rest, orientations: named } : rest;
      },
    }),
    make.tick({
      id: "supportAllowed",
      title: "May be supported",
      get: (row) => row.supportAllowed,
      set: (row, supportAllowed) => ({ ...row, supportAllowed }),
    }),
    toolPaths("filament", "Tool paths, filament"),
    toolPaths("pellet", "Tool paths, pellets"),
  ];
}

/** Work on each copy after the build; `currency` is the one shown. */
export function finishingFields(make: Make, currency: () => string): readonly Column[] {
  return [
    make.number({ ...finishing("labourMin", "By hand"), unit: "min" }),
    make.number({ ...finishing("machiningMin", "Machining"), unit: "min" }),
    make.money({ ...finishing("machiningPerH", "Machining costs"), unit: () => `${currency()} per h` }),
    make.length(finishing("allowanceMm", "Left for it")),
  ];
}

function finishing(field: keyof Part["finishing"], title: string) {
  return {
    id: `finishing/${field}`,
    title,
    get: (row: Part) => row.finishing[field],
    set: (row: Part, value: number) => ({ ...row, finishing: { ...row.finishing, [field]: value } }),
  };
}

/** Having it made elsewhere. */
export function buyOutFields(make: Make): readonly Column[] {
  return [
    make.money({
      id: "buyOut/pricePerPiece",
      title: "Each, empty: not",
      get: (row) => row.buyOut?.pricePerPiece,
      set: (row, value) => ({
        ...row,
        buyOut: { leadTimeDays: row.buyOut?.leadTimeDays ?? USUAL_DELIVERY_DAYS, pricePerPiece: value },
      }),
      clear: ({ buyOut: _, ...row }) => row,
    }),
    make.number({
      id: "buyOut/leadTimeDays",
      title: "Delivery",
      unit: "days",
      get: (row) => row.buyOut?.leadTimeDays,
      set: (row, value) => (row.buyOut ? { ...row, buyOut: { ...row.buyOut, leadTimeDays: value } } : row),
      clear: (row) => row,
    }),
  ];
}

/** Measures of a part without a mesh, given by hand. */
export function measureFields(make: Make): readonly Column[] {
  const side = (axis: "x" | "y" | "z", title: string): Column =>
    make.length({
      id: `geometry/measures/boxMm/${axis}`,
      title,
      above: 0,
      get: (row) => row.geometry.measures.boxMm[axis],
      set: (row, value) => withMeasures(row, { boxMm: { ...row.geometry.measures.boxMm, [axis]: value } }),
    });
  return [
    make.volume(wholeMeasure("volumeMm3", "Volume")),
    make.area(wholeMeasure("areaMm2", "Surface")),
    make.area({
      id: "geometry/measures/overhangAreaMm2",
      title: "Overhang",
      get: (row) => row.geometry.measures.overhangAreaMm2,
      set: (row, value) => withMeasures(row, { overhangAreaMm2: value }),
    }),
    side("x", "Across (x)"),
    side("y", "Deep (y)"),
    side("z", "High (z)"),
  ];
}

function wholeMeasure(field: "volumeMm3" | "areaMm2", title: string) {
  return {
    id: `geometry/measures/${field}`,
    title,
    above: 0,
    get: (row: Part) => row.geometry.measures[field],
    set: (row: Part, value: number) => withMeasures(row, { [field]: value }),
  };
}

function loadField(make: Make): Column {
  return make.choice({
    id: "loadAxis",
    title: "Load",
    choices: () => AXES,
    get: (row) => row.loadAxis ?? NONE,
    set: (row, value) => {
      const { loadAxis: _, ...rest } = row;
      return value === "x" || value === "y" || value === "z" ? { ...rest, loadAxis: value } : rest;
    },
  });
}

function withMeasures(part: Part, some: Partial<Measures>): Part {
  return { ...part, geometry: { kind: "measures", measures: { ...part.geometry.measures, ...some } } };
}

/** Example: "PLA, PETG;" gives PLA and PETG. */
function wordsOf(text: string): string[] {
  return text
    .split(/[,;]/)
    .map((word) => word.trim())
    .filter((word) => word !== "");
}

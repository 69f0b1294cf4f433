import type { Feedstock } from "../../../core/shop/feedstock.ts";
import { COLDEST_C, flameColumn, nameColumns } from "../../components/entry/shared-columns.ts";
import type { ValueColumn, ValueColumns } from "../../components/entry/value-columns.ts";
import type { CellChoice } from "../../components/grid/grid-column.ts";

type Make = ValueColumns<Feedstock>;
type Column = ValueColumn<Feedstock>;
type Fields<Name extends string> = Readonly<Record<Name, Column>>;

/** What a number must keep to. */
interface Limits {
  readonly above?: number;
  readonly most?: number;
  readonly least?: number;
  readonly isWhole?: true;
}

const FORMS: readonly CellChoice[] = [
  { value: "filament", label: "filament" },
  { value: "pellet", label: "pellets" },
];

/** What a grade is: names, family, form. */
export function identityFields(make: Make): Fields<"id" | "name" | "family" | "form" | "abrasive" | "flame"> {
  return {
    ...nameColumns(make, { title: "Grade", idPx: 92, namePx: 170 }),
    family: make.text({
      id: "family",
      title: "Family",
      widthPx: 120,
      get: (row) => row.family,
      set: (row, text) => ({ ...row, family: text }),
    }),
    form: make.choice({
      id: "form",
      title: "Form",
      widthPx: 84,
      choices: () => FORMS,
      get: (row) => row.form,
      set: (row, value) => ({ ...row, form: value === "pellet" ? "pellet" : "filament" }),
    }),
    abrasive: make.tick({
      id: "abrasive",
      title: "Abrasive",
      get: (row) => row.abrasive,
      set: (row, value) => ({ ...row, abrasive: value }),
    }),
    flame: flameColumn(make, {
      id: "properties/flameClass",
      get: (row) => row.properties,
      set: (row, properties) => ({ ...row, properties }),
    }),
  };
}

/** What it costs and how it comes. */
export function buyingFields(make: Make): Fields<"price" | "pack" | "stock" | "lead" | "waste"> {
  const mass = (field: "packKg" | "stockKg", title: string, limits: Limits = {}): Column =>
    make.mass({
      id: field,
      title,
      ...limits,
      get: (row) => row[field],
      set: (row, value) => ({ ...row, [field]: value }),
    });
  return {
    price: make.perMass({
      id: "pricePerKg",
      title: "Price",
      widthPx: 104,
      get: (row) => row.pricePerKg,
      set: (row, value) => ({ ...row, pricePerKg: value }),
      clear: (row) => ({ ...row, pricePerKg: null }),
    }),
    pack: mass("packKg", "One pack", { above: 0 }),
    stock: mass("stockKg", "Stock"),
    lead: number(make, "leadTimeDays", "Delivery", "days"),
    waste: number(make, "wastePct", "Lost in handling", "%", { most: 100 }),
  };
}

/** Temperatures and drying. */
export function runningFields(
  make: Make,
): Fields<"nozzleMin" | "nozzleMax" | "platform" | "chamber" | "dryC" | "dryH"> {
  const heat = (end: "min" | "max", title: string): Column =>
    make.number({
      id: `nozzleC/${end}`,
      title,
      unit: "°C",
      above: 0,
      get: (row) => row.nozzleC[end],
      set: (row, value) => ({ ...row, nozzleC: { ...row.nozzleC, [end]: value } }),
    });
  return {
    nozzleMin: heat("min", "Nozzle, from"),
    nozzleMax: heat("max", "Nozzle, to"),
    platform: number(make, "platformC", "Platform", "°C"),
    chamber: optional(make, "needsChamberC", "Air round the part", "°C", { least: COLDEST_C }),
    dryC: number(make, "dryC", "Dry at", "°C"),
    dryH: number(make, "dryH", "Dry for", "h"),
  };
}

/** How it melts and cools, what the times of layers come from. */
export function meltFields(make: Make): readonly Column[] {
  return [
    number(make, "densityKgPerM3", "Density", "kg/m³", { above: 0 }),
    number(make, "flowFactor", "Melts against reference", "×", { above: 0 }),
    number(make, "bondC", "Bonds down to", "°C", { least: COLDEST_C }),
    number(make, "carryC", "Carries up to", "°C", { least: COLDEST_C }),
    number(make, "specificHeatJPerKgK", "Specific heat", "J/(kg K)", { above: 0 }),
    number(make, "conductivityWPerMK", "Conducts heat", "W/(m K)", { above: 0 }),
    optional(make, "minLayerS", "Own shortest layer", "s", { above: 0 }),
    optional(make, "maxLayerS", "Own longest layer", "s", { above: 0 }),
  ];
}

/** What a part of it bears. */
export function propertyFields(make: Make): readonly Column[] {
  const property = (field: PropertyField, title: string, unit: string, limits: Limits): Column =>
    make.number({
      id: `properties/${field}`,
      title,
      unit,
      ...limits,
      get: (row) => row.properties[field],
      set: (row, value) => ({ ...row, properties: { ...row.properties, [field]: value } }),
    });
  return [
    property("heatDeflectionC", "Heat deflection", "°C", { least: COLDEST_C }),
    property("tensileModulusMPa", "Stiffness", "MPa", { above: 0 }),
    property("tensileStrengthMPa", "Strength", "MPa", { above: 0 }),
    property("acrossLayersPct", "Across layers", "%", { most: 100 }),
  ];
}

/** Where it comes from. */
export function originFields(make: Make): readonly Column[] {
  return [
    optional(make, "recycledPct", "Recycled", "%", { most: 100 }),
    number(make, "meltCycles", "Melted before", "times", { isWhole: true }),
  ];
}

function number(make: Make, field: NumberField, title: string, unit: string, limits: Limits = {}): Column {
  return make.number({
    id: field,
    title,
    unit,
    ...limits,
    get: (row) => row[field],
    set: (row, value) => ({ ...row, [field]: value }),
  });
}

function optional(make: Make, field: OptionalField, title: string, unit: string, limits: Limits): Column {
  return make.number({
    id: field,
    title,
    unit: `${unit}, or empty`,
    ...limits,
    get: (row) => row[field],
    set: (row, value) => ({ ...row, [field]: value }),
    clear: (row) => {
      const { [field]: _, ...kept } = row;
      return kept as Feedstock;
    },
  });
}

type PropertyField = "heatDeflectionC" | "tensileModulusMPa" | "tensileStrengthMPa" | "acrossLayersPct";
type NumberField =
  | "leadTimeDays"
  | "wastePct"
  | "platformC"
  | "dryC"
  | "dryH"
  | "densityKgPerM3"
  | "flowFactor"
  | "bondC"
  | "carryC"
  | "specificHeatJPerKgK"
  | "conductivityWPerMK"
  | "meltCycles";
type OptionalField = "needsChamberC" | "minLayerS" | "maxLayerS" | "recycledPct";

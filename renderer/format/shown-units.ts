import { inFromMm, lbFromKg } from "../../core/units/conversions.ts";
import type { Format } from "./format.ts";
import { perShownMass } from "./per-mass.ts";

/** A length or a mass as core writes it in its sentences. */
const MEASURE = /(?<![\w.,-])(-?\d+(?:\.\d+)?) (mm|kg)(?![\w/²³])/g;

const MOST_DECIMALS = 6;

/**
 * A sentence of core, which counts in mm and kg, in the units and the way of writing numbers that are shown. Example: "smallest
 * detail 0.8 mm" gives "smallest detail 0.0315 in" where inches are shown, "smallest detail 0,8 mm" where commas are.
 */
export function sentenceInUnits(sentence: string, format: Format): string {
  return sentence.replace(MEASURE, (_, digits: string, unit: string) => {
    const value = Number(digits);
    if (unit === "mm" && format.length === "in") return format.lengthText(value);
    if (unit === "kg" && format.mass === "lb") return format.massText(value);
    return `${format.number(value, MOST_DECIMALS)} ${unit}`;
  });
}

/** A number and its unit. */
interface Quantity {
  readonly value: number;
  readonly unit: string;
}

/** An input of a formula in the units that are shown. Example: 2 kg where lb are shown: 4.409 lb; 10 EUR/kg: 4.536 EUR/lb. */
export function inShownUnits({ value, unit }: Quantity, format: Format): Quantity {
  if (unit === "mm" && format.length === "in") return { value: inFromMm(value), unit: "in" };
  if (unit === "kg" && format.mass === "lb") return { value: lbFromKg(value), unit: "lb" };
  if (unit.endsWith("/kg") && format.mass === "lb")
    return { value: perShownMass(value, format), unit: unit.replace(/kg$/, "lb") };
  return { value, unit };
}

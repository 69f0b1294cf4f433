import { kgFromLb } from "../../core/units/conversions.ts";
import type { Format } from "./format.ts";

/** A price per kg in the mass that is shown. Example: 10 per kg where lb are shown: 4.5359 per lb. */
export function perShownMass(pricePerKg: number, { mass }: Pick<Format, "mass">): number {
  return mass === "kg" ? pricePerKg : pricePerKg * kgFromLb(1);
}

/** The way back. Example: 4.5359237 per lb: 10 per kg. */
export function perKgFromShown(price: number, { mass }: Pick<Format, "mass">): number {
  return mass === "kg" ? price : price / kgFromLb(1);
}

import { inFromMm, lbFromKg } from "../units/conversions.ts";
import type { Shop } from "./shop.ts";

/**
 * Turns the lengths, areas and masses in a sentence into the units in which the works reads them; names and ids of the shop
 * stay as they are, whatever they look like. With millimetres and kilograms nothing changes.
 * Example: in inches and pounds "0.2 kg of PLA 2.85 mm, layer 0.2 mm" gives "0.441 lb of PLA 2.85 mm, layer 0.0079 in".
 */
export function displayWords(shop: Shop): (sentence: string) => string {
  const { length, mass } = shop.display;
  if (length === "mm" && mass === "kg") return (sentence) => sentence;
  const names = namesWithUnits(shop).map((name) => name.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  const pattern = new RegExp(`${[...names, QUANTITY].join("|")}`, "gu");
  return (sentence) =>
    sentence.replace(pattern, (match, numbers?: string, unit?: string) => {
      const change = unit === undefined ? undefined : CHANGES[unit];
      if (!change || numbers === undefined || shop.display[change.of] === change.kept) return match;
      return `${numbers.replaceAll(/\d+(?:\.\d+)?/g, (text) => numberText(change.from(Number(text))))} ${change.to}`;
    });
}

/** Numbers with one unit after them, such as "812 x 400 mm"; no speeds and no volumes. */
const QUANTITY = String.raw`(?<![\w.])(\d+(?:\.\d+)?(?: [x×] \d+(?:\.\d+)?)*) (mm²|mm|kg)(?![\p{L}\d²³/])`;

interface UnitChange {
  readonly of: "length" | "mass";
  /** unit of the display in which nothing changes */
  readonly kept: string;
  readonly to: string;
  readonly from: (value: number) => number;
}

const CHANGES: Readonly<Record<string, UnitChange>> = {
  mm: { of: "length", kept: "mm", to: "in", from: inFromMm },
  "mm²": { of: "length", kept: "mm", to: "in²", from: (areaMm2) => inFromMm(inFromMm(areaMm2)) },
  kg: { of: "mass", kept: "kg", to: "lb", from: lbFromKg },
};

/** Names and ids in which a number has a unit, the longest first. */
function namesWithUnits(shop: Shop): string[] {
  const all = [
    ...[...shop.machines, ...shop.feedstocks, ...shop.parts].flatMap(({ id, name }) => [id, name]),
    ...shop.machines.flatMap(({ nozzles }) => nozzles.map(({ id }) => id)),
    ...shop.orders.flatMap(({ id, customer }) => [id, customer]),
  ];
  const risky = new Set(all.filter((name) => /\d\s*(mm|kg)/.test(name)));
  return [...risky].toSorted((a, b) => b.length - a.length);
}

/** Three significant digits or more. Example: 0.00787 gives "0.0079", 31.97 gives "32". */
function numberText(value: number): string {
  const decimals = value >= 10 ? 1 : value >= 1 ? 2 : value >= 0.1 ? 3 : 4;
  return String(Number(value.toFixed(decimals)));
}

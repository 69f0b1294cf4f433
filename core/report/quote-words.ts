import type { Part } from "../shop/part.ts";
import type { Display } from "./display.ts";
import { copiesText, type QuoteContext } from "./quote-facts.ts";
import { shortText } from "./plain-text.ts";

/** What a customer should know of a part: terms and texts. Example: Size: 60.00 x 40.00 x 20.00 mm. */
export function partFacts(part: Part, display: Display): [term: string, text: string][] {
  const { geometry, families, infillPct, maxLayerHeightMm } = part;
  const { x, y, z } = geometry.measures.boxMm;
  const isAnyLayer = maxLayerHeightMm >= NO_LIMIT_MM;
  return [
    ["Size", [x, y, z].map((side) => display.length(side)).join(" × ")],
    ["Material", families.length > 0 ? families.join(" or ") : "any polymer"],
    ["Made with", infillPct >= 100 ? "solid throughout" : hollowText(part, display)],
    [
      "Surface",
      isAnyLayer ? "layers of any height may show" : `layers of at most ${display.length(maxLayerHeightMm)}`,
    ],
    ...needFacts(part),
    ...finishingFacts(part, display),
    ...(geometry.kind === "mesh"
      ? [
          ["Drawing", `${geometry.file}, SHA-256 ${geometry.sha256.slice(0, HASH_CHARS)}…`] as [
            string,
            string,
          ],
        ]
      : []),
  ];
}

function hollowText({ shells, solidLayers, infillPct }: Part, display: Display): string {
  return `${shells} walls, ${solidLayers} solid layers below and above, ${display.number(infillPct, 0)}\u202f% filling`;
}

/** A layer height that stands for: nobody asked. */
const NO_LIMIT_MM = 100;
const HASH_CHARS = 12;

function needFacts({ needs }: Part): [string, string][] {
  const { heatDeflectionC, tensileModulusMPa, tensileStrengthMPa, acrossLayersMPa, flameClass } = needs;
  const said = [
    heatDeflectionC === undefined ? "" : `heat of ${heatDeflectionC} °C`,
    tensileModulusMPa === undefined ? "" : `a stiffness of ${tensileModulusMPa} MPa`,
    tensileStrengthMPa === undefined ? "" : `${tensileStrengthMPa} MPa along the load`,
    acrossLayersMPa === undefined ? "" : `${acrossLayersMPa} MPa across the layers`,
    flameClass === undefined ? "" : `flame class ${flameClass}`,
  ].filter((text) => text !== "");
  return said.length > 0 ? [["Asked to bear", `${said.join(", ")}, by the data sheet of the grade`]] : [];
}

function finishingFacts({ finishing }: Part, display: Display): [string, string][] {
  const { labourMin, machiningMin } = finishing;
  const said = [
    labourMin > 0 ? `${display.number(labourMin, 1)} min by hand` : "",
    machiningMin > 0 ? `${display.number(machiningMin, 1)} min of machining` : "",
  ].filter((text) => text !== "");
  return said.length > 0 ? [["Finishing", `${said.join(" and ")} for each copy`]] : [];
}

/** What a quote takes for granted, as sentences. */
export function assumptions({ quote, shop, value, display }: QuoteContext): string[] {
  const until = display.day(display.date(display.minute(quote.validUntil)));
  const hasBreaks = quote.lines.some(({ breaks }) => breaks.length > 1);
  const hasOnce = quote.lines.some(({ oneOffPrice }) => oneOffPrice > 0);
  const { length } = quote.lines;
  return [
    `Amounts are in ${shop.currency} (ISO 4217), without taxes and delivery unless the terms say otherwise.`,
    `Prices hold for an order placed by ${until}${length > 1 ? `, all ${length} lines of it` : ""}. Dates hold for an order on the day of this quote; for a later one they are said anew.`,
    "A date is when the last copy is ready at the seller's works, if drawings and approvals are there with the order.",
    ...(hasBreaks
      ? ["A price by quantity holds for copies ordered at once, in one part and one material."]
      : []),
    ...(hasOnce
      ? ["What is charged once is for tool paths and the first set-up; a repeat order does not have it."]
      : []),
    ...(value.minimumSurcharge > 0 ? ["The smallest order is charged where the lines come to less."] : []),
    "Parts are built layer by layer from polymer: layers show, and strength differs along and across them.",
  ];
}

/** Cautions for whoever uses the parts. General care, no advice; common practice, no source. */
export const PART_CAUTIONS: readonly string[] = [
  "Whether a part suits its use is for the customer to check. Where it carries loads, touches food or skin, meets heat, flame or electricity, or protects people, have a qualified person check it under the rules that hold at the place of use.",
  "Needs named above were compared with data sheets of the grades. No part was tested for this quote.",
];

/** The quote in a line, for the title of a window or file. Example: "Quote Q-2026-0007, 2 lines, Invented customer". */
export function quoteTitle({ quote }: QuoteContext): string {
  const { id, customer, lines } = quote;
  const [only, ...more] = lines;
  const what = only && more.length === 0 ? copiesText(only.quantity) : `${lines.length} lines`;
  return [`Quote ${shortText(id, 40)}`, what, ...(customer === "" ? [] : [shortText(customer, 40)])].join(
    ", ",
  );
}

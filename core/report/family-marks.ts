import type { PlanDocument } from "../plan/plan-document.ts";
import type { Shop } from "../shop/shop.ts";
import { type Html, html } from "./html-escape.ts";
import { compare } from "./week-facts.ts";

/** How one polymer family is marked: never by colour alone. */
export interface FamilyMark {
  readonly family: string;
  readonly letter: string;
  readonly colour: string;
  /** id of the SVG pattern: the colour with a hatch of its own */
  readonly patternId: string;
  readonly hatch: number;
}

/** The "bright" scheme of Tol (2021), "Colour schemes", which stays apart under the common colour vision deficiencies. */
const COLOURS = ["#4477AA", "#EE6677", "#228833", "#CCBB44", "#66CCEE", "#AA3377", "#BBBBBB"] as const;

/** Strokes of one 8 x 8 tile; all differ, so that black-and-white paper still tells the families apart. */
const HATCHES = [
  "",
  "M-2 2l4-4M0 8l8-8M6 10l4-4",
  "M0 4h8",
  "M4 0v8",
  "M-2 6l4 4M0 0l8 8M6-2l4 4",
  "M0 2h8M0 6h8M2 0v8M6 0v8",
  "M3 4a1 1 0 1 0 2 0a1 1 0 1 0-2 0",
] as const;

const UNKNOWN = "unknown";

/** Marks of the families that a plan uses, in alphabetical order: A, B, C and so on. */
export function familyMarks(shop: Shop, plan: PlanDocument): FamilyMark[] {
  const familyOf = familiesById(shop);
  const used = new Set(plan.builds.map((build) => familyOf.get(build.feedstockId) ?? UNKNOWN));
  for (const need of plan.feedstockNeeds) used.add(familyOf.get(need.feedstockId) ?? UNKNOWN);
  return marksOfFamilies(used);
}

/** Marks of families by name, in alphabetical order. Example: "PETG" and "ABS" give A for ABS and B for PETG. */
export function marksOfFamilies(families: Iterable<string>): FamilyMark[] {
  return [...new Set(families)].toSorted(compare).map(markAt);
}

/** Strokes of one 8 x 8 tile of a mark's hatch, as an SVG path. */
export function hatchPath(mark: FamilyMark): string {
  return HATCHES[mark.hatch] ?? "";
}

/** A look-up of the mark by feedstock. */
export function markByFeedstock(
  shop: Shop,
  marks: readonly FamilyMark[],
): (feedstockId: string) => FamilyMark {
  const familyOf = familiesById(shop);
  const byFamily = new Map(marks.map((mark) => [mark.family, mark]));
  return (feedstockId) => byFamily.get(familyOf.get(feedstockId) ?? UNKNOWN) ?? markAt(UNKNOWN, marks.length);
}

/** SVG patterns of all marks and of the timeline's own hatches, once for the document. */
export function patternDefinitions(marks: readonly FamilyMark[]): Html {
  return html`<svg class="definitions" width="0" height="0" aria-hidden="true"><defs>${marks.map(patternOf)}
<pattern id="p-change" width="4" height="4" patternUnits="userSpaceOnUse"><rect class="change-back" width="4" height="4"/><path class="change-line" d="M-1 1l2-2M0 4l4-4M3 5l2-2"/></pattern>
<pattern id="p-shut" width="10" height="10" patternUnits="userSpaceOnUse"><rect class="shut-back" width="10" height="10"/><path class="shut-line" d="M-2 2l4-4M0 10l10-10M8 12l4-4"/></pattern>
<pattern id="p-service" width="8" height="8" patternUnits="userSpaceOnUse"><rect class="shut-back" width="8" height="8"/><path class="service-line" d="M0 0l8 8M0 8l8-8"/></pattern>
</defs></svg>
`;
}

function patternOf(mark: FamilyMark): Html {
  return html`<pattern id="${mark.patternId}" width="8" height="8" patternUnits="userSpaceOnUse"><rect width="8" height="8" fill="${mark.colour}"/><path class="hatch" d="${hatchPath(mark)}"/></pattern>
`;
}

/** From the eighth family on the colours come again with the next hatch. */
function markAt(family: string, index: number): FamilyMark {
  const round = Math.floor(index / COLOURS.length);
  return {
    family,
    letter: letterAt(index),
    colour: COLOURS[index % COLOURS.length] ?? "#BBBBBB",
    hatch: (index + round) % HATCHES.length,
    patternId: `p-family-${index}`,
  };
}

function letterAt(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : letterAt(Math.floor(index / 26) - 1) + letter;
}

function familiesById(shop: Shop): Map<string, string> {
  return new Map(shop.feedstocks.map((feedstock) => [feedstock.id, feedstock.family]));
}

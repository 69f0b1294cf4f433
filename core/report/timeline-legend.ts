import { familyMarks } from "./family-marks.ts";
import { type Html, html } from "./html-escape.ts";
import { DIAMOND, TRIANGLE } from "./timeline-marks.ts";
import { familySwatch, nameText, type SheetContext } from "./sheet-parts.ts";

/** What the colours, hatches, shades and marks of the timeline mean. */
export function legend({ shop, plan }: SheetContext): Html {
  const families = familyMarks(shop, plan).map(
    (mark) => html`<li>${familySwatch(mark)} ${nameText(mark.family)}</li>`,
  );
  const pieces = PIECES.map(([look, text]) => html`<li>${box(look)} ${text}</li>`);
  const marks = MARKS.map(([look, shape, text]) => html`<li>${sign(look, shape)} ${text}</li>`);
  return html`<div class="legend"><ul aria-label="Polymer families">${families}</ul><ul aria-label="Bars, shades and marks">${pieces}${marks}<li><span class="sign" aria-hidden="true">●</span> committed</li><li><span class="sign" aria-hidden="true">▶</span> running</li></ul></div>
`;
}

const PIECES = [
  ["change", "changeover"],
  ["set-up", "set-up"],
  ["print", "print, with warm-up and cool-down"],
  ["waiting", "done, waits to be taken off"],
  ["unload", "unload"],
  ["staffed", "staffed"],
  ["unstaffed", "nobody there"],
  ["shut", "works shut"],
  ["service", "out of service"],
] as const;

const MARKS = [
  ["due", DIAMOND, "order due"],
  ["late", TRIANGLE, "order late until here"],
] as const;

function box(look: string): Html {
  return html`<svg class="swatch" width="20" height="14" aria-hidden="true"><rect class="${look}" width="20" height="14"/><rect class="swatch-edge" x=".5" y=".5" width="19" height="13"/></svg>`;
}

function sign(look: string, shape: string): Html {
  return html`<svg class="swatch" width="14" height="14" aria-hidden="true"><svg class="${look}" x="7" y="7" overflow="visible"><path d="${shape}"/></svg></svg>`;
}

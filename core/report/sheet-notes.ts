import { type Html, html, when } from "./html-escape.ts";
import { section, type SheetContext } from "./sheet-parts.ts";
import { CAUTIONS, LIMITS } from "./words.ts";

/** Cautions, what the numbers rest on, and how this plan was made. */
export function notesSection(): Html {
  const cautions = CAUTIONS.map(({ title, text }) => html`<div><dt>${title}</dt><dd>${text}</dd></div>`);
  const limits = LIMITS.map((text) => html`<li>${text}</li>`);
  return section(
    "notes",
    "Cautions and limits",
    "The works decides, and local codes and qualified people rule. Times and loads here are estimates, not limits of what is allowed.",
    html`<dl class="cautions">${cautions}</dl><h3>What the numbers rest on</h3><ul class="limits">${limits}</ul>`,
  );
}

/** Where the sheet comes from: start, seed, proof and time taken. */
export function sheetFoot({ plan, display }: SheetContext): Html {
  const { totalS, firstPlanS } = plan.elapsed;
  return html`<footer><p>Planned from ${display.dateTime(display.minute(plan.plannedFrom))} for ${plan.horizonDays} days; all times are local to ${plan.timeZone}. Lower bound: <bdi>${plan.bound.from}</bdi>. Seed ${plan.seed}; first valid plan after ${display.number(firstPlanS, 2)} s, ${display.number(totalS, 2)} s in all.${when(plan.status === "stopped", () => html` The search was stopped.`)}</p>
<p>Made by Hopper &amp; Spool from the works' own file.</p></footer>
`;
}

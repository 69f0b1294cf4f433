import type { PlannedBuild } from "../plan/plan-document.ts";
import { durationText } from "../shop/time-words.ts";
import { countText } from "./display.ts";
import { type Html, html } from "./html-escape.ts";
import { familySwatch, idText, nameText, scrolling, type SheetContext, tableHead } from "./sheet-parts.ts";
import { buildsByMachine, itemsText } from "./week-facts.ts";

/** The timeline in words: every build as a row, for reading aloud, copying and looking up. */
export function buildsTable(context: SheetContext): Html {
  const rows = buildsByMachine(context.shop, context.plan).flatMap(({ builds }) =>
    builds.map((build) => buildRow(build, context)),
  );
  const head = [
    "Build",
    "Machine",
    "Makes",
    "Feedstock",
    ">Layer",
    ">Bead",
    "Set-up",
    "Print",
    ">Lasts",
    "Off by",
    ">Mass",
    "State",
  ];
  return html`<details><summary>The same in words: ${countText(rows.length, "build")}</summary>
${scrolling("Table of builds", html`<table class="wide"><caption>Builds by machine, in time order.</caption>${tableHead(head)}<tbody>${rows}</tbody></table>`)}</details>
`;
}

function buildRow(build: PlannedBuild, { display, names, markOf }: SheetContext): Html {
  const at = (instant: string) => display.dateTime(display.minute(instant));
  const lasts = durationText(display.minute(build.printEnd) - display.minute(build.printStart));
  return html`<tr><th scope="row">${idText(build.id)}</th><td>${nameText(names.machine(build.machineId))}</td><td><bdi>${itemsText(build)}</bdi></td><td>${familySwatch(markOf(build.feedstockId))} ${nameText(names.feedstock(build.feedstockId))}</td><td class="num">${display.length(build.layerHeightMm)}</td><td class="num">${display.length(build.beadWidthMm)}</td><td class="time">${at(build.setUpStart)}</td><td class="time">${at(build.printStart)}</td><td class="num">${lasts}</td><td class="time">${at(build.unloadEnd)}</td><td class="num">${display.mass(build.massKg)}</td><td>${build.state}</td></tr>
`;
}

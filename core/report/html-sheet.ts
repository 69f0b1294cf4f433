import type { PlanDocument } from "../plan/plan-document.ts";
import type { Shop } from "../shop/shop.ts";
import { displayOf } from "./display.ts";
import { familyMarks, markByFeedstock, patternDefinitions } from "./family-marks.ts";
import { headlineOf } from "./headline.ts";
import { type Html, html } from "./html-escape.ts";
import { namesOf } from "./names.ts";
import { shortText } from "./plain-text.ts";
import { attentionSection } from "./sheet-attention.ts";
import { buildsTable } from "./sheet-builds.ts";
import { costsSection } from "./sheet-costs.ts";
import { feedstockSection } from "./sheet-feedstock.ts";
import { sheetHead } from "./sheet-head.ts";
import { notesSection, sheetFoot } from "./sheet-notes.ts";
import { ordersSection } from "./sheet-orders.ts";
import { sheetPage } from "./sheet-page.ts";
import type { SheetContext } from "./sheet-parts.ts";
import { SHEET_STYLE } from "./sheet-style.ts";
import { tasksSection } from "./sheet-tasks.ts";
import { timelineSection } from "./sheet-timeline.ts";
import { worthSection } from "./sheet-worth.ts";

/**
 * The plan as one HTML document that needs nothing else: no script, no font, no picture from outside, and a content security
 * policy that admits only its own style sheet, by hash. Light and dark, screen and paper (A4, landscape). "tasks": the operators' list alone.
 */
export function weekSheet(shop: Shop, plan: PlanDocument, content: "week" | "tasks" = "week"): string {
  const marks = familyMarks(shop, plan);
  const outcomes = new Map(plan.orders.map((order) => [order.orderId, order]));
  const context: SheetContext = {
    shop,
    plan,
    display: displayOf(shop, plan.plannedFrom),
    names: namesOf(shop),
    outcomeOf: (orderId) => outcomes.get(orderId) ?? null,
    markOf: markByFeedstock(shop, marks),
  };
  const title = `${headlineOf(plan, context.display).period}, ${shortText(plan.shopName, TITLE_CHARS)}`;
  const sections = content === "tasks" ? [tasksSection(context)] : allSections(context);
  return sheetPage({
    title,
    style: SHEET_STYLE,
    body: html`${patternDefinitions(marks)}${sheetHead(context)}<main>
${sections}${notesSection()}</main>
${sheetFoot(context)}`,
  });
}

const TITLE_CHARS = 60;

function allSections(context: SheetContext): Html[] {
  return [
    attentionSection(context),
    timelineSection(context),
    buildsTable(context),
    tasksSection(context),
    ordersSection(context),
    costsSection(context),
    feedstockSection(context),
    worthSection(context),
  ];
}

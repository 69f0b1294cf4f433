import type { Component } from "solid-js";

/*
 * How to add a page (ten lines):
 *  1. One folder: pages/<page>/<page>-page.tsx with a default export `Component<{ page: PageEntry }>`, helpers beside it.
 *  2. One line in PAGES below, in the order of the trade. A page without a line is not seen anywhere.
 *  3. Draw inside <PageFrame page={props.page} tools={...} fills>; it makes the heading from the question.
 *  4. Read: useStores() gives shop.shop(), shop.findingsAt("machines/P1"), plan.plan(), selection.chosen(), format().
 *  5. Edit: shop.apply("price of PETG", [{ kind: "put", list: "feedstocks", entry, at: null }]). Undo comes by itself; edits
 *     while somebody types carry { typing: "PETG/note" }. Changes of several lists in one apply are one step.
 *  6. Numbers go out by format().money/lengthText/massText and come in by format().readLengthMm(text); never round elsewhere.
 *  7. Lists: <Grid> of components/grid (columns as data, see pages/orders/order-columns.tsx). Names: <NameText>, families:
 *     <FamilyMark>, findings: <FindingList>, panel beside: <SplitPane>. Styles: styles/<page>.css, imported by the page.
 *  8. Keys: shortcuts.add([...]) in the page's body; they stand in the help (?) while the page is open.
 *  9. Words that are said and shown: notes.tell(sentence), what went wrong: notes.alarm(sentence).
 * 10. Tests: test/renderer/<page>.test.tsx (happy-dom), test/journeys/<page>.test.ts (openApp of test/journeys/open-app.ts).
 */

export interface PageEntry {
  /** in the address: #orders */
  readonly id: string;
  /** in the band */
  readonly title: string;
  /** the one question that the page answers, its heading */
  readonly question: string;
  readonly load: () => Promise<{ default: Component<{ page: PageEntry }> }>;
}

/** All pages in the order of the band. */
export const PAGES: readonly PageEntry[] = [
  {
    id: "orders",
    title: "Orders",
    question: "What must be made by when?",
    load: () => import("./orders/orders-page.tsx"),
  },
  {
    id: "parts",
    title: "Parts",
    question: "How can this be made?",
    load: () => import("./parts/parts-page.tsx"),
  },
  {
    id: "machines",
    title: "Machines",
    question: "What do we have?",
    load: () => import("./machines/machines-page.tsx"),
  },
  {
    id: "feedstock",
    title: "Feedstock",
    question: "What do we run on?",
    load: () => import("./feedstock/feedstock-page.tsx"),
  },
  {
    id: "week",
    title: "Week",
    question: "Who makes what, when?",
    load: () => import("./week/week-page.tsx"),
  },
  {
    id: "costs",
    title: "Costs",
    question: "Where does the money go?",
    load: () => import("./costs/costs-page.tsx"),
  },
  {
    id: "quote",
    title: "Quote",
    question: "What price, what date?",
    load: () => import("./quote/quote-page.tsx"),
  },
  {
    id: "purchase",
    title: "Purchase",
    question: "Is another machine worth it?",
    load: () => import("./purchase/purchase-page.tsx"),
  },
];

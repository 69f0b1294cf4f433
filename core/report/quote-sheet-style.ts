import { DRAWING_STYLE } from "./body-drawing.ts";
import { SHEET_STYLE } from "./sheet-style.ts";

/** Style of a quote: that of the week's sheet, then what only a quote has, upright on whatever paper the printer holds. */
export const QUOTE_STYLE = `${SHEET_STYLE}${DRAWING_STYLE}
body { max-width: 62rem; }
.letter-head { display: grid; grid-template-columns: 1fr auto; gap: .6rem 2rem; align-items: start; }
.letter-head .seller { font-size: 1.12rem; font-weight: 650; }
.lines-kept { white-space: pre-line; }
.letter-head .contact, .small { color: var(--quiet); font-size: .87rem; }
.parties { display: grid; grid-template-columns: 1fr minmax(15rem, auto); gap: 1rem 2rem; margin: 1.6rem 0 0; align-items: end; }
.parties dl { display: grid; grid-template-columns: auto auto; gap: .15rem 1rem; margin: 0; }
.parties dt { color: var(--quiet); }
.parties dd { margin: 0; font-weight: 600; text-align: right; }
.inside-mark { color: var(--alarm); background: var(--alarm-back); border-radius: 6px; padding: .5rem .9rem; font-weight: 600; }
.item { display: grid; grid-template-columns: 9.5rem 1fr; gap: .6rem 1.6rem; padding: 1.1rem 0; border-top: 1px solid var(--rule); break-inside: avoid; }
.item h3 { margin: 0 0 .3rem; font-size: 1.1rem; }
.item .body { max-height: 11rem; margin: 0 auto; }
.item figure { margin: 0; text-align: center; }
.item figcaption { color: var(--quiet); font-size: .82rem; margin-top: .3rem; }
.deal { display: flex; flex-wrap: wrap; gap: .2rem 2.2rem; margin: .2rem 0 .5rem; }
.deal div { min-width: 6rem; }
.deal dt { color: var(--quiet); font-size: .85rem; }
.deal dd { margin: 0; font-size: 1.12rem; font-weight: 600; }
.told { display: grid; grid-template-columns: auto 1fr; gap: .1rem 1rem; margin: .4rem 0 0; font-size: .92rem; }
.told dt { color: var(--quiet); }
.told dd { margin: 0; }
.steps { width: auto; margin-top: .5rem; font-size: .92rem; }
.steps th, .steps td { padding: .15rem .7rem; border-top: 0; text-align: right; }
.steps th:first-child { padding-left: 0; text-align: left; color: var(--quiet); white-space: nowrap; }
.total { margin-left: auto; width: auto; min-width: 21rem; margin-top: .6rem; }
.total tfoot th, .total tfoot td { font-size: 1.25rem; }
.agreed { max-width: 75ch; padding-left: 1.1rem; }
.inside h3 { margin-top: 1.6rem; }
.inside .scroll { margin-top: .5rem; }
@media (max-width: 34rem) { .item, .parties, .letter-head { grid-template-columns: 1fr; } .parties dd { text-align: left; } }
@page { size: auto; margin: 14mm 15mm 16mm; }
@media print {
  html { font-size: 12px; }
  body { font-size: 9pt; }
  .item { padding: .8rem 0; }
  .total, .parties, .agreed li, .inside .scroll { break-inside: avoid; }
  .inside { break-before: page; }
}
`;

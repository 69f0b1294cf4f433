import { SHEET_STYLE } from "./sheet-style.ts";

/** Style of a purchase case: that of the week's sheet, then what only a case has, on one upright page of A4 or Letter. */
export const CASE_STYLE = `${SHEET_STYLE}
:root {
  --line-0: light-dark(#0b5c66, #7fc8d0);
  --line-1: light-dark(#9a3412, #f4a27c);
  --line-2: light-dark(#56479c, #b9aaf0);
  --line-3: light-dark(#7a6400, #d9c45e);
  --line-4: light-dark(#1d282b, #e8e6df);
  --line-5: light-dark(#20623a, #8ccfa0);
}
body { max-width: 74rem; }
.verdict { font-size: 1.3rem; line-height: 1.35; max-width: 62ch; margin: .9rem 0 0; }
h1 .name { max-width: none; white-space: normal; }
.status { color: var(--alarm); font-weight: 600; }
.figures caption { padding-bottom: .2rem; }
.figures thead th { white-space: normal; min-width: 7rem; color: var(--ink); font-size: .87rem; }
.figures thead b { font-size: 1rem; margin-right: .3rem; }
.figures th[scope="row"] { white-space: nowrap; }
.figures .main > * { font-weight: 650; }
.figures .lead-column { background: var(--faint); }
.charts { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(20rem, 100%), 1fr)); gap: 1.1rem; }
.pair { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(27rem, 100%), 1fr)); gap: 1.1rem; align-items: start; }
.charts figure, .pair figure { margin: 0; background: var(--surface); border: 1px solid var(--rule); border-radius: 6px; padding: .7rem .9rem .8rem; min-width: 0; }
figure h2, .figures caption b, .small h2 { font: 650 1rem/1.3 system-ui, "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", sans-serif; margin: 0 0 .3rem; }
figcaption { color: var(--quiet); font-size: .82rem; margin-top: .3rem; }
.chart { display: block; width: 100%; height: auto; }
.chart text { fill: var(--ink); font-size: 11px; }
.chart .tick, .chart .label { fill: var(--quiet); }
.chart .letter-at { font-weight: 700; font-size: 12px; }
.chart .grid { stroke: var(--rule); fill: none; }
.chart .zero { stroke: var(--ink); fill: none; }
.chart .line { fill: none; stroke-width: 2; stroke-linejoin: round; }
.chart .line-0 { stroke: var(--line-0); }
.chart .line-1 { stroke: var(--line-1); stroke-dasharray: 7 3; }
.chart .line-2 { stroke: var(--line-2); stroke-dasharray: 2 2.5; }
.chart .line-3 { stroke: var(--line-3); stroke-dasharray: 9 3 2 3; }
.chart .line-4 { stroke: var(--line-4); stroke-dasharray: 4 2; }
.chart .line-5 { stroke: var(--line-5); stroke-dasharray: 12 3; }
.chart .fill-0 { fill: var(--line-0); }
.chart .fill-1 { fill: var(--line-1); }
.chart .fill-2 { fill: var(--line-2); }
.chart .fill-3 { fill: var(--line-3); }
.chart .fill-4 { fill: var(--line-4); }
.chart .fill-5 { fill: var(--line-5); }
.chart .spread { fill-opacity: .55; }
.chart .middle { stroke: var(--ink); stroke-width: 2.5; }
.chart .by-filament { fill: none; stroke: var(--line-0); stroke-width: 1.4; }
.chart .by-pellet { fill: var(--line-1); }
.chart .trend-filament { stroke: var(--line-0); stroke-width: 1.6; fill: none; }
.chart .trend-pellet { stroke: var(--line-1); stroke-width: 1.6; stroke-dasharray: 6 3; fill: none; }
.chart .crossing { stroke: var(--ink); stroke-dasharray: 3 3; fill: none; }
.chart .base { stroke: var(--ink); stroke-width: 1.5; fill: none; }
.chart .input { font-weight: 600; }
.chart .end-low { fill: var(--surface); stroke: var(--line-0); stroke-width: 1.2; }
.chart .end-high { fill: var(--line-0); stroke: var(--line-0); stroke-width: 1.2; }
.small { font-size: .87rem; }
.small h2 { margin-top: 0; }
.small ul { margin: 0; padding-left: 1.1rem; }
.small { margin-top: 1.1rem; }
.block { margin-top: 1.4rem; }

@page { size: portrait; margin: 7mm 10mm; }
@media print {
  html { font-size: 10px; }
  body { font-size: 6.9pt; line-height: 1.25; }
  .brand { font-size: 8pt; float: right; }
  .brand svg { width: 14px; height: 14px; }
  h1 { font-size: 15pt; margin: 0; }
  h1 small { display: inline; font-size: 8.5pt; margin: 0 0 0 .6rem; }
  .verdict { font-size: 10pt; margin-top: 1mm; max-width: none; line-height: 1.22; }
  .status { margin: .5mm 0; }
  .block { margin-top: 2mm; }
  .scroll { overflow: hidden; }
  .figures th, .figures td { padding: .05mm 1.2mm; line-height: 1.18; }
  .figures caption { padding: 0 1.2mm .3mm; font-size: 6.3pt; }
  .figures thead th { min-width: 0; font-size: 6.9pt; }
  figure h2, .figures caption b, .small h2 { font-size: 8pt; margin-bottom: .4mm; }
  .charts { grid-template-columns: repeat(3, 1fr); gap: 2mm; }
  .pair { grid-template-columns: 1.04fr 1fr; gap: 3mm; }
  .charts figure, .pair figure { padding: 1mm 1.5mm; border-radius: 3px; break-inside: avoid; }
  figcaption { font-size: 6.2pt; margin-top: .3mm; line-height: 1.22; }
  .small { font-size: 6pt; line-height: 1.18; margin-top: 1.1mm; }
  .small ul { padding-left: 3.4mm; }
  .chart text { font-size: 11.5px; }
  footer { margin-top: 1.5mm; padding-top: .5mm; font-size: 6.2pt; }
  footer p { margin: 0; }
}
`;

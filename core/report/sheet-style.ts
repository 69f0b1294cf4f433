/** Style of the sheet: colours once for light and dark, then type, then each part, then paper. */
export const SHEET_STYLE = `
:root {
  color-scheme: light dark;
  --paper: light-dark(#f3f1ea, #15191b);
  --surface: light-dark(#fffefb, #1d2325);
  --ink: light-dark(#1d282b, #e8e6df);
  --quiet: light-dark(#556164, #a6b1b2);
  --rule: light-dark(#d8d4c8, #384245);
  --faint: light-dark(#eae7dd, #283033);
  --accent: light-dark(#0b5c66, #7fc8d0);
  --alarm: light-dark(#9a3412, #f4a27c);
  --alarm-back: light-dark(#fbeee6, #33231c);
  --well: light-dark(#20623a, #8ccfa0);
  --staffed: light-dark(#ffffff, #2a3235);
  --unstaffed: light-dark(#e9e7e0, #1a1f21);
  --bar-print: light-dark(#dfe9ee, #3b4a51);
  --bar-wait: light-dark(#f7f5ee, #2a3235);
  --bar-edge: light-dark(#26333a, #cfd6d6);
}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body {
  margin: 0 auto; padding: 1.75rem clamp(.9rem, 2.6vw, 2.75rem) 3rem; max-width: 108rem;
  background: var(--paper); color: var(--ink);
  font: 15px/1.45 system-ui, "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", sans-serif;
  font-variant-numeric: tabular-nums lining-nums;
}
h1, h2, .cost strong { font-family: Charter, "Iowan Old Style", "Palatino Linotype", Palatino, "Noto Serif", Georgia, serif; font-weight: 600; }
h1 { margin: .5rem 0 0; font-size: clamp(1.7rem, 3.4vw, 2.5rem); line-height: 1.12; letter-spacing: -.01em; }
h1 small { display: block; font: 500 1.05rem/1.4 system-ui, "Segoe UI", Roboto, "Noto Sans", sans-serif; color: var(--quiet); letter-spacing: 0; margin-top: .3rem; }
h2 { margin: 0; font-size: 1.5rem; line-height: 1.2; }
h3 { margin: 1.4rem 0 .4rem; font-size: 1rem; }
p { margin: .3rem 0; }
a { color: var(--accent); }
b, strong { font-weight: 650; }
section { margin-top: 2.6rem; }
.lead { margin: .25rem 0 1rem; color: var(--quiet); max-width: 75ch; }
:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; border-radius: 2px; }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.definitions { position: absolute; }

.name { display: inline-block; max-width: 22rem; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; vertical-align: bottom; }
.id { display: inline-block; max-width: 9rem; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; vertical-align: bottom; font-weight: 600; }
bdi { overflow-wrap: anywhere; }
.none { color: var(--quiet); }
.bad, .sign { color: var(--alarm); font-weight: 600; }

.brand { display: flex; align-items: center; gap: .55rem; margin: 0; font-weight: 600; letter-spacing: .01em; color: var(--accent); }
.mark-hopper { fill: none; stroke: var(--accent); stroke-width: 2; stroke-linejoin: round; }
.mark-spool { fill: var(--accent); }
.mark-hole { fill: var(--paper); }
.days { color: var(--quiet); margin-top: .35rem; }
.answer { margin: 1.3rem 0 0; display: grid; gap: .15rem; }
.cost { margin: 0; }
.answer .label { display: block; color: var(--quiet); }
.cost strong { font-size: clamp(2.1rem, 5.4vw, 3.5rem); line-height: 1.08; letter-spacing: -.015em; white-space: nowrap; }
.proof { font-size: 1.12rem; max-width: 60ch; margin-top: .5rem; }
.attention { color: var(--alarm); font-weight: 600; }
.well { color: var(--well); font-weight: 600; }
.top { display: grid; gap: 1.5rem 4rem; align-items: end; }
.facts { display: grid; grid-template-columns: repeat(auto-fit, minmax(7.4rem, 1fr)); margin: 0; border-top: 1px solid var(--rule); }
@media (min-width: 62rem) { .top { grid-template-columns: 1fr minmax(26rem, 38%); } }
.facts div { padding: .55rem .9rem .6rem 0; border-bottom: 1px solid var(--rule); }
.facts dt { color: var(--quiet); font-size: .85rem; }
.facts dd { margin: 0; font-size: 1.18rem; font-weight: 600; }
nav ul { display: flex; flex-wrap: wrap; gap: .25rem 1.25rem; list-style: none; margin: .8rem 0 0; padding: 0; font-size: .92rem; }
nav a { display: inline-block; padding: .2rem 0; text-underline-offset: .22em; text-decoration-thickness: 1px; }

.cards { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(23rem, 100%), 1fr)); gap: .9rem; align-items: start; }
.card { background: var(--alarm-back); border-radius: 6px; padding: .85rem 1.1rem .95rem; min-width: 0; }
.card h3 { margin: 0 0 .15rem; color: var(--alarm); }
.card ul { margin: .45rem 0 0; padding-left: 1.1rem; }
.card .who { color: var(--quiet); }
.card .help { margin-top: .5rem; font-weight: 600; }
.card details { margin-top: .4rem; }
.cards + .cards, .more .cards { margin-top: .9rem; }

.scroll { overflow-x: auto; background: var(--surface); border: 1px solid var(--rule); border-radius: 6px; }
table { border-collapse: collapse; width: 100%; }
caption { text-align: left; color: var(--quiet); font-size: .87rem; padding: .55rem .8rem; }
caption b { color: var(--ink); font-size: 1rem; }
th { text-align: left; font-weight: 500; }
thead th { color: var(--quiet); font-size: .82rem; vertical-align: bottom; white-space: nowrap; }
th, td { padding: .34rem .8rem; border-top: 1px solid var(--rule); vertical-align: top; }
tbody tr:hover > * { background: var(--faint); }
tfoot th, tfoot td { border-top: 2px solid var(--bar-edge); font-weight: 650; }
.num { text-align: right; white-space: nowrap; }
.time { white-space: nowrap; }
.note { min-width: 12rem; }
.wide { min-width: 60rem; }
.wide .name { max-width: 15rem; }
.wide th[scope="row"], .cost th[scope="row"] { white-space: nowrap; }
#worth th[scope="row"] { white-space: normal; }
.bar-cell { width: 22%; min-width: 5rem; }
.bar { display: block; margin-top: .36rem; }
.bar-track { fill: var(--faint); }
.bar-plain { fill: light-dark(#6f8a94, #7f99a3); }
.bar-own { fill: var(--accent); }
.bar-bound { fill: light-dark(#b9c3c0, #56666a); }
.bar-short, .stock-line { stroke: var(--bar-edge); }
.stock-line { stroke-width: 2; }
.columns { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(27rem, 100%), 1fr)); gap: 1.1rem; align-items: start; }
.days-grid > table { background: var(--surface); border-radius: 6px; outline: 1px solid var(--rule); }
.columns .name { max-width: 13rem; }
.beside { margin-top: 1.1rem; max-width: 46rem; }
.row-own > * { font-weight: 650; }

.legend { display: grid; gap: .35rem; margin-bottom: .9rem; font-size: .88rem; }
.legend ul { display: flex; flex-wrap: wrap; gap: .3rem 1.15rem; list-style: none; margin: 0; padding: 0; }
.legend li { display: inline-flex; align-items: center; gap: .4rem; }
.swatch { flex: none; vertical-align: -3px; }
.swatch-edge { fill: none; }
.swatch-edge, .outline { stroke: var(--bar-edge); }
.letter-plate { fill: var(--surface); }
.letter { font-weight: 700; }
.swatch .letter { font-size: 11px; text-anchor: middle; fill: var(--ink); }
.hatch { stroke: #10181b; stroke-width: 1.1; fill: none; }

.timeline { table-layout: fixed; min-width: 79rem; }
.timeline th:first-child { width: 10.5rem; position: sticky; left: 0; background: var(--surface); z-index: 1; border-right: 1px solid var(--rule); }
.timeline td { padding: 0; }
.timeline tbody th { padding: .4rem .5rem .2rem .8rem; line-height: 1.3; vertical-align: middle; white-space: nowrap; }
.timeline .name { display: block; max-width: 100%; font-size: .92rem; }
.timeline .id { max-width: 5rem; }
.used { color: var(--quiet); font-size: .8rem; }
.timeline svg { display: block; }
.timeline text { fill: var(--ink); font-size: 11.5px; }
.timeline .sub { fill: var(--quiet); font-size: 10.5px; }
.timeline .day-name { font-size: 12.5px; font-weight: 600; }
.timeline .tick-hour { fill: var(--quiet); font-size: 10.5px; text-anchor: middle; }
.day-line { stroke: light-dark(#a9a698, #57646a); }
.unstaffed { fill: var(--unstaffed); }
.staffed { fill: var(--staffed); }
.shut { fill: url(#p-shut); }
.service { fill: url(#p-service); }
.shut-back { fill: var(--unstaffed); }
.shut-line, .service-line { stroke: light-dark(#aaa698, #4d595d); fill: none; }
.change { fill: url(#p-change); }
.change-back { fill: var(--surface); }
.change-line { stroke: var(--bar-edge); stroke-width: 1.2; fill: none; }
.set-up { fill: var(--bar-edge); }
.print { fill: var(--bar-print); }
.waiting { fill: var(--bar-wait); }
.unload { fill: light-dark(#8b989b, #8d9a9d); }
.whole { fill: none; stroke: var(--bar-edge); }
.whole.committed, .whole.running { stroke-width: 2; }
.whole.is-late { stroke: var(--alarm); stroke-width: 2; }
.due path { fill: var(--surface); stroke: var(--ink); stroke-width: 1.4; }
.late path { fill: var(--alarm); }
.late-line { stroke: var(--alarm); stroke-width: 1.6; stroke-dasharray: 4 3; }

details { margin-top: 1rem; }
summary { cursor: pointer; padding: .35rem 0; color: var(--accent); font-weight: 600; }
.lines .inputs { color: var(--quiet); font-size: .88rem; }
.example { margin: 0; padding: .9rem 1.1rem 1rem; background: var(--surface); border: 1px solid var(--rule); border-radius: 6px; }
.example figcaption { color: var(--quiet); font-size: .87rem; }
.example .formula { font-family: Charter, Palatino, "Noto Serif", Georgia, serif; font-style: italic; font-size: 1.08rem; }
.example th, .example td { padding-inline: 0; }

#tasks nav ul { margin: 0 0 .8rem; }
.days-grid { columns: 44rem; column-gap: 1.1rem; }
.days-grid > table { margin: 1px 1px 1.1rem; width: calc(100% - 2px); break-inside: avoid; }
.tasks th, .tasks td { padding-block: .24rem; }
.tasks .tick { display: inline-block; width: .95rem; height: .95rem; border: 1.5px solid var(--bar-edge); border-radius: 2px; vertical-align: -2px; }
.tasks .what { width: 72%; }
@media (max-width: 34rem) { .tasks th, .tasks td { padding-inline: .4rem; } .tasks .time { white-space: normal; } .tasks tr > :nth-child(2) { display: none; } .tasks { font-size: .87rem; } .tasks .what { width: 52%; } }
.build-ref { color: var(--quiet); font-size: .85rem; }
.build-ref .id { font-weight: 400; }

.cautions { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(24rem, 100%), 1fr)); gap: .9rem 2rem; margin: 0; }
.cautions dt { font-weight: 650; }
.cautions dd { margin: .1rem 0 0; max-width: 65ch; }
.limits { padding-left: 1.1rem; max-width: 80ch; }
footer { margin-top: 2.5rem; padding-top: .8rem; border-top: 1px solid var(--rule); color: var(--quiet); font-size: .87rem; }

@page { size: A4 landscape; margin: 10mm 12mm; }
@media print {
  :root { color-scheme: light; --paper: #fff; --surface: #fff; }
  body { padding: 0; max-width: none; font-size: 9pt; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  nav, details, #week .lead { display: none; }
  .top { grid-template-columns: 1fr 42%; }
  .facts { grid-template-columns: repeat(4, 1fr); }
  .cost strong { font-size: 30pt; }
  section { margin-top: 1.1rem; }
  h2, h3, caption, .lead, .legend { break-after: avoid; }
  .lead { max-width: none; margin-bottom: .5rem; }
  tr, .card, figure, .facts, .columns > .scroll, #worth, .cautions div { break-inside: avoid; }
  thead { display: table-header-group; }
  tfoot { display: table-row-group; }
  .scroll { overflow: visible; border: 0; border-radius: 0; }
  .wide, .timeline { min-width: 0; }
  #week, #tasks, #orders, #costs { break-before: page; margin-top: 0; }
  th, td { padding: .18rem .5rem; }
  caption { padding: .3rem .5rem; }
  .timeline caption { display: none; }
  .timeline .row { height: 46px; }
  .timeline tbody th { padding-block: .1rem; }
  .timeline text { font-size: 10px; }
  .timeline .sub, .timeline .tick-hour { font-size: 9px; }
  .legend { display: block; font-size: 7.6pt; margin: .1rem 0 .2rem; }
  .legend ul { display: inline; }
  .legend li { margin-right: .7rem; }
  .timeline thead th, .timeline thead td { border-top: 0; }
  .columns { grid-template-columns: repeat(3, 1fr); gap: .8rem; }
  .columns .name { max-width: 9.5rem; }
  .bar-cell { min-width: 3rem; }
  #worth .columns { grid-template-columns: 1fr 1fr; }
  .cautions { grid-template-columns: repeat(3, 1fr); gap: .5rem 1.4rem; }
  .days-grid { columns: 1; }
  .tasks { font-size: 8.2pt; }
  .tasks th, .tasks td { padding-block: .06rem; line-height: 1.3; }
  .tasks .tick { width: 7.5pt; height: 7.5pt; vertical-align: -1px; }
  .days-grid > table { break-inside: auto; }
}
`;

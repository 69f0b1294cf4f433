/** Style of the drawing of a layer profile: colours for light and dark, then the kinds of marks. */
export const PROFILE_STYLE = `
svg { --paper: #fffefb; --ink: #1d282b; --quiet: #556164; --rule: #dedbd1; --window: #d5e8e4; --limit: #2f7a74; --line: #0b3f66; --wait: #8a6d1f; --alarm: #9a3412; font-family: system-ui, "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", sans-serif; }
@media (prefers-color-scheme: dark) { svg { --paper: #1d2325; --ink: #e8e6df; --quiet: #a6b1b2; --rule: #363f42; --window: #23433f; --limit: #6fbfb6; --line: #9ccdf0; --wait: #d9b75e; --alarm: #f4a27c; } }
.paper { fill: var(--paper); }
.title { font-size: 16px; font-weight: 650; fill: var(--ink); }
.sub, .label, .key { font-size: 13px; fill: var(--quiet); }
.key { fill: var(--ink); }
.tick { font-size: 12px; fill: var(--quiet); }
.axis { stroke: var(--quiet); fill: none; }
.grid { stroke: var(--rule); fill: none; }
.window { fill: var(--window); }
.limit { stroke: var(--limit); stroke-width: 1.5; stroke-dasharray: 5 3; fill: none; }
.time { stroke: var(--line); stroke-width: 2; fill: none; stroke-linejoin: round; }
.waiting { fill: url(#hatch); }
.hatch { stroke: var(--wait); stroke-width: 1.1; fill: none; }
.slow { fill: var(--alarm); }
`;

import type { ChartPoint, CrossoverChart, PowerLine } from "../purchase/crossover-chart.ts";
import type { Process } from "../shop/machine.ts";
import { type CaseChart, svg, tenth } from "./case-charts.ts";
import type { CaseView } from "./case-view.ts";
import { fixedText } from "./display.ts";
import { type Html, html, when } from "./html-escape.ts";
import { type LogScale, logScale } from "./log-scale.ts";

const WIDTH = 300;
const HEIGHT = 170;
const PLOT = { left: 46, top: 20, right: 290, bottom: 132 } as const;

/**
 * Cost per part against part mass, both logarithmic: parts by filament as rings, by pellets as squares, a trend through each,
 * and the mass at which the trends cross. Trends go as far as the parts do that they were drawn through.
 */
export function crossoverDrawing({ study: { chart }, shop }: CaseView): CaseChart {
  const words = {
    heading: "Cost of a part against its mass",
    words: chart.sentence,
    caption: chart.sentence,
  };
  if (chart.points.length === 0) return { ...words, drawing: html`` };
  const across = logScale(chart.points.map(({ massKg }) => massKg));
  const up = logScale(chart.points.map(({ costPerCopy }) => costPerCopy));
  const frame = {
    x: (massKg: number): number => tenth(PLOT.left + (PLOT.right - PLOT.left) * across.at(massKg)),
    y: (cost: number): number => tenth(PLOT.bottom - (PLOT.bottom - PLOT.top) * up.at(cost)),
  };
  const body = html`${axes(across, up, frame)}<text class="label" x="${(PLOT.left + PLOT.right) / 2}" y="${HEIGHT - 6}" text-anchor="middle">mass of a part, kg; cost of a copy upwards, ${shop.currency}</text>${trend(chart, "filament", frame)}${trend(chart, "pellet", frame)}${chart.points.map((point) => mark(point, frame))}${crossingLine(chart, frame)}${legend()}`;
  return { ...words, drawing: svg("crossover", [WIDTH, HEIGHT], words, body) };
}

interface Frame {
  readonly x: (massKg: number) => number;
  readonly y: (cost: number) => number;
}

function axes(across: LogScale, up: LogScale, { x, y }: Frame): Html {
  return html`${shownTicks(across).map(
    (tick) =>
      html`<path class="grid" d="M${x(tick)} ${PLOT.top}V${PLOT.bottom}"/><text class="tick" x="${x(tick)}" y="${PLOT.bottom + 15}" text-anchor="middle">${tickText(tick)}</text>`,
  )}${shownTicks(up).map(
    (tick) =>
      html`<path class="grid" d="M${PLOT.left} ${y(tick)}H${PLOT.right}"/><text class="tick" x="${PLOT.left - 5}" y="${y(tick) + 4}" text-anchor="end">${tickText(tick)}</text>`,
  )}`;
}

/** Where an axis has many names, those of whole powers of ten are enough. */
function shownTicks({ ticks }: LogScale): readonly number[] {
  return ticks.length <= MOST_TICKS ? ticks : ticks.filter((tick) => Number.isInteger(Math.log10(tick)));
}

const MOST_TICKS = 6;

function tickText(tick: number): string {
  return tick < 1 ? String(tick) : fixedText(tick, 0);
}

function mark({ process, massKg, costPerCopy }: ChartPoint, { x, y }: Frame): Html {
  const [left, top] = [x(massKg), y(costPerCopy)];
  return process === "filament"
    ? html`<circle class="by-filament" cx="${left}" cy="${top}" r="3.2"/>`
    : html`<rect class="by-pellet" x="${tenth(left - 2.8)}" y="${tenth(top - 2.8)}" width="5.6" height="5.6"/>`;
}

/** The power law of one process between the lightest and the heaviest part that it was drawn through. */
function trend(chart: CrossoverChart, process: Process, { x, y }: Frame): Html {
  const line = chart[process];
  const own = chart.points.filter((point) => point.process === process);
  const through = own.length === line?.points ? own : own.filter(({ partId }) => isBoth(chart, partId));
  const masses = through.map(({ massKg }) => massKg);
  return when(line !== null && masses.length > 1, () => {
    const from = Math.min(...masses);
    const to = Math.max(...masses);
    return html`<path class="trend-${process}" d="M${x(from)} ${y(costAt(line, from))}L${x(to)} ${y(costAt(line, to))}"/>`;
  });
}

function isBoth({ points }: CrossoverChart, partId: string): boolean {
  return new Set(points.filter((point) => point.partId === partId).map(({ process }) => process)).size > 1;
}

function costAt(line: PowerLine | null, massKg: number): number {
  return line === null ? 0 : line.factor * massKg ** line.exponent;
}

function crossingLine({ crossoverKg }: CrossoverChart, { x }: Frame): Html {
  return when(crossoverKg !== null, () => {
    const at = x(crossoverKg ?? 0);
    return html`<path class="crossing" d="M${at} ${PLOT.top}V${PLOT.bottom}"/><text class="tick" x="${at + 4}" y="${PLOT.bottom - 5}">${Number((crossoverKg ?? 0).toPrecision(2))} kg</text>`;
  });
}

function legend(): Html {
  return html`<circle class="by-filament" cx="${PLOT.left + 6}" cy="9" r="3.2"/><text class="tick" x="${PLOT.left + 14}" y="13">filament</text><rect class="by-pellet" x="${PLOT.left + 78}" y="6.2" width="5.6" height="5.6"/><text class="tick" x="${PLOT.left + 90}" y="13">pellets</text>`;
}

import { chanceText } from "./case-figures.ts";
import type { CaseView, LetteredStudy } from "./case-view.ts";
import { fixedText } from "./display.ts";
import { type Html, html } from "./html-escape.ts";
import { type AmountUnit, amountUnit, plainScale, type PlainScale } from "./plain-scale.ts";

/** A chart of the sheet with its words. */
export interface CaseChart {
  readonly heading: string;
  /** what is seen with its numbers, for who does not see the drawing */
  readonly words: string;
  /** what marks mean, below the drawing */
  readonly caption: string;
  readonly drawing: Html;
}

/** A drawing and the plot within it, px. */
const WIDTH = 300;
const HEIGHT = 170;
const PLOT = { left: 46, top: 8, right: 282, bottom: 132 } as const;

/** An SVG drawing of the sheet that says what it shows. */
export function svg(
  id: string,
  size: readonly [number, number],
  chart: Pick<CaseChart, "heading" | "words">,
  body: Html,
): Html {
  const [width, height] = size;
  return html`<svg class="chart" viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="${id}-t ${id}-d"><title id="${id}-t">${chart.heading}</title><desc id="${id}-d">${chart.words}</desc>${body}</svg>`;
}

/** Cash added up from the start, year by year, a line for each candidate. */
export function cashChart(view: CaseView, candidates: readonly LetteredStudy[]): CaseChart {
  const lines = candidates.map((own) => ({ own, sums: sumsOf(own.answer.flow.total) }));
  const all = lines.flatMap(({ sums }) => sums);
  const unit = amountUnit(all, view.shop.currency);
  const scale = plainScale(all, STEPS);
  const years = Math.max(1, ...lines.map(({ sums }) => sums.length - 1));
  const x = (year: number): number => tenth(PLOT.left + ((PLOT.right - PLOT.left) * year) / years);
  const y = (amount: number): number => tenth(PLOT.bottom - (PLOT.bottom - PLOT.top) * scale.at(amount));
  const words = {
    heading: "Cash by year, added up",
    words: `${lines.map(({ own, sums }) => `${own.letter} ends at ${view.money(sums.at(-1) ?? 0)} after ${own.answer.lifeYears} years`).join("; ")}; not discounted.`,
    caption: "Not discounted; each line ends with its candidate's life.",
  };
  const drawn = lines.map(({ own, sums }, place) => {
    const path = sums.map((sum, year) => `${year === 0 ? "M" : "L"}${x(year)} ${y(sum)}`).join("");
    const last = sums.length - 1;
    return html`<path class="line line-${place % LINE_LOOKS}" d="${path}"/><text class="letter-at" x="${x(last) + 4}" y="${y(sums[last] ?? 0) + 4}">${own.letter}</text>`;
  });
  const yearStep = Math.max(1, Math.ceil(years / MOST_YEAR_TICKS));
  const yearTicks = Array.from({ length: Math.floor(years / yearStep) + 1 }, (_, index) => index * yearStep);
  const body = html`${amountAxis(scale, unit, y)}${yearTicks.map((year) => html`<text class="tick" x="${x(year)}" y="${PLOT.bottom + 15}" text-anchor="middle">${year}</text>`)}<text class="label" x="${(PLOT.left + PLOT.right) / 2}" y="${HEIGHT - 6}" text-anchor="middle">year; ${unit.words} upwards</text>${drawn}`;
  return { ...words, drawing: svg("cash", [WIDTH, HEIGHT], words, body) };
}

const STEPS = 5;
const MOST_YEAR_TICKS = 10;
/** Looks of lines that the style knows. */
const LINE_LOOKS = 6;

function sumsOf(total: readonly number[]): number[] {
  let sum = 0;
  return total.map((cash) => (sum += cash));
}

function amountAxis(scale: PlainScale, { divisor }: AmountUnit, y: (amount: number) => number): Html {
  const decimals = (scale.high - scale.low) / divisor < STEPS ? 1 : 0;
  return html`${scale.ticks.map(
    (tick) =>
      html`<path class="${tick === 0 ? "zero" : "grid"}" d="M${PLOT.left} ${y(tick)}H${PLOT.right}"/><text class="tick" x="${PLOT.left - 5}" y="${y(tick) + 4}" text-anchor="end">${fixedText(tick / divisor, decimals)}</text>`,
  )}`;
}

/** Value over scenarios: from 1 of 10 to 9 of 10 a bar, the middle a mark, for each candidate. */
export function spreadChart(view: CaseView, candidates: readonly LetteredStudy[]): CaseChart {
  const all = candidates.flatMap(({ answer: { distribution } }) => [distribution.p10, distribution.p90]);
  const unit = amountUnit(all, view.shop.currency);
  const scale = plainScale(all, STEPS - 1);
  const left = 24;
  const x = (amount: number): number => tenth(left + (PLOT.right - left) * scale.at(amount));
  const row = (PLOT.bottom - PLOT.top) / Math.max(1, candidates.length);
  const words = {
    heading: "Value over scenarios of demand",
    words: `${candidates.map(({ letter, answer: { distribution } }) => `${letter} ${view.amount(distribution.p10)} to ${view.amount(distribution.p90)}, loses in ${chanceText(distribution.lossChance)}`).join("; ")}, ${view.shop.currency}.`,
    caption: "Bars hold the middle 8 of 10 scenarios, marks the middle one.",
  };
  const ticks = scale.ticks.map(
    (tick) =>
      html`<path class="${tick === 0 ? "zero" : "grid"}" d="M${x(tick)} ${PLOT.top}V${PLOT.bottom}"/><text class="tick" x="${x(tick)}" y="${PLOT.bottom + 15}" text-anchor="middle">${fixedText(tick / unit.divisor, 0)}</text>`,
  );
  const bars = candidates.map(({ letter, answer: { distribution } }, place) => {
    const middle = tenth(PLOT.top + row * (place + HALF));
    const half = Math.min(11, row / 3);
    const from = x(distribution.p10);
    const width = Math.max(2, tenth(x(distribution.p90) - from));
    return html`<text class="letter-at" x="4" y="${middle + 4}">${letter}</text><rect class="spread fill-${place % LINE_LOOKS}" x="${from}" y="${tenth(middle - half)}" width="${width}" height="${tenth(2 * half)}"/><path class="middle" d="M${x(distribution.p50)} ${tenth(middle - half - 3)}V${tenth(middle + half + 3)}"/>`;
  });
  const body = html`${ticks}<text class="label" x="${(left + PLOT.right) / 2}" y="${HEIGHT - 6}" text-anchor="middle">net present value, ${unit.words}</text>${bars}`;
  return { ...words, drawing: svg("spread", [WIDTH, HEIGHT], words, body) };
}

const HALF = 0.5;

/** A length for a drawing, px. Example: 12.345 gives 12.3. */
export function tenth(px: number): number {
  return Math.round(px * 10) / 10;
}

import type { TornadoBar } from "../purchase/tornado.ts";
import { type CaseChart, svg, tenth } from "./case-charts.ts";
import type { CaseView, LetteredStudy } from "./case-view.ts";
import { endText, INPUT_WORDS } from "./case-words.ts";
import { fixedText } from "./display.ts";
import { type Html, html } from "./html-escape.ts";
import { amountUnit, plainScale } from "./plain-scale.ts";

const WIDTH = 460;
const LEFT = 214;
const RIGHT = 438;
const TOP = 6;
const ROW = 17;
const MOST_BARS = 7;
/** So many are told with their numbers below the drawing. */
const TOLD = 3;

/** What the value of one candidate depends on: each input alone at its low and its high end, the widest first. */
export function tornadoChart(view: CaseView, own: LetteredStudy): CaseChart {
  const bars = own.tornado.slice(0, MOST_BARS);
  const base = own.answer.answer.netPresentValue;
  const all = [base, ...bars.flatMap(({ low, high }) => [low.value, high.value])];
  const unit = amountUnit(all, view.shop.currency);
  const scale = plainScale(all, STEPS);
  const x = (value: number): number => tenth(LEFT + (RIGHT - LEFT) * scale.at(value));
  const bottom = TOP + ROW * bars.length;
  const numbers = bars.map((bar) => barWords(bar, view));
  const words = {
    heading: `What the value of ${own.letter} depends on`,
    words: `${numbers.join("; ")}, ${view.shop.currency}.`,
    caption: `One input at a time, hollow at its first end, full at its second. ${numbers.slice(0, TOLD).join("; ")}.`,
  };
  const ticks = scale.ticks.map(
    (tick) =>
      html`<path class="${tick === 0 ? "zero" : "grid"}" d="M${x(tick)} ${TOP}V${bottom}"/><text class="tick" x="${x(tick)}" y="${bottom + 15}" text-anchor="middle">${fixedText(tick / unit.divisor, scale.high / unit.divisor < STEPS ? 1 : 0)}</text>`,
  );
  const drawn = bars.map((bar, place) => barRow(bar, TOP + ROW * place, base, x));
  const body = html`${ticks}${drawn}<path class="base" d="M${x(base)} ${TOP}V${bottom}"/><text class="label" x="${WIDTH}" y="${bottom + 31}" text-anchor="end">net present value, ${unit.words}; the line is the case as it is</text>`;
  return { ...words, drawing: svg("tornado", [WIDTH, bottom + 36], words, body) };
}

const STEPS = 5;

function barWords({ input, low, high, unit }: TornadoBar, { amount }: CaseView): string {
  return `${INPUT_WORDS[input]} ${endText(low.at, unit)}: ${amount(low.value)}, ${endText(high.at, unit)}: ${amount(high.value)}`;
}

/** The low end hatched, the high end plain, both from the case as it is. */
function barRow(
  { input, low, high, unit }: TornadoBar,
  top: number,
  base: number,
  x: (value: number) => number,
): Html {
  const piece = (value: number, look: string): Html => {
    const from = Math.min(x(value), x(base));
    return html`<rect class="${look}" x="${from}" y="${top + 2}" width="${Math.max(0.5, tenth(Math.abs(x(value) - x(base))))}" height="12"/>`;
  };
  return html`<text x="0" y="${top + 12}"><tspan class="input">${INPUT_WORDS[input]}</tspan> ${endText(low.at, unit)} to ${endText(high.at, unit)}</text>${piece(low.value, "end-low")}${piece(high.value, "end-high")}`;
}

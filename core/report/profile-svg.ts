import type { LayerTimes } from "../estimate/layer-times.ts";
import { fixedText } from "./display.ts";
import { type Html, html, nothing, verbatim, when } from "./html-escape.ts";
import { type LogScale, roundSteps } from "./log-scale.ts";
import { shortText } from "./plain-text.ts";
import { type ProfileBand, profileBands, profileScale } from "./profile-bands.ts";
import { profileFacts, windowText } from "./profile-facts.ts";
import { PROFILE_STYLE } from "./profile-style.ts";

/** A drawing of the layer times of one build. */
export interface ProfileDrawing {
  /** such as the part, copies and machine */
  readonly title: string;
  /** such as the feedstock and the bead */
  readonly subtitle: string;
  readonly times: LayerTimes;
}

/** The drawing and the plot within it, px. */
const WIDTH = 600;
const HEIGHT = 440;
const PLOT = { left: 64, top: 62, width: 512, height: 276 } as const;
const BOTTOM = PLOT.top + PLOT.height;
const RIGHT = PLOT.left + PLOT.width;
const TITLE_CHARS = 68;
const SUBTITLE_CHARS = 84;
/** A band is at least about so high, px. */
const BAND_PX = 1.5;

/**
 * Layer time over the height of one build as an SVG document (W3C, Scalable Vector Graphics): height upwards, layer time across
 * on a logarithmic axis, the window in which layers come out right shaded, waiting hatched, layers that last too long marked
 * by triangles as well as colour. It follows light and dark, and reads at 600 px.
 * Example: 100 layers of 24 s with a shortest of 30 s: a straight line at 30 s and a hatch from 24 s to it.
 */
export function profileSvg({ title, subtitle, times }: ProfileDrawing): string {
  const bands = profileBands(times, Math.floor(PLOT.height / BAND_PX));
  if (bands.length === 0) throw new RangeError("a build without layers cannot be drawn");
  const frame = frameOf(times, bands);
  const facts = profileFacts(times);
  const drawing = html`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" role="img" aria-labelledby="title facts">
<title id="title">${title}</title><desc id="facts">${[subtitle, ...facts].join(" ")}</desc>
<style>${verbatim(PROFILE_STYLE)}</style>
<defs><pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse"><path class="hatch" d="M-1 1l2-2M0 6l6-6M5 7l2-2"/></pattern></defs>
<rect class="paper" width="${WIDTH}" height="${HEIGHT}"/>
<text class="title" x="16" y="24">${shortText(title, TITLE_CHARS)}</text><text class="sub" x="16" y="43">${shortText(subtitle, SUBTITLE_CHARS)}</text>
${[windowBand(times, frame), axes(frame), waitingShape(bands, frame), timeLine(bands, frame), slowMarks(bands, frame), legend(times, bands, facts)]}
</svg>
`;
  return drawing.markup;
}

interface Frame {
  readonly scale: LogScale;
  readonly heightMm: number;
  x(seconds: number): number;
  y(heightMm: number): number;
}

function frameOf(times: LayerTimes, bands: readonly ProfileBand[]): Frame {
  const scale = profileScale(times, bands);
  const heightMm = bands.at(-1)?.toMm ?? 0;
  return {
    scale,
    heightMm,
    x: (seconds) => tenth(PLOT.left + PLOT.width * scale.at(seconds)),
    y: (mm) => tenth(BOTTOM - (PLOT.height * mm) / heightMm),
  };
}

function windowBand({ shortestLayerS, longestLayerS }: LayerTimes, { x }: Frame): Html {
  const from = shortestLayerS > 0 ? x(shortestLayerS) : PLOT.left;
  const to = Number.isFinite(longestLayerS) ? x(longestLayerS) : RIGHT;
  const edge = (at: number) => html`<path class="limit" d="M${at} ${PLOT.top}V${BOTTOM}"/>`;
  return html`<rect class="window" x="${from}" y="${PLOT.top}" width="${tenth(to - from)}" height="${PLOT.height}"/>${when(shortestLayerS > 0, () => edge(from))}${when(Number.isFinite(longestLayerS), () => edge(to))}`;
}

function axes({ scale, heightMm, x, y }: Frame): Html {
  const across = scale.ticks.map(
    (tick) =>
      html`<path class="grid" d="M${x(tick)} ${PLOT.top}V${BOTTOM}"/><text class="tick" x="${x(tick)}" y="${BOTTOM + 17}" text-anchor="middle">${fixedText(tick, tick < 1 ? 1 : 0)}</text>`,
  );
  const up = roundSteps(heightMm, HEIGHT_TICKS).map(
    (mm) =>
      html`<path class="grid" d="M${PLOT.left} ${y(mm)}H${RIGHT}"/><text class="tick" x="${PLOT.left - 8}" y="${tenth(y(mm) + 4)}" text-anchor="end">${fixedText(mm, Number.isInteger(mm) ? 0 : 1)}</text>`,
  );
  const middle = PLOT.top + PLOT.height / 2;
  return html`${across}${up}<path class="axis" d="M${PLOT.left} ${PLOT.top}V${BOTTOM}H${RIGHT}"/>
<text class="label" x="${PLOT.left + PLOT.width / 2}" y="${BOTTOM + 38}" text-anchor="middle">layer time, s (logarithmic)</text>
<text class="label" transform="translate(17 ${middle}) rotate(-90)" text-anchor="middle">height, mm</text>`;
}

const HEIGHT_TICKS = 6;

/** From what a layer takes by itself to what it takes with waiting. */
function waitingShape(bands: readonly ProfileBand[], { x, y }: Frame): Html {
  const pieces = bands
    .filter(({ waits }) => waits)
    .map(({ fromMm, toMm, busyS, slowestS }) => {
      const [left, right] = [x(busyS), x(slowestS)];
      return `M${left} ${y(fromMm)}H${right}V${y(toMm)}H${left}z`;
    });
  return pieces.length === 0 ? nothing : html`<path class="waiting" d="${pieces.join("")}"/>`;
}

/** The layer time from the bottom up; where layers of one band differ, a line to the quickest and the slowest. */
function timeLine(bands: readonly ProfileBand[], { x, y }: Frame): Html {
  const path = bands.map(({ fromMm, toMm, quickestS, slowestS }, index) => {
    const middle = y((fromMm + toMm) / 2);
    const [quick, slow] = [x(quickestS), x(slowestS)];
    const start = index === 0 ? `M${quick} ${y(fromMm)}` : `H${quick}`;
    return quick === slow ? `${start}V${y(toMm)}` : `${start}V${middle}H${slow}V${y(toMm)}`;
  });
  return html`<path class="time" d="${path.join("")}"/>`;
}

/** A triangle every few px beside the layers that last too long. */
function slowMarks(bands: readonly ProfileBand[], { x, y }: Frame): Html {
  let lastY = Infinity;
  const marks = bands
    .filter(({ tooSlow }) => tooSlow)
    .flatMap(({ fromMm, toMm, slowestS }) => {
      const middle = y((fromMm + toMm) / 2);
      if (lastY - middle < MARK_APART_PX) return [];
      lastY = middle;
      return [`M${tenth(x(slowestS) + 4)} ${middle}l9-5v10z`];
    });
  return marks.length === 0 ? nothing : html`<path class="slow" d="${marks.join("")}"/>`;
}

const MARK_APART_PX = 12;

/** What is seen, in words: only what occurs. */
function legend(times: LayerTimes, bands: readonly ProfileBand[], facts: readonly string[]): Html {
  const entries = [
    { shape: html`<path class="time" d="M0 6H22"/>`, words: "layer time" },
    { shape: html`<rect class="window" width="22" height="12"/>`, words: `window ${windowText(times)}` },
    ...(bands.some(({ waits }) => waits)
      ? [
          {
            shape: html`<rect class="waiting" width="22" height="12"/>`,
            words: "waiting for the layer below",
          },
        ]
      : []),
    ...(bands.some(({ tooSlow }) => tooSlow)
      ? [{ shape: html`<path class="slow" d="M7 6l9-5v10z"/>`, words: "too slow" }]
      : []),
  ];
  let left = 16;
  const drawn = entries.map(({ shape, words }) => {
    const at = left;
    left += LEGEND_GAP_PX + words.length * CHARACTER_PX;
    return html`<g transform="translate(${tenth(at)} ${BOTTOM + 56})">${shape}<text class="key" x="28" y="10.5">${words}</text></g>`;
  });
  return html`${drawn}<text class="key" x="16" y="${BOTTOM + 90}">${shortText(facts.at(-1) ?? "", SUBTITLE_CHARS)}</text>`;
}

const CHARACTER_PX = 6.6;
const LEGEND_GAP_PX = 52;

function tenth(px: number): number {
  return Math.round(px * 10) / 10;
}

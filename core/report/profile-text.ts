import type { LayerTimes } from "../estimate/layer-times.ts";
import { fixedText } from "./display.ts";
import type { LogScale } from "./log-scale.ts";
import { rightColumn, wrapped } from "./plain-text.ts";
import { type ProfileBand, profileBands, profileScale } from "./profile-bands.ts";
import { profileFacts, secondsText, windowText } from "./profile-facts.ts";

/** Rows of the plot and characters across it: all of it fits 80 columns. */
const ROWS = 18;
const ACROSS = 44;
const WIDTH = 78;

/**
 * The layer times of one build as plain text for a terminal of 80 columns: a row for each stretch of the height, the top first;
 * across it the layer time on a logarithmic scale, with the window between its limits drawn as dots.
 * Example: a row "450 mm  |   ~~~#·····|   54.0 s waits" waits until the window begins.
 */
export function profileText(times: LayerTimes): string[] {
  const bands = profileBands(times, ROWS).toReversed();
  const scale = profileScale(times, bands);
  const head = `Layer time over the height, window ${windowText(times)}`;
  return [
    ...wrapped(head, WIDTH),
    ...bands.map((band) => row(band, times, scale)),
    `${" ".repeat(11)}+${"-".repeat(ACROSS)}+`,
    `${" ".repeat(12)}${tickLine(scale)}`,
    "  # layer time  = quickest to slowest  ~ waiting  · window  ! too slow",
    ...profileFacts(times).flatMap((fact) => wrapped(fact, WIDTH)),
  ];
}

function row(band: ProfileBand, times: LayerTimes, scale: LogScale): string {
  const place = (seconds: number): number => Math.min(ACROSS - 1, Math.floor(scale.at(seconds) * ACROSS));
  const [busy, quick, slow] = [place(band.busyS), place(band.quickestS), place(band.slowestS)];
  const windowFrom = times.shortestLayerS > 0 ? place(times.shortestLayerS) : 0;
  const windowTo = Number.isFinite(times.longestLayerS) ? place(times.longestLayerS) : ACROSS - 1;
  const sign = (at: number): string => {
    if (at === slow) return band.tooSlow ? "!" : "#";
    if (at >= quick && at < slow) return "=";
    if (band.waits && at >= busy && at < slow) return "~";
    return at >= windowFrom && at <= windowTo ? "·" : " ";
  };
  const plot = Array.from({ length: ACROSS }, (_, at) => sign(at)).join("");
  const word = band.tooSlow ? " too slow" : band.waits ? " waits" : "";
  return `${rightColumn(`${heightText(band.toMm)} mm`, 11)}|${plot}|${rightColumn(secondsText(band.slowestS), 10)}${word}`;
}

function heightText(mm: number): string {
  return fixedText(mm, mm >= 100 ? 0 : 1);
}

/** Numbers of the axis, each under its place, left out where two would touch. */
function tickLine(scale: LogScale): string {
  let line = "";
  for (const tick of scale.ticks) {
    const text = fixedText(tick, tick < 1 ? 1 : 0);
    const start = Math.floor(scale.at(tick) * ACROSS) - Math.floor(text.length / 2);
    if (start < line.length + 2 && line !== "") continue;
    line = line.padEnd(Math.max(0, start)) + text;
  }
  return `${line} s`;
}

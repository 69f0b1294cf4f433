import { isAxisDirection, standsFor, vectorUp } from "./direction.ts";
import { type EntryFindings, type Finding, listed } from "./finding.ts";
import type { Part } from "./part.ts";
import { areaInside, type MeasuredStanding } from "./standing.ts";

/**
 * Findings about the directions in which a part was measured: the same one twice, one that cannot be, cuts that do not fit the
 * body, and directions that are wanted but were not measured. None for a part known by measures alone.
 */
export function standingFindings(say: EntryFindings, part: Part): Finding[] {
  const { standings } = part.geometry.measures;
  return [
    ...twiceFindings(say, standings ?? []),
    ...(standings ?? []).flatMap((standing) => oneFindings(say, part, standing)),
    ...directionFindings(say, part),
  ];
}

/** Measured bodies are never exact: a hundredth is within what cuts and rounding do. */
const SLACK = 1.01;
/** Cuts must add up to the volume within this share of it. */
const VOLUME_SHARE = 0.05;
/** Directions closer than this are the same. */
const SAME_DEG = 0.5;

function twiceFindings(say: EntryFindings, standings: readonly MeasuredStanding[]): Finding[] {
  const labels = standings.map(({ up }) => up);
  const twice = [...new Set(labels.filter((label, place) => labels.indexOf(label) !== place))];
  if (twice.length === 0) return [];
  const what = `the direction ${listed(twice)} was measured twice; measure the part again or remove one`;
  return [say.error("geometry/measures/standings", "standing-twice", what)];
}

/** The first thing that is wrong with one standing. */
function oneFindings(say: EntryFindings, part: Part, standing: MeasuredStanding): Finding[] {
  const wrong = wrongDirection(standing) ?? wrongCuts(part, standing) ?? wrongHull(part, standing);
  if (!wrong) return [];
  const what = `measured with ${standing.up} up, ${wrong}; measure the part again`;
  return [say.error(`geometry/measures/standings/${standing.up}`, "standing-absurd", what)];
}

function wrongDirection(standing: MeasuredStanding): string | null {
  const direction = vectorUp(standing);
  if (!direction) return "no vector says which way that is";
  const length = Math.hypot(direction.x, direction.y, direction.z);
  return length > 0 && Number.isFinite(length) ? null : "its vector has no length";
}

function wrongCuts(part: Part, { cuts, heightMm }: MeasuredStanding): string | null {
  const place = cuts.findIndex(({ zMm }, at) => zMm <= (cuts[at - 1]?.zMm ?? 0));
  if (place >= 0) return `cut ${place + 1} does not end above the one before`;
  if ((cuts.at(-1)?.zMm ?? 0) > heightMm * SLACK) return "its cuts go above its height";
  let volumeMm3 = 0;
  let bottomMm = 0;
  for (const { zMm, areaMm2 } of cuts) {
    volumeMm3 += areaMm2 * (zMm - bottomMm);
    bottomMm = zMm;
  }
  const trueMm3 = part.geometry.measures.volumeMm3;
  if (Math.abs(volumeMm3 - trueMm3) <= VOLUME_SHARE * trueMm3) return null;
  return `its cuts add up to ${Math.round(volumeMm3)} mm3, its volume is ${Math.round(trueMm3)} mm3`;
}

function wrongHull(
  part: Part,
  { hullMm, heightMm, cuts, overhangAreaMm2, supportVolumeMm3 }: MeasuredStanding,
) {
  const { areaMm2, boxMm } = part.geometry.measures;
  const hullMm2 = areaInside(hullMm);
  const widest = Math.max(...cuts.map((cut) => cut.areaMm2));
  if (widest > hullMm2 * SLACK) return "a cut is larger than its footprint's outline";
  if (heightMm > Math.hypot(boxMm.x, boxMm.y, boxMm.z) * SLACK) return "it is higher than its box is long";
  if (overhangAreaMm2 > areaMm2 * SLACK) return "more hangs over than it has surface";
  return supportVolumeMm3 > overhangAreaMm2 * heightMm * SLACK
    ? "its supports take more than what hangs over times its height"
    : null;
}

/** Own directions that cannot be, that differ from what was measured, and names that stand for nothing. */
function directionFindings(say: EntryFindings, part: Part): Finding[] {
  const own = part.buildDirections ?? [];
  const { standings } = part.geometry.measures;
  const findings = own.flatMap((direction) => {
    const { label } = direction;
    const field = `buildDirections/${label}`;
    if (own.filter((other) => other.label === label).length > 1)
      return [say.error(field, "direction-twice", `it has two directions ${label}; rename one`)];
    if (!(Math.hypot(direction.x, direction.y, direction.z) > 0))
      return [
        say.error(field, "direction-without-length", `its direction ${label} has no length; correct it`),
      ];
    const measured = standings?.find(({ up }) => up === label);
    if (measured?.vector && sameWay(measured.vector, direction)) return [];
    const what = `its direction ${label} was not measured so, so it is not tried; measure the part's mesh again`;
    return [say.warning(field, "direction-not-measured", what)];
  });
  const known = [...(standings ?? []).map(({ up }) => up), ...own.map(({ label }) => label)];
  const unknown = (part.orientations ?? []).filter(
    (name) => !isAxisName(name) && !known.some((label) => standsFor(name, label)),
  );
  if (unknown.length === 0) return findings;
  const what = `it may be built with ${listed(unknown)} up, which is none of its directions; correct the name or describe it`;
  return [...findings, say.warning("orientations", "unknown-direction", what)];
}

function isAxisName(name: string): boolean {
  return isAxisDirection(name.replace("+", ""));
}

function sameWay(a: Readonly<Record<"x" | "y" | "z", number>>, b: typeof a): boolean {
  const lengths = Math.hypot(a.x, a.y, a.z) * Math.hypot(b.x, b.y, b.z);
  const dot = (a.x * b.x + a.y * b.y + a.z * b.z) / lengths;
  return (Math.acos(Math.min(1, dot)) * 180) / Math.PI < SAME_DEG;
}

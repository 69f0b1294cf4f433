import { standingFindings } from "./check-standings.ts";
import { directionsUp, NEAR_VERTICAL_DEG } from "./directions-up.ts";
import { about, type EntryFindings, type Finding, listed } from "./finding.ts";
import type { Measures, Part } from "./part.ts";
import { plausibilityFindings } from "./plausible.ts";
import type { ShopIndex } from "./shop-index.ts";
import { PART_RANGES } from "./usual-ranges.ts";

/** Findings about parts: bodies that cannot exist, no direction left to build in, families nobody stocks. */
export function checkParts(index: ShopIndex): Finding[] {
  const families = new Set(index.shop.feedstocks.map((feedstock) => feedstock.family));
  return index.shop.parts.flatMap((part) => {
    const say = about("parts", part.id);
    return [
      ...bodyFindings(say, part.geometry.measures),
      ...layerFindings(say, part.geometry.measures),
      ...standingFindings(say, part),
      ...plausibilityFindings(say, part, PART_RANGES),
      ...orientationFindings(say, part),
      ...familyFindings(say, part, families),
      ...buyOutFindings(say, part),
    ];
  });
}

/** Measured bodies are never exact: a thousandth is within what meshes and rounding do. */
const SLACK = 1.001;

function bodyFindings(say: EntryFindings, measures: Measures): Finding[] {
  const { volumeMm3, areaMm2, overhangAreaMm2 } = measures;
  const field = "geometry/measures";
  const findings: Finding[] = [];
  const [x, y, z] = sidesMm(measures);
  if (volumeMm3 > x * y * z * SLACK) {
    findings.push(
      say.error(
        `${field}/volumeMm3`,
        "volume-above-box",
        `a volume of ${volumeMm3} mm3 does not go into its box of ${x * y * z} mm3; correct one`,
      ),
    );
  }
  const leastMm2 = leastSurfaceMm2(volumeMm3);
  if (areaMm2 * SLACK < leastMm2) {
    findings.push(
      say.error(
        `${field}/areaMm2`,
        "surface-below-sphere",
        `a surface of ${areaMm2} mm2 is less than a ball of its volume has, ${Math.ceil(leastMm2)} mm2; correct one`,
      ),
    );
  }
  if (overhangAreaMm2 !== undefined && overhangAreaMm2 > areaMm2) {
    findings.push(
      say.error(
        `${field}/overhangAreaMm2`,
        "overhang-above-surface",
        `${overhangAreaMm2} mm2 of overhang are more than its whole surface, ${areaMm2} mm2; correct one`,
      ),
    );
  }
  return findings;
}

/** Surface of a ball of a volume, the least any body of it can have: (36 pi V^2)^(1/3). Example: 1 mm3 gives 4.836 mm2. */
function leastSurfaceMm2(volumeMm3: number): number {
  return Math.cbrt(36 * Math.PI * volumeMm3 ** 2);
}

function layerFindings(say: EntryFindings, measures: Measures): Finding[] {
  const layers = measures.layers ?? [];
  const field = "geometry/measures/layers";
  const [x, y, z] = sidesMm(measures);
  const disorder = layers.findIndex((layer, place) => layer.zMm <= (layers[place - 1]?.zMm ?? -1));
  if (disorder >= 0) {
    return [
      say.error(
        field,
        "layers-out-of-order",
        `cut ${disorder + 1} is not above the one before; give the cuts from the bottom up`,
      ),
    ];
  }
  const outside = layers.findIndex((layer) => layer.zMm > z * SLACK || layer.areaMm2 > x * y * SLACK);
  if (outside >= 0) {
    return [
      say.error(
        field,
        "layer-outside-box",
        `cut ${outside + 1} lies outside its box or is larger than it; correct the cut or the box`,
      ),
    ];
  }
  return [];
}

function orientationFindings(say: EntryFindings, part: Part): Finding[] {
  if (directionsUp(part).length > 0) return [];
  const { orientations, loadAxis } = part;
  const along = loadAxis
    ? `along ${loadAxis}, its load axis, which must never be vertical; allow another axis`
    : `with ${listed(orientations ?? [])} up, and none of that was measured; allow another direction`;
  const named = orientations?.every((name) => name === loadAxis);
  const near = `in directions whose load is within ${NEAR_VERTICAL_DEG} degrees of vertical or that were not measured; allow another direction`;
  const where = !loadAxis || named ? along : near;
  return [say.error("orientations", "no-orientation", `it may only be built ${where}`)];
}

function familyFindings(say: EntryFindings, part: Part, known: ReadonlySet<string>): Finding[] {
  if (part.families.length === 0 || part.families.some((family) => known.has(family))) return [];
  const instead = part.buyOut ? "it can only be bought out" : "it cannot be made";
  return [
    say.warning(
      "families",
      "no-such-family",
      `no feedstock is of the family ${listed(part.families)}, so ${instead}; add one or correct the family`,
    ),
  ];
}

function buyOutFindings(say: EntryFindings, { buyOut }: Part): Finding[] {
  if (buyOut?.pricePerPiece !== 0) return [];
  return [
    say.warning(
      "buyOut",
      "costs-nothing",
      "having it made elsewhere costs nothing, so plans will always do that; enter the price",
    ),
  ];
}

function sidesMm({ boxMm }: Measures): [number, number, number] {
  return [boxMm.x, boxMm.y, boxMm.z];
}

import type { BodyFacts, StandingFacts } from "./body-facts.ts";
import { countText, fixedText } from "./display.ts";
import { rightColumn } from "./plain-text.ts";

/**
 * What was measured of one body as lines for a terminal, in mm and cm: size, volume, surface, whether it is closed, and a row for
 * each direction that may point up. Example: a box of 2 x 3 x 4 mm begins "  size       2.00 x 3.00 x 4.00 mm".
 */
export function bodyLines({ measures, standings }: BodyFacts): string[] {
  const { min, max } = measures.boxMm;
  const { x, y, z } = measures.centroidMm;
  const size = [max.x - min.x, max.y - min.y, max.z - min.z].map(lengthText).join(" x ");
  return [
    `  size       ${size} mm`,
    `  volume     ${fixedText(measures.volumeMm3 / MM3_PER_CM3, 3)} cm³`,
    `  surface    ${fixedText(measures.areaMm2 / MM2_PER_CM2, 2)} cm²`,
    `  centroid   ${[x, y, z].map(lengthText).join(", ")} mm`,
    `  closed     ${closedText(measures)}`,
    `  mesh       ${meshText(measures)}`,
    "  up        height mm   overhang mm²   space under it cm³",
    ...standings.map(standingLine),
  ];
}

function closedText({ closed, openEdges, misturnedEdges }: BodyFacts["measures"]): string {
  if (closed) return "yes";
  return `no, at ${countText(openEdges + misturnedEdges, "edge")}: the volume cannot be trusted`;
}

function meshText({ triangles, shells, cavities, degenerateTriangles }: BodyFacts["measures"]): string {
  const hollow = cavities > 0 ? ` (${countText(cavities, "cavity", "cavities")})` : "";
  const flat = degenerateTriangles > 0 ? `, ${fixedText(degenerateTriangles, 0)} of them without area` : "";
  return `${countText(triangles, "triangle")}${flat} in ${countText(shells, "shell")}${hollow}`;
}

function standingLine({ up, heightMm, overhangAreaMm2, supportVolumeMm3 }: StandingFacts): string {
  const columns = [
    `  ${up.padStart(2)}`,
    rightColumn(lengthText(heightMm), 15),
    rightColumn(fixedText(overhangAreaMm2, 1), 15),
    rightColumn(fixedText(supportVolumeMm3 / MM3_PER_CM3, 2), 21),
  ];
  return columns.join("");
}

function lengthText(mm: number): string {
  return fixedText(mm, 2);
}

const MM3_PER_CM3 = 1000;
const MM2_PER_CM2 = 100;

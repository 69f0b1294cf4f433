import type { Finding } from "../units/finding.ts";
import type { BodyMeasures } from "./measure.ts";

/**
 * What somebody should know about a measured body, as sentences. An open body is an error: its volume, and all that is
 * computed from it, cannot be trusted. Example: a box without one of its triangles: "bracket.stl: the surface is open: 3 edges
 * ...".
 */
export function bodyFindings(measures: BodyMeasures, name: string): Finding[] {
  const { inverted, misturnedEdges, shells, cavities, strayShells } = measures;
  const findings: Finding[] = [];
  const add = (severity: Finding["severity"], code: string, sentence: string): void => {
    findings.push({ severity, code, where: name, sentence: `${name}: ${sentence}` });
  };
  if (measures.openEdges > 0) add("error", "open-surface", openSentence(measures));
  if (misturnedEdges > 0) add("error", "misturned-triangles", misturnedSentence(misturnedEdges));
  if (measures.closed && !(measures.volumeMm3 > 0)) add("error", "no-volume", NO_VOLUME);
  if (inverted) add("warning", "inverted", INVERTED);
  if (strayShells > 0) add("error", "inverted-pieces", straySentence(strayShells));
  const pieces = shells - cavities;
  if (measures.closed && pieces > 1) add("warning", "several-pieces", piecesSentence(pieces));
  if (measures.crowdedEdges > 0) add("warning", "crowded-edges", crowdedSentence(measures.crowdedEdges));
  if (isVeryThin(measures)) add("warning", "very-thin", thinSentence(measures));
  return findings;
}

const NO_VOLUME = "the surface encloses no volume; check that the file holds a solid body.";

const INVERTED =
  "the whole surface is turned inside out; it was measured as if turned right. Export it again with outward normals to be sure.";

function openSentence({ openEdges, volumeMm3 }: BodyMeasures): string {
  const edges = openEdges === 1 ? "1 edge has" : `${openEdges} edges have`;
  const volume = `its volume (${said(volumeMm3)} mm³) and all that follows from it cannot be trusted`;
  return `the surface is open: ${edges} a triangle on one side only, so ${volume}. Close the surface in the CAD program and export it again.`;
}

function misturnedSentence(edges: number): string {
  const where = edges === 1 ? "at 1 edge" : `at ${edges} edges`;
  return `some triangles are turned the wrong way (${where}), so its volume cannot be trusted. Make all normals point outwards and export it again.`;
}

function straySentence(shells: number): string {
  const pieces = shells === 1 ? "1 piece is" : `${shells} pieces are`;
  return `${pieces} turned inside out and lie in no other piece, so their volume was taken off instead of added. Turn them outwards and export it again.`;
}

function piecesSentence(pieces: number): string {
  return `it is made of ${pieces} separate pieces. Where they overlap, volume counts twice: join them into one body, or give each a file of its own.`;
}

function crowdedSentence(edges: number): string {
  const where = edges === 1 ? "At 1 edge" : `At ${edges} edges`;
  return `${where} more than two triangles meet, as where two bodies touch along a line: the islands counted there may be joined or apart.`;
}

function thinSentence({ volumeMm3, areaMm2 }: BodyMeasures): string {
  return `it is very thin: ${said((2 * volumeMm3) / areaMm2)} mm thick on average, less than most nozzles lay. Check the unit of the file.`;
}

/** A wall thinner than this on average (2 V / A, both faces of a plate) is under the bead of a usual nozzle. */
const VERY_THIN_MM = 0.2;

function isVeryThin({ closed, volumeMm3, areaMm2 }: BodyMeasures): boolean {
  return closed && volumeMm3 > 0 && (2 * volumeMm3) / areaMm2 < VERY_THIN_MM;
}

/** Three digits are enough in a sentence. Example: 0.012345 gives 0.0123; 48000 gives 48000. */
function said(value: number): string {
  return String(value >= 1000 ? Math.round(value) : Number(value.toPrecision(3)));
}

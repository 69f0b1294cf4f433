import type { Mesh } from "../geometry/mesh.ts";
import { coarseMesh } from "./coarse-mesh.ts";
import { cutFaces, type DrawnFace, drawnFaces } from "./drawn-faces.ts";
import { type Html, html } from "./html-escape.ts";

/** Most triangles that are drawn. */
const MOST_FACES = 1500;
/** Cells along the longest side, tried from fine to coarse until few enough triangles face the eye. */
const CELLS = [256, 160, 112, 80, 56, 40, 28, 20, 14, 10] as const;
/** Longest side of the drawing, in its own units. */
const SIZE = 360;
const MARGIN = 4;
/** Sides are cut down to this share of the body's size where the count allows it. */
const LONGEST_SHARE = 1 / 14;
const SHADES = 10;

/**
 * A small drawing of a body as SVG that needs no style but the sheet's: seen from the front right and above, shaded, its edges
 * drawn, hidden parts covered by drawing what is nearer later (painter's order by the middles of triangles; Newell, Newell and
 * Sancha 1972, from memory). A large mesh is made coarser first, so a drawing has at most 1500 triangles. Null for a body without
 * triangles that face the eye. Example: a box of 60 x 40 x 20 mm shows three faces and nine edges.
 */
export function bodyDrawing(mesh: Mesh, label: string): Html | null {
  const faces = facesOf(mesh);
  if (faces.length === 0) return null;
  const frame = frameOf(faces);
  const cut = cutFaces(faces, frame.sizeMm * LONGEST_SHARE, MOST_FACES);
  const far = cut.toSorted((a, b) => nearMm(a) - nearMm(b));
  return html`<svg class="body" viewBox="0 0 ${frame.width} ${frame.height}" role="img" aria-label="${label}">${paths(far, frame)}</svg>`;
}

function facesOf(mesh: Mesh): DrawnFace[] {
  const exact = mesh.triangles.length / 3 <= 2 * MOST_FACES ? drawnFaces(mesh) : [];
  if (exact.length > 0 && exact.length <= MOST_FACES) return exact;
  for (const cells of CELLS) {
    const coarse = coarseMesh(mesh, cells);
    if (coarse.triangles.length / 3 > 3 * MOST_FACES) continue;
    const faces = drawnFaces(coarse);
    if (faces.length <= MOST_FACES) return faces;
  }
  return [];
}

interface Frame {
  readonly sizeMm: number;
  readonly width: number;
  readonly height: number;
  x(rightMm: number): number;
  y(upMm: number): number;
}

function frameOf(faces: readonly DrawnFace[]): Frame {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { corners } of faces) {
    for (const [x, y] of corners) {
      left = Math.min(left, x);
      right = Math.max(right, x);
      bottom = Math.min(bottom, y);
      top = Math.max(top, y);
    }
  }
  const sizeMm = Math.max(right - left, top - bottom);
  const perMm = SIZE / sizeMm;
  return {
    sizeMm,
    width: Math.ceil((right - left) * perMm) + 2 * MARGIN,
    height: Math.ceil((top - bottom) * perMm) + 2 * MARGIN,
    x: (rightMm) => round((rightMm - left) * perMm + MARGIN),
    y: (upMm) => round((top - upMm) * perMm + MARGIN),
  };
}

/** A tenth of a unit: half a pixel on paper. */
function round(value: number): number {
  return Number(value.toFixed(1));
}

function nearMm({ corners: [a, b, c] }: DrawnFace): number {
  return a[2] + b[2] + c[2];
}

/** Neighbours in the order that have one shade and no edge between them are one path. */
function paths(faces: readonly DrawnFace[], frame: Frame): Html[] {
  const made: Html[] = [];
  let shade = -1;
  let outline = "";
  const finish = (): void => {
    if (outline !== "") made.push(html`<path class="t${shade}" d="${outline}"/>`);
    outline = "";
  };
  for (const face of faces) {
    const own = Math.min(SHADES - 1, Math.floor(face.light * SHADES));
    if (own !== shade) finish();
    shade = own;
    outline += facePath(face, frame);
    const edges = edgePath(face, frame);
    if (edges === "") continue;
    finish();
    made.push(html`<path class="te" d="${edges}"/>`);
  }
  finish();
  return made;
}

function point([right, up]: DrawnFace["corners"][number], frame: Frame): string {
  return `${frame.x(right)} ${frame.y(up)}`;
}

function facePath({ corners: [a, b, c] }: DrawnFace, frame: Frame): string {
  return `M${point(a, frame)}L${point(b, frame)} ${point(c, frame)}Z`;
}

function edgePath({ corners, edges }: DrawnFace, frame: Frame): string {
  return edges
    .map((isEdge, side) =>
      isEdge ? `M${point(corners[side]!, frame)}L${point(corners[(side + 1) % 3]!, frame)}` : "",
    )
    .join("");
}

/** Style of drawings, from dark to light; for a sheet that follows light and dark. */
export const DRAWING_STYLE = `
.body { display: block; max-width: 100%; height: auto; }
.body path { stroke-width: .7; stroke-linejoin: round; }
${Array.from({ length: SHADES }, (_, shade) => shadeRule(shade)).join("\n")}
.te { fill: none; stroke: #33434a; }
`;

function shadeRule(shade: number): string {
  const grey = (dark: number, light: number): number =>
    Math.round(dark + ((light - dark) * shade) / (SHADES - 1));
  const colour = `rgb(${grey(74, 240)} ${grey(98, 244)} ${grey(106, 243)})`;
  return `.t${shade} { fill: ${colour}; stroke: ${colour}; }`;
}

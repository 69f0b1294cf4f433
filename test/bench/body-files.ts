import { zipSync } from "fflate";
import { seededRandom } from "../../core/units/random.ts";
import { binaryStlBytes } from "../../core/geometry/read-binary-stl.ts";
import { relationships } from "../fixtures/three-mf-bytes.ts";

const RING_MM = 100;
const TUBE_MM = 30;

/** A ring with a bumpy tube: closed, of about so many triangles, the bumps by a seed. */
interface BumpyRing {
  readonly around: number;
  readonly across: number;
  /** x, y, z of the point at (i, j), i around the ring, j around the tube; both wrap */
  readonly point: (i: number, j: number) => readonly [number, number, number];
}

function bumpyRing(triangles: number, seed: number): BumpyRing {
  const side = Math.max(3, Math.round(Math.sqrt(triangles / 2)));
  const random = seededRandom(seed);
  const bumpsMm = Float64Array.from({ length: side * side }, () => TUBE_MM + 0.01 * random());
  return {
    around: side,
    across: side,
    point: (i, j) => {
      const a = (2 * Math.PI * (i % side)) / side;
      const b = (2 * Math.PI * (j % side)) / side;
      const tubeMm = bumpsMm[(i % side) * side + (j % side)] ?? TUBE_MM;
      const fromAxisMm = RING_MM + tubeMm * Math.cos(b);
      return [fromAxisMm * Math.cos(a), fromAxisMm * Math.sin(a), tubeMm * Math.sin(b)];
    },
  };
}

/** A binary STL of a bumpy ring of about so many triangles. */
export function ringStl(triangles: number, seed: number): Uint8Array {
  const { around, across, point } = bumpyRing(triangles, seed);
  const count = 2 * around * across;
  const bytes = new Uint8Array(binaryStlBytes(count));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, count, true);
  let at = 84;
  const put = (...corners: readonly (readonly [number, number, number])[]): void => {
    at += 12;
    for (const corner of corners) {
      for (const coordinate of corner) {
        view.setFloat32(at, coordinate, true);
        at += 4;
      }
    }
    at += 2;
  };
  for (let i = 0; i < around; i++) {
    for (let j = 0; j < across; j++) {
      put(point(i, j), point(i + 1, j), point(i + 1, j + 1));
      put(point(i, j), point(i + 1, j + 1), point(i, j + 1));
    }
  }
  return bytes;
}

/** Bytes of XML of one triangle and its half vertex, as `ringThreeMf` writes them. */
const XML_BYTES_PER_TRIANGLE = 67;

/** A 3MF of a bumpy ring whose model has about so many bytes of XML. */
export function ringThreeMf(
  xmlBytes: number,
  seed: number,
): { readonly bytes: Uint8Array; readonly xmlBytes: number } {
  const { around, across, point } = bumpyRing(xmlBytes / XML_BYTES_PER_TRIANGLE, seed);
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<model xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02" unit="millimeter"><resources>',
    '<object id="1" type="model"><mesh><vertices>',
  ];
  const vertex = (i: number, j: number): number => (i % around) * across + (j % across);
  for (let i = 0; i < around; i++) {
    for (let j = 0; j < across; j++) {
      const [x, y, z] = point(i, j).map((coordinate) => coordinate.toFixed(5));
      lines.push(`<vertex x="${x}" y="${y}" z="${z}" />`);
    }
  }
  lines.push("</vertices><triangles>");
  for (let i = 0; i < around; i++) {
    for (let j = 0; j < across; j++) {
      const [a, b, c, d] = [vertex(i, j), vertex(i + 1, j), vertex(i + 1, j + 1), vertex(i, j + 1)];
      lines.push(`<triangle v1="${a}" v2="${b}" v3="${c}" />`, `<triangle v1="${a}" v2="${c}" v3="${d}" />`);
    }
  }
  lines.push('</triangles></mesh></object></resources><build><item objectid="1" /></build></model>');
  const xml = Buffer.from(lines.join("\n"), "latin1");
  const rels = Buffer.from(relationships("/3D/3dmodel.model"), "latin1");
  return { bytes: zipSync({ "_rels/.rels": rels, "3D/3dmodel.model": xml }), xmlBytes: xml.length };
}

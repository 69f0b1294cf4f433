import { asciiOf } from "./decimal.ts";
import { binaryStlBytes, claimedTriangles } from "./read-binary-stl.ts";

/** What the bytes of a file are, whatever its name says. */
export type FileKind =
  | { readonly kind: "binary STL" | "package" }
  | { readonly kind: "ASCII STL"; readonly start: number }
  | { readonly kind: "cut binary STL"; readonly claimed: number }
  /** `what` names it in words such as "a PNG picture" */
  | { readonly kind: "other"; readonly what: string };

/** Stands for any byte in a signature. */
const ANY = -1;

const SIGNATURES: readonly (readonly [what: string, first: readonly number[]])[] = [
  ["a PNG picture", [0x89, 0x50, 0x4e, 0x47]],
  ["a JPEG picture", [0xff, 0xd8, 0xff]],
  ["a GIF picture", [0x47, 0x49, 0x46, 0x38]],
  ["a TIFF picture", [0x49, 0x49, 0x2a, 0x00]],
  ["a TIFF picture", [0x4d, 0x4d, 0x00, 0x2a]],
  ["a BMP picture", [0x42, 0x4d, ANY, ANY, ANY, ANY, 0, 0, 0, 0]],
  ["a WebP picture or a sound", [0x52, 0x49, 0x46, 0x46]],
  ["a PDF document", [0x25, 0x50, 0x44, 0x46]],
  ["a gzip archive", [0x1f, 0x8b, 0x08]],
  ["a 7z archive", [0x37, 0x7a, 0xbc, 0xaf]],
  ["a RAR archive", [0x52, 0x61, 0x72, 0x21]],
  ["a STEP model", [0x49, 0x53, 0x4f, 0x2d, 0x31, 0x30, 0x33, 0x30, 0x33]],
  ["a PLY model", [0x70, 0x6c, 0x79]],
  ["a binary glTF model", [0x67, 0x6c, 0x54, 0x46]],
  ["a text in XML", [0x3c, 0x3f, 0x78, 0x6d, 0x6c]],
  ["a text in UTF-16", [0xff, 0xfe]],
  ["a text in UTF-16", [0xfe, 0xff]],
];
const PACKAGES: readonly (readonly number[])[] = [
  [0x50, 0x4b, 0x03, 0x04],
  [0x50, 0x4b, 0x05, 0x06],
];
const BYTE_ORDER_MARK = [0xef, 0xbb, 0xbf];
const LOOKED_THROUGH = 512;

/**
 * Tells the kind of a body's file by its content. Binary STL goes by size, since its first 80 bytes may be anything, "solid"
 * too: if the triangles that it claims end exactly at its end, nothing else is asked. Example: 684 bytes of which the four at
 * 80 say 12 are a binary STL, and so are 700; 600 are one that was cut.
 */
export function fileKind(bytes: Uint8Array): FileKind {
  const claimed = claimedTriangles(bytes);
  const stlBytes = claimed === null ? Infinity : binaryStlBytes(claimed);
  if (claimed !== null && claimed > 0 && stlBytes === bytes.length) return { kind: "binary STL" };
  if (PACKAGES.some((first) => begins(bytes, first))) return { kind: "package" };
  const signature = SIGNATURES.find(([, first]) => begins(bytes, first));
  if (signature) return { kind: "other", what: signature[0] };
  const start = textStart(bytes);
  if (start !== null) return { kind: "ASCII STL", start };
  if (claimed !== null && stlBytes <= bytes.length) return { kind: "binary STL" };
  if (isText(bytes)) return { kind: "other", what: "a text of another kind" };
  if (claimed === null) return { kind: "other", what: `a file of only ${bytes.length} bytes` };
  return { kind: "cut binary STL", claimed };
}

/** Where an ASCII STL's first word begins, or null where the bytes are none. */
function textStart(bytes: Uint8Array): number | null {
  let at = begins(bytes, BYTE_ORDER_MARK) ? BYTE_ORDER_MARK.length : 0;
  while (at < bytes.length && (bytes[at] ?? 0) <= 0x20 && bytes[at] !== 0) at++;
  return /^solid\s?$/i.test(asciiOf(bytes, at, at + 6)) && isText(bytes) ? at : null;
}

/** True where the first bytes hold no control characters but spaces, tabs and line ends. */
function isText(bytes: Uint8Array): boolean {
  return bytes.subarray(0, LOOKED_THROUGH).every((byte) => byte >= 0x20 || (byte >= 0x09 && byte <= 0x0d));
}

function begins(bytes: Uint8Array, first: readonly number[]): boolean {
  return first.every((byte, place) => byte === ANY || bytes[place] === byte);
}

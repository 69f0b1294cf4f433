import { Inflate } from "fflate";
import { type Reading, ReadStop } from "./body-reading.ts";
import { crc32 } from "./crc32.ts";
import { damagedZip, type ZipEntry } from "./zip-directory.ts";

const HEADER_SIGNATURE = 0x04034b50;
const HEADER_BYTES = 30;
const STORED = 0;
const DEFLATED = 8;
/** Packed bytes unpacked at one go: they become at most a thousand times as many. */
const PIECE_BYTES = 16_384;
/** Unpacked bytes handed on at one go, so that who takes them can stop soon. */
const HANDED_BYTES = 65_536;
/** The ratio is judged once a part has unpacked to so much: small parts harm nobody. */
const RATIO_FROM_BYTES = 10_000_000;
/** Packed pieces in a row that give nothing: a stored block, at most 64 KB, comes out once it is whole. */
const MOST_SILENT_PIECES = 8;

/**
 * Unpacks one part of a ZIP and hands it on in pieces, none of which is kept. Stops as soon as it is larger than the
 * directory or the limits say, and at the end when size or check sum (CRC-32) differ.
 */
export function unpackEntry(
  bytes: Uint8Array,
  entry: ZipEntry,
  reading: Reading,
  take: (piece: Uint8Array) => void,
): void {
  const packed = packedBytesOf(bytes, entry);
  let unpackedBytes = 0;
  let crc = 0;
  const onPiece = (piece: Uint8Array, packedSoFar: number): void => {
    unpackedBytes += piece.length;
    if (unpackedBytes > entry.unpackedBytes) wrongSize(entry);
    refuseRatio(unpackedBytes, packedSoFar, entry, reading);
    crc = crc32(crc, piece);
    for (let at = 0; at < piece.length; at += HANDED_BYTES) take(piece.subarray(at, at + HANDED_BYTES));
  };
  if (entry.method === STORED) passThrough(packed, onPiece);
  else inflate(packed, onPiece);
  if (unpackedBytes !== entry.unpackedBytes) wrongSize(entry);
  if (crc !== entry.crc) {
    throw new ReadStop(
      "damaged-package",
      `its part ${entry.name} does not have the check sum that the package gives for it; the file is damaged, save or copy it again`,
    );
  }
}

/** Stops before anything is unpacked when the directory already announces more, all parts together, than the limit. */
export function refuseUnpacked(entries: readonly ZipEntry[], { limits }: Reading): void {
  const announced = entries.reduce((sum, { unpackedBytes }) => sum + unpackedBytes, 0);
  if (announced <= limits.maxUnpackedBytes) return;
  throw new ReadStop(
    "unpacks-too-large",
    `it unpacks to ${announced} bytes, above the ${limits.maxUnpackedBytes} that are read; save it with fewer triangles`,
  );
}

function packedBytesOf(bytes: Uint8Array, entry: ZipEntry): Uint8Array {
  const { headerAt, packedBytes, name } = entry;
  if (entry.isEncrypted) {
    throw new ReadStop("encrypted", `its part ${name} is encrypted; save it without a password`);
  }
  if (entry.method !== STORED && entry.method !== DEFLATED) {
    throw new ReadStop(
      "unknown-packing",
      `its part ${name} is packed by method ${entry.method} of ZIP, of which only 0 and 8 are read; save it again`,
    );
  }
  if (headerAt + HEADER_BYTES > bytes.length) damagedZip();
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (view.getUint32(headerAt, true) !== HEADER_SIGNATURE) damagedZip();
  const at =
    headerAt + HEADER_BYTES + view.getUint16(headerAt + 26, true) + view.getUint16(headerAt + 28, true);
  if (at + packedBytes > bytes.length) damagedZip();
  return bytes.subarray(at, at + packedBytes);
}

function refuseRatio(unpacked: number, packed: number, { name }: ZipEntry, { limits }: Reading): void {
  if (unpacked < RATIO_FROM_BYTES || unpacked <= packed * limits.maxUnpackedRatio) return;
  throw new ReadStop(
    "unpacks-too-large",
    `its part ${name} unpacks to more than ${limits.maxUnpackedRatio} times its packed size, which no model does; do not use this file`,
  );
}

function passThrough(packed: Uint8Array, take: (piece: Uint8Array, packedSoFar: number) => void): void {
  for (let at = 0; at < packed.length; at += PIECE_BYTES) {
    const piece = packed.subarray(at, at + PIECE_BYTES);
    take(piece, at + piece.length);
  }
}

function inflate(packed: Uint8Array, take: (piece: Uint8Array, packedSoFar: number) => void): void {
  let end = 0;
  let silent = 0;
  const inflater = new Inflate((piece) => {
    silent = piece.length > 0 ? 0 : silent + 1;
    take(piece, end);
  });
  for (let at = 0; at < packed.length; at = end) {
    end = Math.min(packed.length, at + PIECE_BYTES);
    push(inflater, packed.subarray(at, end), end === packed.length);
    if (silent > MOST_SILENT_PIECES) damagedZip();
  }
}

/** The package throws an error with a number as its code where the data are no deflated stream. */
function push(inflater: Inflate, piece: Uint8Array, isLast: boolean): void {
  try {
    inflater.push(piece, isLast);
  } catch (problem) {
    if (problem instanceof ReadStop || !isUnpackError(problem)) throw problem;
    damagedZip();
  }
}

function isUnpackError(problem: unknown): boolean {
  return problem instanceof Error && "code" in problem && typeof problem.code === "number";
}

function wrongSize({ name }: ZipEntry): never {
  throw new ReadStop(
    "damaged-package",
    `its part ${name} does not unpack to the size that the package gives for it; the file is damaged, save or copy it again`,
  );
}

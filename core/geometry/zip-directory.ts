import { strFromU8 } from "fflate";
import { ReadStop } from "./body-reading.ts";

/** One part of a ZIP as its directory lists it. */
export interface ZipEntry {
  readonly name: string;
  readonly isEncrypted: boolean;
  /** 0 stored, 8 deflated; others are not read */
  readonly method: number;
  readonly crc: number;
  readonly packedBytes: number;
  readonly unpackedBytes: number;
  /** where its local header begins */
  readonly headerAt: number;
}

const END_SIGNATURE = 0x06054b50;
const END_BYTES = 22;
const LONGEST_COMMENT = 0xffff;
const LOCATOR_SIGNATURE = 0x07064b50;
const LOCATOR_BYTES = 20;
const END64_SIGNATURE = 0x06064b50;
const END64_BYTES = 56;
const ENTRY_SIGNATURE = 0x02014b50;
const ENTRY_BYTES = 46;
const LONG_FIELD_TAG = 1;
/** A 32-bit field with this value has its true value in the 64-bit extra field. */
const SEE_LONG_FIELD = 0xffffffff;

/**
 * Lists the parts of a ZIP by the directory at its end, 64-bit fields included (PKWARE, APPNOTE.TXT 6.3; from memory). The
 * packages for ZIP give neither the check sums nor the places of parts, and when read as a stream they must guess where parts
 * of unannounced length end; so only unpacking itself is left to the package.
 */
export function readZipDirectory(bytes: Uint8Array): ZipEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = directoryEnd(view);
  const { directoryAt, count } = directoryPlace(view, end);
  const entries: ZipEntry[] = [];
  let at = directoryAt;
  for (let place = 0; place < count; place++) {
    if (at + ENTRY_BYTES > end || view.getUint32(at, true) !== ENTRY_SIGNATURE) damagedZip();
    const nameBytes = view.getUint16(at + 28, true);
    const extraBytes = view.getUint16(at + 30, true);
    const next = at + ENTRY_BYTES + nameBytes + extraBytes + view.getUint16(at + 32, true);
    if (next > end) damagedZip();
    entries.push(entryAt(bytes, view, at, nameBytes, extraBytes));
    at = next;
  }
  return entries;
}

function directoryEnd(view: DataView): number {
  const last = view.byteLength - END_BYTES;
  for (let at = last; at >= Math.max(0, last - LONGEST_COMMENT); at--) {
    if (view.getUint32(at, true) === END_SIGNATURE) return at;
  }
  return damagedZip();
}

function directoryPlace(view: DataView, end: number): { directoryAt: number; count: number } {
  const locator = end - LOCATOR_BYTES;
  const isLong = locator >= 0 && view.getUint32(locator, true) === LOCATOR_SIGNATURE;
  if (!isLong) return { directoryAt: view.getUint32(end + 16, true), count: view.getUint16(end + 10, true) };
  const at = longNumber(view, locator + 8);
  if (at + END64_BYTES > end || view.getUint32(at, true) !== END64_SIGNATURE) damagedZip();
  return { directoryAt: longNumber(view, at + 48), count: longNumber(view, at + 32) };
}

function entryAt(
  bytes: Uint8Array,
  view: DataView,
  at: number,
  nameBytes: number,
  extraBytes: number,
): ZipEntry {
  const extraAt = at + ENTRY_BYTES + nameBytes;
  const long = longFields(view, extraAt, extraAt + extraBytes);
  const field = (value: number): number => (value === SEE_LONG_FIELD ? long() : value);
  const unpackedBytes = field(view.getUint32(at + 24, true));
  const packedBytes = field(view.getUint32(at + 20, true));
  return {
    name: strFromU8(bytes.subarray(at + ENTRY_BYTES, extraAt)),
    isEncrypted: (view.getUint16(at + 8, true) & 1) === 1,
    method: view.getUint16(at + 10, true),
    crc: view.getUint32(at + 16, true),
    packedBytes,
    unpackedBytes,
    headerAt: field(view.getUint32(at + 42, true)),
  };
}

/** Gives the 64-bit values of an entry's extra field one after the other. */
function longFields(view: DataView, from: number, to: number): () => number {
  let at = from;
  while (at + 4 <= to && view.getUint16(at, true) !== LONG_FIELD_TAG) at += 4 + view.getUint16(at + 2, true);
  at += 4;
  return () => {
    if (at + 8 > to) damagedZip();
    at += 8;
    return longNumber(view, at - 8);
  };
}

function longNumber(view: DataView, at: number): number {
  return Number(view.getBigUint64(at, true));
}

/** Ends the reading of a ZIP whose structure does not hold. */
export function damagedZip(): never {
  throw new ReadStop(
    "damaged-package",
    "its ZIP package is damaged or cut short; save or copy the file again",
  );
}

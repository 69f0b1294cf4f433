/** A message with the bytes that belong to it. */
export interface ByteFrame {
  readonly message: unknown;
  /** null where the message has none, such as a failure */
  readonly bytes: Uint8Array | null;
}

const HEAD_BYTES = 5;

/**
 * Packs a message and bytes into one body: one byte that says whether bytes follow, the length of the JSON (32 bits, little
 * endian), the JSON, the bytes. Example: {} with 3 bytes gives 1 + 4 + 2 + 3 = 10 bytes.
 */
export function packFrame({ message, bytes }: ByteFrame): Uint8Array<ArrayBuffer> {
  const json = new TextEncoder().encode(JSON.stringify(message));
  const body = new Uint8Array(HEAD_BYTES + json.length + (bytes?.length ?? 0));
  const view = new DataView(body.buffer);
  view.setUint8(0, bytes ? 1 : 0);
  view.setUint32(1, json.length, true);
  body.set(json, HEAD_BYTES);
  if (bytes) body.set(bytes, HEAD_BYTES + json.length);
  return body;
}

/** Opens what `packFrame` made; null where it is none. */
export function openFrame(body: Uint8Array): ByteFrame | null {
  if (body.length < HEAD_BYTES) return null;
  const view = new DataView(body.buffer, body.byteOffset, body.byteLength);
  const end = HEAD_BYTES + view.getUint32(1, true);
  if (end > body.length) return null;
  try {
    const message: unknown = JSON.parse(new TextDecoder().decode(body.subarray(HEAD_BYTES, end)));
    // A copy, since the body may be a Buffer whose slices share its memory.
    return { message, bytes: view.getUint8(0) === 1 ? new Uint8Array(body.subarray(end)) : null };
  } catch {
    return null;
  }
}

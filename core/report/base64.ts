/** Bytes as base64 text (RFC 4648, section 4). Example: the bytes of "foob" give "Zm9vYg==". */
export function base64(bytes: readonly number[]): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += 3) {
    const group = ((bytes[at] ?? 0) << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0);
    const chars = [18, 12, 6, 0].map((shift) => ALPHABET[(group >> shift) & 0x3f]);
    const used = Math.min(bytes.length - at, 3) + 1;
    text += chars.slice(0, used).join("") + "=".repeat(4 - used);
  }
  return text;
}

const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

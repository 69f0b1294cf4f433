import { utf8Bytes } from "./plain-text.ts";
import { sha256 } from "./sha256.ts";

/**
 * A UUID made from names alone: version 8 by RFC 9562 (Davis, Peabody & Leach 2024), name-based with SHA-256 as in its
 * appendix B.2. The same names give the same UUID on every machine. Names are joined by a line break.
 */
export function uuidOfNames(names: readonly string[]): string {
  return namespacedUuid(CALENDAR_NAMESPACE, names.join("\n"));
}

/**
 * The same for one name in a namespace. Example: the DNS namespace 6ba7b810-9dad-11d1-80b4-00c04fd430c8 and
 * "www.example.com" give 5c146b14-3c52-8afd-938a-375d0df1fbf6 (RFC 9562, appendix B.2).
 */
export function namespacedUuid(namespace: string, name: string): string {
  const hash = sha256([...uuidBytes(namespace), ...utf8Bytes(name)]).slice(0, 16);
  hash[6] = ((hash[6] ?? 0) & 0x0f) | 0x80;
  hash[8] = ((hash[8] ?? 0) & 0x3f) | 0x80;
  const hex = hash.map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}

/** A random UUID drawn once for the calendar entries of this program; it must never change. */
const CALENDAR_NAMESPACE = "0f9d3c52-7f0a-4b1e-9a53-6f2b8d1c47e0";

function uuidBytes(uuid: string): number[] {
  const hex = uuid.replaceAll("-", "");
  return Array.from({ length: 16 }, (_, index) => Number.parseInt(hex.slice(2 * index, 2 * index + 2), 16));
}

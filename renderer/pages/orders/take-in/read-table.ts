import Papa from "papaparse";
import { readTabText } from "../../../components/grid/tab-text.ts";
import type { Format } from "../../../format/format.ts";

/** A table as texts, its first row being the heads of its columns. */
export interface Table {
  readonly name: string;
  readonly rows: readonly (readonly string[])[];
  /** of a text file; null where the file says itself */
  readonly encoding: string | null;
}

/** Encodings of files that programs still write; the first two are told apart by themselves. */
export const ENCODINGS = [
  { value: "utf-8", label: "UTF-8" },
  { value: "windows-1252", label: "Western (Windows-1252)" },
  { value: "utf-16le", label: "UTF-16" },
  { value: "windows-1250", label: "Central European (Windows-1250)" },
  { value: "windows-1251", label: "Cyrillic (Windows-1251)" },
  { value: "macintosh", label: "Western (Macintosh)" },
  { value: "shift_jis", label: "Japanese (Shift JIS)" },
] as const;

/**
 * Reads a CSV, TSV or XLSX file. An encoding is guessed unless one is given: a mark at the start, else UTF-8 where the bytes
 * are that, else Windows-1252. Throws an Error with a sentence where the file cannot be read.
 */
export async function readTable(file: File, encoding: string | null, format: Format): Promise<Table> {
  if (/\.xlsx$/i.test(file.name))
    return { name: file.name, rows: await readWorkbook(file, format), encoding: null };
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (isZip(bytes))
    throw new Error(`${file.name} is a packed file: give it the ending .xlsx if it is a workbook.`);
  const used = encoding ?? guessEncoding(bytes);
  const text = new TextDecoder(used).decode(bytes);
  return { name: file.name, rows: readText(text), encoding: used };
}

/** Reads pasted text. */
export function readPasted(text: string): Table {
  return { name: "pasted text", rows: withoutEmpty(readTabText(text)), encoding: null };
}

/** Reads the text of a CSV file; what parts its columns is guessed. */
export function readText(text: string): string[][] {
  const { data } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ""), {
    delimitersToGuess: [",", ";", "\t", "|"],
    skipEmptyLines: "greedy",
  });
  return data;
}

/** Encoding by the mark at the start, else by whether the bytes are UTF-8. Example: [0xE9] gives "windows-1252". */
export function guessEncoding(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return "utf-8";
  } catch {
    return "windows-1252";
  }
}

function isZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3;
}

/** The first sheet of a workbook. Numbers are written as the format writes them, so that they are read as the same again. */
async function readWorkbook(file: File, format: Format): Promise<string[][]> {
  const { readSheet } = await import("read-excel-file/browser");
  try {
    const rows = await readSheet(file);
    return withoutEmpty(rows.map((row) => row.map((cell) => cellText(cell, format))));
  } catch {
    throw new Error(`${file.name} is no XLSX workbook that can be read: save it as XLSX or CSV again.`);
  }
}

function cellText(cell: unknown, format: Format): string {
  if (cell === null || cell === undefined) return "";
  if (typeof cell === "number") return format.edited(cell);
  if (typeof cell === "boolean") return cell ? "yes" : "no";
  // Workbooks have no time zone: the library gives the time on the sheet as if it were UTC.
  if (cell instanceof Date)
    return cell
      .toISOString()
      .slice(0, 16)
      .replace("T", " ")
      .replace(/ 00:00$/, "");
  return String(cell);
}

function withoutEmpty(rows: readonly string[][]): string[][] {
  return rows.filter((row) => row.some((text) => text.trim() !== ""));
}

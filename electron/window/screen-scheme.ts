import { randomBytes } from "node:crypto";
import { PAGE_HEADERS } from "../page-headers.ts";
import { screenFile } from "../screen-files.ts";

/** The page comes from here, not from file://, so that it has an origin of its own. */
export const SCHEME = "app";
export const SCREEN_ORIGIN = `${SCHEME}://screen`;

/** A sheet may style itself and nothing more. */
const SHEET_POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

/** Sheets that are being printed, by a name that cannot be guessed. */
export class Sheets {
  private readonly sheets = new Map<string, string>();

  /** Keeps a sheet and gives its address. */
  add(html: string): string {
    const id = randomBytes(16).toString("hex");
    this.sheets.set(id, html);
    return `${SCREEN_ORIGIN}/sheet/${id}`;
  }

  remove(url: string): void {
    this.sheets.delete(url.split("/").at(-1) ?? "");
  }

  find(path: string): string | undefined {
    return path.startsWith("/sheet/") ? this.sheets.get(path.slice("/sheet/".length)) : undefined;
  }
}

/** Answers one request of the window: a file of the screen, a sheet, or nothing. */
export async function answerScheme(url: string, folder: string, sheets: Sheets): Promise<Response> {
  const { host, pathname } = new URL(url);
  if (host !== "screen") return new Response(null, { status: 404 });
  const sheet = sheets.find(pathname);
  if (sheet !== undefined) {
    const headers = { ...PAGE_HEADERS, "content-type": "text/html; charset=utf-8" };
    return new Response(sheet, { headers: { ...headers, "content-security-policy": SHEET_POLICY } });
  }
  const file = await screenFile(folder, pathname);
  if (!file) return new Response(null, { status: 404, headers: PAGE_HEADERS });
  return new Response(new Uint8Array(file.bytes), {
    headers: { ...PAGE_HEADERS, "content-type": file.type },
  });
}

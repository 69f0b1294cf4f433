import type { BrowserWindow, WebContents } from "electron";
import type { MakePdf } from "../host/host-tools.ts";
import type { Sheets } from "./screen-scheme.ts";

/** Prints a sheet in a hidden window without scripts, or the window itself. */
export function pdfMaker(window: () => BrowserWindow, sheets: Sheets, hidden: () => BrowserWindow): MakePdf {
  return async (html, landscape) => {
    if (html === null) return print(window().webContents, landscape);
    const url = sheets.add(html);
    const drawing = hidden();
    try {
      await drawing.loadURL(url);
      return await print(drawing.webContents, landscape);
    } finally {
      drawing.destroy();
      sheets.remove(url);
    }
  };
}

async function print(contents: WebContents, landscape: boolean): Promise<Uint8Array> {
  return contents.printToPDF({ landscape, printBackground: true, preferCSSPageSize: true });
}

import type { BrowserWindowConstructorOptions } from "electron";

/** Everything that keeps the page in its box, by Electron's own security list; defaults are written out on purpose. */
export function windowOptions(preload: string, isPackaged: boolean): BrowserWindowConstructorOptions {
  return {
    width: 1440,
    height: 900,
    minWidth: 1024,
    minHeight: 640,
    show: false,
    autoHideMenuBar: true,
    title: "Hopper & Spool",
    webPreferences: {
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: !isPackaged,
    },
  };
}

/** A window that only draws a sheet for a PDF: no script, no bridge. */
export function sheetOptions(): BrowserWindowConstructorOptions {
  return {
    show: false,
    webPreferences: { contextIsolation: true, sandbox: true, nodeIntegration: false, javascript: false },
  };
}

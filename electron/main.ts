import { join } from "node:path";
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } from "electron";
import type { Answer } from "./contract/answer.ts";
import { dispatch } from "./dispatch.ts";
import { makeHost } from "./host.ts";
import { ASSETS_FOLDER, programVersion, ROOT_FOLDER, SCREEN_FOLDER } from "./root-folder.ts";
import { dataFolder } from "./store/data-folder.ts";
import { systemDialogs } from "./window/dialogs.ts";
import { isOwn, lockContents, lockSession } from "./window/lock-down.ts";
import { pdfMaker } from "./window/make-pdf.ts";
import { answerScheme, SCHEME, SCREEN_ORIGIN, Sheets } from "./window/screen-scheme.ts";
import { sheetOptions, windowOptions } from "./window/window-options.ts";

/* The desktop window. Only this file and the preload script load Electron when the program runs. */

protocol.registerSchemesAsPrivileged([
  { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
]);

const launchFile = app.commandLine.getSwitchValue("shop") || null;
const sheets = new Sheets();
let window: BrowserWindow | null = null;

const host = makeHost({
  data: dataFolder(),
  assets: ASSETS_FOLDER,
  info: {
    door: "window",
    reason: "The Electron runtime is on this machine.",
    version: programVersion(),
    platform: process.platform,
  },
  launchFile,
  dialogs: systemDialogs(dialog, present),
  makePdf: pdfMaker(present, sheets, () => new BrowserWindow(sheetOptions())),
  now: () => Date.now(),
});

// A second start shows the window that is there, with the file it named: one process writes a shop.
if (app.requestSingleInstanceLock({ launchFile })) void start();
else app.quit();

async function start(): Promise<void> {
  app.on("second-instance", (_event, _words, _folder, told) => void showAgain(told));
  app.on("web-contents-created", (_event, contents) => lockContents(contents));
  app.on("window-all-closed", () => app.quit());
  app.once("before-quit", (event) => {
    event.preventDefault();
    void host.end().finally(() => app.exit(0));
  });
  await app.whenReady();
  lockSession(session.defaultSession);
  protocol.handle(SCHEME, ({ url }) => answerScheme(url, SCREEN_FOLDER, sheets));
  ipcMain.handle("host", (event, name: unknown, input: unknown) => {
    const { senderFrame } = event;
    const isPage = senderFrame !== null && senderFrame === event.sender.mainFrame && isOwn(senderFrame.url);
    return isPage ? dispatch(host.methods, String(name), input) : NOT_THE_PAGE;
  });
  // A Mac needs its menu for copy and paste; elsewhere the page has all there is.
  if (process.platform !== "darwin") Menu.setApplicationMenu(null);
  await openWindow();
}

const NOT_THE_PAGE: Answer<never> = {
  ok: false,
  trouble: { code: "refused", sentence: "Only the program's own page may call." },
};

async function openWindow(): Promise<void> {
  const opened = new BrowserWindow(windowOptions(join(ROOT_FOLDER, "dist", "preload.cjs"), app.isPackaged));
  window = opened;
  opened.once("ready-to-show", () => opened.show());
  await opened.loadURL(`${SCREEN_ORIGIN}/`);
}

/** `told` is what the second start was given; a file that it names is opened in place of the one that is open. */
async function showAgain(told: unknown): Promise<void> {
  const shown = present();
  shown.focus();
  const named = told as { readonly launchFile?: unknown } | null;
  if (typeof named?.launchFile !== "string") return;
  host.launch(named.launchFile);
  await shown.loadURL(`${SCREEN_ORIGIN}/`);
}

function present(): BrowserWindow {
  if (!window) throw new Error("there is no window yet");
  return window;
}

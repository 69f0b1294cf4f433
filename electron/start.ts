import { spawn, spawnSync } from "node:child_process";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { BrowserDoor, openBrowserDoor as OpenBrowserDoorFunction } from "./browser-door.ts";
import { EXIT, UsageError } from "./exit-status.ts";
import { readWords } from "./read-words.ts";
import { chooseDoor } from "./start/choose-door.ts";
import { electronRuntime } from "./start/electron-runtime.ts";
import { isBuilt } from "./start/is-built.ts";
import { openersFor, showAddress } from "./start/open-browser.ts";

/* `npm start [-- SHOP.json] [--no-open] [--browser]`: builds where needed, takes a door, says which and why. */

const ROOT = join(dirname(fileURLToPath(import.meta.url)), "..");
const BUILT = ["dist/browser-door.js", "dist/main.js", "dist/preload.cjs", "dist/screen/index.html"];

const { flags, launchFile } = readCall();
if (!isBuilt(ROOT, BUILT)) build();
const electron = electronRuntime(ROOT, process.env);
const { platform, env } = process;
const door = chooseDoor({
  platform,
  env,
  isRoot: process.getuid?.() === 0,
  electron,
  wantsAddressOnly: flags["no-open"] ?? false,
  wantsBrowser: flags.browser ?? false,
});
console.log(door.reason);
if (door.kind === "window" && electron !== null) openWindow(electron);
else await serve();

function readCall() {
  try {
    const options = { "no-open": { type: "boolean" }, browser: { type: "boolean" } } as const;
    const { values, positionals } = readWords(process.argv.slice(2), options);
    const [path, ...more] = positionals;
    if (more.length > 0) throw new UsageError("start takes one shop file");
    return { flags: values, launchFile: path === undefined ? null : resolve(path) };
  } catch (error) {
    console.error(`${(error as Error).message}\n\nUsage: npm start [-- SHOP.json] [--no-open] [--browser]`);
    process.exit(EXIT.badInput);
  }
}

function build(): void {
  console.log("Building, once after each change …");
  const { status } = spawnSync("npm run build", { cwd: ROOT, shell: true, stdio: "inherit" });
  if (status !== 0) process.exit(status ?? 1);
}

function openWindow(program: string): void {
  const words = launchFile === null ? [ROOT] : [ROOT, `--shop=${launchFile}`];
  spawn(program, words, { stdio: "inherit" }).once("exit", (status) => process.exit(status ?? 0));
}

async function serve(): Promise<void> {
  const file = pathToFileURL(join(ROOT, "dist", "browser-door.js")).href;
  const { openBrowserDoor } = (await import(file)) as { openBrowserDoor: typeof OpenBrowserDoorFunction };
  const browser = await openBrowserDoor(launchFile, door.reason);
  endOn(browser, ["SIGINT", "SIGTERM", "SIGHUP"]);
  const isShown = door.kind === "browser" && (await showAddress(openersFor(browser.url, platform)));
  if (isShown) console.log("Opened in the browser. If it does not show, open this address there:");
  console.log(`${browser.url}\nCtrl+C ends the program; everything is saved first.`);
}

function endOn(browser: BrowserDoor, signals: readonly NodeJS.Signals[]): void {
  for (const signal of signals) {
    process.once(signal, () => {
      console.log("\nSaving and ending …");
      void browser.end().finally(() => process.exit(0));
    });
  }
}

import { existsSync } from "node:fs";

/** Where Chromium lies on the systems that this is tested on. */
const USUAL_PLACES = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/snap/bin/chromium",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/** The browser for journeys: the one that CHROMIUM names, else the first that is there. */
export function findChromium(): string {
  const named = process.env["CHROMIUM"];
  const found = (named === undefined ? USUAL_PLACES : [named]).find((path) => existsSync(path));
  if (found === undefined) {
    throw new Error(
      named === undefined
        ? "Journeys need Chromium: install it (Debian: apt-get install chromium) or set CHROMIUM to its program."
        : `CHROMIUM names ${named}, where there is no program: set it to the program of Chromium.`,
    );
  }
  return found;
}

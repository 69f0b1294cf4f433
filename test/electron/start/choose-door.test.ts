import { mkdirSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { chooseDoor, type Place } from "../../../electron/start/choose-door.ts";
import { electronRuntime } from "../../../electron/start/electron-runtime.ts";
import { isBuilt } from "../../../electron/start/is-built.ts";
import { openersFor, showAddress } from "../../../electron/start/open-browser.ts";
import { aFolder } from "../a-desk.ts";

/** A usual desk: Linux with a display and Electron's runtime. */
const DESK: Place = {
  platform: "linux",
  env: { DISPLAY: ":0" },
  isRoot: false,
  electron: "/electron",
  wantsAddressOnly: false,
  wantsBrowser: false,
};

describe("the door", () => {
  test("is the window where Electron's runtime and a display are there", () => {
    expect(chooseDoor(DESK).kind).toBe("window");
    expect(chooseDoor({ ...DESK, env: { WAYLAND_DISPLAY: "wayland-0" } }).kind).toBe("window");
    expect(chooseDoor({ ...DESK, platform: "darwin", env: {} }).kind).toBe("window");
  });

  test("is the browser where the runtime is not there, and the reason says how to get it", () => {
    expect(chooseDoor({ ...DESK, electron: null })).toMatchObject({
      kind: "browser",
      reason: expect.stringContaining("npx install-electron"),
    });
  });

  test("is the browser for the superuser, as whom the window would lose its sandbox", () => {
    expect(chooseDoor({ ...DESK, isRoot: true }).kind).toBe("browser");
  });

  test("is the browser where that was asked for", () => {
    expect(chooseDoor({ ...DESK, wantsBrowser: true }).kind).toBe("browser");
  });

  test("is the bare address without a display, or where that was asked for", () => {
    expect(chooseDoor({ ...DESK, env: {} }).kind).toBe("address");
    expect(chooseDoor({ ...DESK, wantsAddressOnly: true }).kind).toBe("address");
  });
});

describe("Electron's runtime", () => {
  test("is not there where only the package is installed", () => {
    const root = aFolder();
    mkdirSync(join(root, "node_modules", "electron"), { recursive: true });
    expect(electronRuntime(root, {})).toBeNull();
  });

  test("is where path.txt says, and only if that program is there", () => {
    const root = aFolder();
    const folder = join(root, "node_modules", "electron");
    mkdirSync(join(folder, "dist"), { recursive: true });
    writeFileSync(join(folder, "path.txt"), "electron\n");
    expect(electronRuntime(root, {})).toBeNull();
    writeFileSync(join(folder, "dist", "electron"), "");
    expect(electronRuntime(root, {})).toBe(join(folder, "dist", "electron"));
  });

  test("may lie elsewhere by ELECTRON_OVERRIDE_DIST_PATH", () => {
    const [root, other] = [aFolder(), aFolder()];
    mkdirSync(join(root, "node_modules", "electron"), { recursive: true });
    writeFileSync(join(root, "node_modules", "electron", "path.txt"), "electron");
    writeFileSync(join(other, "electron"), "");
    expect(electronRuntime(root, { ELECTRON_OVERRIDE_DIST_PATH: other })).toBe(join(other, "electron"));
  });
});

describe("an address is shown", () => {
  test("in a window of its own first, then in the usual browser", () => {
    const openers = openersFor("http://x", "linux", (name) =>
      ["chromium", "xdg-open"].includes(name) ? `/bin/${name}` : null,
    );
    expect(openers).toEqual([
      { program: "/bin/chromium", words: ["--app=http://x"] },
      { program: "/bin/xdg-open", words: ["http://x"] },
    ]);
  });

  test("by nothing where there is no browser", async () => {
    expect(openersFor("http://x", "linux", () => null)).toEqual([]);
    expect(await showAddress([])).toBe(false);
  });

  test("by the next one where the first fails at once", async () => {
    const [fails, works] = [
      { program: "false", words: [] },
      { program: "true", words: [] },
    ];
    expect(await showAddress([fails])).toBe(false);
    expect(await showAddress([{ program: "/no/such/program", words: [] }])).toBe(false);
    expect(await showAddress([fails, works])).toBe(true);
  });
});

describe("a build", () => {
  test("is wanted where a file of it is missing", () => {
    expect(isBuilt(aProject(), ["dist/main.js"])).toBe(false);
  });

  test("is not wanted while every source is older", () => {
    const root = aProject();
    writeFileSync(join(root, "dist", "main.js"), "");
    expect(isBuilt(root, ["dist/main.js"])).toBe(true);
  });

  test("is wanted once one source is newer", () => {
    const root = aProject();
    writeFileSync(join(root, "dist", "main.js"), "");
    utimesSync(join(root, "dist", "main.js"), 999, 999);
    expect(isBuilt(root, ["dist/main.js"])).toBe(false);
  });
});

function aProject(): string {
  const root = aFolder();
  for (const folder of ["core", "dist"]) mkdirSync(join(root, folder));
  writeFileSync(join(root, "core", "a.ts"), "");
  utimesSync(join(root, "core", "a.ts"), 1000, 1000);
  return root;
}

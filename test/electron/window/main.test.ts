import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeEach, describe, expect, test, vi } from "vitest";
import { textOf } from "../../../electron/store/open-shop.ts";
import { aFolder, aShop } from "../a-desk.ts";

/*
 * Electron's runtime cannot be had here, so its module is mocked. These tests show that the settings and guards are PASSED to
 * Electron; that Electron enforces them is not shown by anything in this project.
 */

type Listener = (...args: never[]) => unknown;

const seen = vi.hoisted(() => ({
  windows: [] as { options: { webPreferences?: Record<string, unknown> }; urls: string[] }[],
  handles: new Map<string, Listener>(),
  on: new Map<string, Listener>(),
  schemes: [] as unknown[],
  scheme: new Map<string, Listener>(),
  session: {} as Record<string, Listener>,
  hasLock: true,
  quits: 0,
}));

const { listen, keep } = vi.hoisted(() => ({
  listen: (name: string, listener: Listener): void => void seen.on.set(name, listener),
  keep: (name: string) => (listener: Listener) => {
    seen.session[name] = listener;
  },
}));

vi.mock("electron", () => {
  class BrowserWindow {
    readonly seen: { options: object; urls: string[] };
    readonly webContents = { printToPDF: async () => new Uint8Array([1]) };
    constructor(options: object) {
      this.seen = { options, urls: [] };
      seen.windows.push(this.seen);
    }
    once(): void {}
    focus(): void {}
    destroy(): void {}
    async loadURL(url: string): Promise<void> {
      this.seen.urls.push(url);
    }
  }
  return {
    app: {
      isPackaged: true,
      commandLine: { getSwitchValue: () => "" },
      requestSingleInstanceLock: () => seen.hasLock,
      quit: () => void (seen.quits += 1),
      exit: () => undefined,
      on: listen,
      once: listen,
      whenReady: async () => undefined,
    },
    BrowserWindow,
    dialog: {},
    ipcMain: { handle: (name: string, listener: Listener) => void seen.handles.set(name, listener) },
    Menu: { setApplicationMenu: () => undefined },
    protocol: {
      registerSchemesAsPrivileged: (schemes: unknown[]) => void seen.schemes.push(...schemes),
      handle: (name: string, listener: Listener) => void seen.scheme.set(name, listener),
    },
    session: {
      defaultSession: {
        setPermissionRequestHandler: keep("request"),
        setPermissionCheckHandler: keep("check"),
        setDevicePermissionHandler: keep("device"),
        webRequest: { onBeforeRequest: keep("web") },
      },
    },
    contextBridge: { exposeInMainWorld: (name: string, api: object) => void seen.on.set(name, () => api) },
    ipcRenderer: { invoke: async (...args: unknown[]) => args },
  };
});

async function start(): Promise<void> {
  vi.resetModules();
  process.env["HOPPER_AND_SPOOL_DATA"] = aFolder();
  await import("../../../electron/main.ts");
  if (seen.hasLock) await vi.waitFor(() => expect(seen.windows[0]?.urls).toHaveLength(1));
}

beforeEach(() => {
  Object.assign(seen, { windows: [], handles: new Map(), on: new Map(), schemes: [], scheme: new Map() });
  Object.assign(seen, { session: {}, hasLock: true, quits: 0 });
});

describe("the window is asked for", () => {
  test.each([
    ["contextIsolation", true],
    ["sandbox", true],
    ["nodeIntegration", false],
    ["nodeIntegrationInWorker", false],
    ["nodeIntegrationInSubFrames", false],
    ["webSecurity", true],
    ["allowRunningInsecureContent", false],
    ["experimentalFeatures", false],
    ["webviewTag", false],
    ["navigateOnDragDrop", false],
    ["devTools", false],
  ])("with %s %s", async (name, value) => {
    await start();
    expect(seen.windows[0]?.options.webPreferences?.[name]).toBe(value);
  });

  test("at an origin of its own rather than a file", async () => {
    await start();
    expect(seen.windows[0]?.urls).toEqual(["app://screen/"]);
    expect(seen.schemes).toMatchObject([{ scheme: "app", privileges: { standard: true, secure: true } }]);
  });

  test("once: a second start quits", async () => {
    seen.hasLock = false;
    await start();
    expect([seen.windows.length, seen.quits]).toEqual([0, 1]);
  });
});

function startAgain(launchFile: string | null): void {
  (seen.on.get("second-instance") as (...args: unknown[]) => void)({}, [], "", { launchFile });
}

describe("a second start", () => {
  test("that names a file opens it in the window that is there", async () => {
    await start();
    const file = join(aFolder(), "other.shop.json");
    writeFileSync(file, textOf(aShop()));
    startAgain(file);
    await vi.waitFor(() => expect(seen.windows[0]?.urls).toHaveLength(2));
    const frame = { url: "app://screen/" };
    const event = { senderFrame: frame, sender: { mainFrame: frame } };
    const answer = await (seen.handles.get("host") as (...args: unknown[]) => unknown)(
      event,
      "openFirst",
      {},
    );
    expect(answer).toMatchObject({ value: { status: "opened", fileName: "other.shop.json" } });
  });

  test("that names none only brings the window to the front", async () => {
    await start();
    startAgain(null);
    expect(seen.windows).toHaveLength(1);
    expect(seen.windows[0]?.urls).toHaveLength(1);
  });
});

describe("one channel", () => {
  const input = {};
  const frame = { url: "app://screen/" };

  async function invoke(senderFrame: object | null, mainFrame: object): Promise<unknown> {
    await start();
    const event = { senderFrame, sender: { mainFrame } };
    return (seen.handles.get("host") as (...args: unknown[]) => unknown)(event, "appInfo", input);
  }

  test("is all there is, and answers the page", async () => {
    expect(await invoke(frame, frame)).toMatchObject({ ok: true, value: { door: "window" } });
    expect([...seen.handles.keys()]).toEqual(["host"]);
  });

  test.each(["https://page.example/", "app://screen.example/", "app://other/", "file:///x"])(
    "refuses a frame at %s",
    async (url) => {
      const other = { url };
      expect(await invoke(other, other)).toMatchObject({ ok: false, trouble: { code: "refused" } });
    },
  );

  test("refuses a frame within the page, and one that is gone", async () => {
    expect(await invoke({ url: "app://screen/" }, frame)).toMatchObject({ ok: false });
    expect(await invoke(null, frame)).toMatchObject({ ok: false });
  });
});

describe("the page", () => {
  test("opens no other window", async () => {
    const on = await contents();
    expect(on.get("open")?.()).toEqual({ action: "deny" });
  });

  test.each(["will-navigate", "will-redirect"])("does not leave by %s", async (name) => {
    const on = await contents();
    expect(isStopped(on.get(name), "https://page.example/")).toBe(true);
    expect(isStopped(on.get(name), "app://screen.example/")).toBe(true);
    expect(isStopped(on.get(name), "app://screen/")).toBe(false);
  });

  test("embeds no webview", async () => {
    const on = await contents();
    expect(isStopped(on.get("will-attach-webview"), "")).toBe(true);
  });

  test.each(["media", "geolocation", "notifications", "openExternal", "fileSystem"])(
    "is denied %s",
    async (permission) => {
      await start();
      let answer: unknown;
      (seen.session["request"] as (...args: unknown[]) => void)(
        {},
        permission,
        (given: unknown) => (answer = given),
      );
      expect(answer).toBe(false);
      expect((seen.session["check"] as (...args: unknown[]) => unknown)({}, permission)).toBe(false);
      expect(seen.session["device"]?.()).toBe(false);
    },
  );

  test.each([
    ["https://page.example/x", true],
    ["http://127.0.0.1:1/", true],
    ["file:///etc/hosts", true],
    ["app://screen/index.html", false],
    ["blob:app://screen/1", false],
  ])("has its request to %s cancelled: %s", async (url, cancel) => {
    await start();
    let answer: unknown;
    (seen.session["web"] as (...args: unknown[]) => void)({ url }, (given: unknown) => (answer = given));
    expect(answer).toEqual({ cancel });
  });

  test("gets the policy with every file, and nothing from another host or from above its folder", async () => {
    await start();
    const handle = seen.scheme.get("app") as unknown as (request: { url: string }) => Promise<Response>;
    expect((await handle({ url: "app://other/index.html" })).status).toBe(404);
    const above = await handle({ url: "app://screen/..%2fmain.js" });
    expect(above.status).toBe(404);
    expect(above.headers.get("content-security-policy")).toContain("default-src 'none'");
  });
});

test("the preload script exposes one function under the contract's name, and names no channel but one", async () => {
  vi.resetModules();
  await import("../../../electron/preload.ts");
  const { BRIDGE } = await import("../../../electron/contract.ts");
  const api = seen.on.get(BRIDGE)?.() as { call: (name: string, input: unknown) => Promise<unknown> };
  expect(Object.keys(api)).toEqual(["call"]);
  expect(await api.call("appInfo", {})).toEqual(["host", "appInfo", {}]);
});

test("Electron itself is loaded by the main and the preload script alone; all others take its types", () => {
  const folder = join(import.meta.dirname, "../../../electron");
  const loaders = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .filter((name) =>
      /^import (?!type )[^;]* from "electron";/m.test(readFileSync(join(folder, name), "utf8")),
    );
  expect(loaders.toSorted()).toEqual(["main.ts", "preload.ts"]);
});

/** What is listened to on the contents of a new window; "open" is its handler for further windows. */
async function contents(): Promise<Map<string, Listener>> {
  await start();
  const on = new Map<string, Listener>();
  const made = {
    on: (name: string, listener: Listener) => void on.set(name, listener),
    setWindowOpenHandler: (listener: Listener) => void on.set("open", listener),
  };
  (seen.on.get("web-contents-created") as (...args: unknown[]) => void)({}, made);
  return on;
}

function isStopped(listener: Listener | undefined, url: string): boolean {
  let stopped = false;
  (listener as (...args: unknown[]) => void)({ preventDefault: () => (stopped = true) }, url);
  return stopped;
}

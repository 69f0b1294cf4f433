import { foldersIn } from "./store/data-folder.ts";
import { SettingsStore } from "./store/settings.ts";
import { besideMethods, notWritten, reportMethods } from "./host/file-methods.ts";
import type { HostTools } from "./host/host-tools.ts";
import type { Methods } from "./host/methods.ts";
import { demoFolderIn, OwnShops } from "./host/own-shops.ts";
import { ShopDesk } from "./host/shop-desk.ts";
import { keepingMethods, openingMethods } from "./host/shop-methods.ts";

/** The outside as the screen sees it, whichever door it comes through. */
export interface HostSide {
  readonly methods: Methods;
  /** The next page that asks for the first shop gets this file: a second start named it. */
  readonly launch: (file: string) => void;
  /** Saves and lets go of everything; called when the program ends. */
  readonly end: () => Promise<void>;
}

/** Puts the host together: plain functions over a data folder, the demo's folder, a clock and what the door has. */
export function makeHost(tools: HostTools): HostSide {
  const folders = foldersIn(tools.data);
  const places = { folders, now: tools.now };
  const desk = new ShopDesk(places, demoFolderIn(folders.shops));
  const settings = new SettingsStore(folders.settings);
  const launch = { file: tools.launchFile };
  const room = { tools, places, desk, settings, launch, own: new OwnShops(folders.shops, tools.assets) };
  const can = { dialogs: tools.dialogs !== null, pdf: tools.makePdf !== null };
  const methods: Methods = {
    appInfo: async () => ({ ...tools.info, can }),
    ...openingMethods(room),
    ...keepingMethods(room),
    ...besideMethods(room),
    ...reportMethods(tools),
    readPreferences: async () => ({ preferences: await settings.preferences() }),
    writePreferences: async ({ preferences }) =>
      settings.keepPreferences(preferences).then(
        () => ({ status: "kept" }),
        (error: unknown) => notWritten("The settings file", error),
      ),
  };
  return { methods, launch: (file) => void (launch.file = file), end: () => desk.closeAll() };
}

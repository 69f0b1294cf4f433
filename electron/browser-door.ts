import { makeHost } from "./host.ts";
import { startLoopback } from "./loopback.ts";
import { ASSETS_FOLDER, programVersion, SCREEN_FOLDER } from "./root-folder.ts";
import { dataFolder } from "./store/data-folder.ts";

export interface BrowserDoor {
  readonly url: string;
  /** saves and lets go of everything */
  readonly end: () => Promise<void>;
}

/** Serves the screen to this machine's browser. `reason` says why this door was taken. */
export async function openBrowserDoor(launchFile: string | null, reason: string): Promise<BrowserDoor> {
  const host = makeHost({
    data: dataFolder(),
    assets: ASSETS_FOLDER,
    info: { door: "browser", reason, version: programVersion(), platform: process.platform },
    launchFile,
    dialogs: null,
    makePdf: null,
    now: () => Date.now(),
  });
  const { url, end } = await startLoopback(host.methods, SCREEN_FOLDER);
  return {
    url,
    end: async () => {
      await host.end();
      await end();
    },
  };
}

import { join } from "node:path";
import type { BrowserWindow, Dialog, FileFilter } from "electron";
import type { Dialogs } from "../host/host-tools.ts";

const SHOP_FILES: FileFilter[] = [{ name: "Shop", extensions: ["shop.json", "json"] }];

/** The system's file dialogs over the window. */
export function systemDialogs(dialog: Dialog, window: () => BrowserWindow): Dialogs {
  const save = async (defaultPath: string, filters: FileFilter[]): Promise<string | null> => {
    const { canceled, filePath } = await dialog.showSaveDialog(window(), { defaultPath, filters });
    return canceled || filePath === "" ? null : filePath;
  };
  return {
    openShop: async () => {
      const { filePaths } = await dialog.showOpenDialog(window(), {
        properties: ["openFile"],
        filters: SHOP_FILES,
      });
      return filePaths[0] ?? null;
    },
    saveShop: (fileName, folder) => save(join(folder, fileName), SHOP_FILES),
    saveExport: (fileName) => save(fileName, []),
  };
}

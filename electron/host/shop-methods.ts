import { stat } from "node:fs/promises";
import { basename, dirname } from "node:path";
import { emptyShop } from "../../core/shop/empty-shop.ts";
import type { OpenAnswer, SaveAsAnswer } from "../contract/shop-messages.ts";
import { shopStem } from "../store/beside-shop.ts";
import { keyOf } from "../store/data-folder.ts";
import { troubleOf } from "../store/file-trouble.ts";
import { textOf } from "../store/open-shop.ts";
import type { RecentFile, SettingsStore } from "../store/settings.ts";
import { notSavedWords } from "../store/shop-words.ts";
import type { HostTools } from "./host-tools.ts";
import type { Methods } from "./methods.ts";
import type { OwnShops } from "./own-shops.ts";
import { backupsOf, type Places } from "./shop-places.ts";
import type { ShopDesk } from "./shop-desk.ts";

/** What these methods work with. */
export interface ShopRoom {
  readonly tools: HostTools;
  /** the shop file named at the launch, or by a later start; null: none was */
  readonly launch: { readonly file: string | null };
  readonly places: Places;
  readonly desk: ShopDesk;
  readonly own: OwnShops;
  readonly settings: SettingsStore;
}

const NO_DIALOG =
  "A browser has no file dialog of ours: choose the file to upload, a copy of it is kept here.";

type Opening =
  | "openFirst"
  | "openDemo"
  | "listRecent"
  | "openRecent"
  | "openDialog"
  | "openUpload"
  | "newShop"
  | "openBackup";

/** Ways to get a shop on the desk. */
export function openingMethods(room: ShopRoom): Pick<Methods, Opening> {
  const { tools, places, desk, own, settings } = room;
  const open = (path: string): Promise<OpenAnswer> => openAndRemember(room, path);
  return {
    openFirst: () => openFirst(room),
    openDemo: async () => open(await own.addDemo()),
    listRecent: async () => ({ recent: await Promise.all((await settings.recent()).map(recentOf)) }),
    openRecent: async ({ id }) => {
      const file = (await settings.recent()).find(({ path }) => keyOf(path) === id);
      return file ? open(file.path) : { status: "cancelled" };
    },
    openDialog: async () => {
      if (!tools.dialogs) return { status: "no-dialog", sentence: NO_DIALOG };
      const path = await tools.dialogs.openShop();
      return path === null ? { status: "cancelled" } : open(path);
    },
    openUpload: async ({ fileName, text }) => open(await own.add(fileName, text)),
    newShop: async (head) => open(await own.add(head.name, textOf(emptyShop(head)))),
    openBackup: async ({ handle, id }) => {
      const { path } = desk.find(handle).file;
      const text = await backupsOf(places, path).read(id);
      if (text === null) return { status: "cancelled" };
      return open(await own.addCopy(`${shopStem(basename(path))} of ${id.slice(0, 16)}`, text, path));
    },
  };
}

type Keeping =
  | "commit"
  | "watch"
  | "save"
  | "saveAs"
  | "reload"
  | "recover"
  | "close"
  | "shopText"
  | "listBackups";

/** Edits of an open shop, and its way to the disk. */
export function keepingMethods(room: ShopRoom): Pick<Methods, Keeping> {
  const { desk, places } = room;
  return {
    commit: ({ handle, client, baseVersion, changes }) =>
      desk.find(handle).commit(client, baseVersion, changes),
    watch: ({ handle, client, stamp, version }) => desk.find(handle).watch(client, stamp, version),
    save: ({ handle, overwrite }) => desk.find(handle).save(overwrite),
    saveAs: ({ handle, fileName }) => saveAs(room, handle, fileName),
    reload: ({ handle }) => desk.reload(handle),
    recover: ({ handle, choice }) => desk.recover(handle, choice),
    close: ({ handle }) => desk.close(handle),
    shopText: async ({ handle }) => ({ fileName: desk.find(handle).fileName, text: desk.find(handle).text }),
    listBackups: async ({ handle }) => ({
      backups: await backupsOf(places, desk.find(handle).file.path).list(),
    }),
  };
}

/** The shop named at the launch, the last one, or the demo. A last shop that is not there any more is passed over. */
async function openFirst(room: ShopRoom): Promise<OpenAnswer> {
  const { launch, settings, own } = room;
  if (launch.file !== null) return openAndRemember(room, launch.file);
  const last = (await settings.recent())[0];
  const isThere = last !== undefined && (await recentOf(last)).isThere;
  if (!isThere) return openAndRemember(room, await own.addDemo());
  return openAndRemember(room, last.path);
}

async function openAndRemember({ desk, settings, tools }: ShopRoom, path: string): Promise<OpenAnswer> {
  const answer = await desk.open(path);
  if (answer.status === "opened") {
    const openedAt = new Date(tools.now()).toISOString();
    const file = desk.find(answer.handle).file.path;
    // Not being remembered is no reason not to be opened.
    await settings.opened({ path: file, shopName: answer.shop.name, openedAt }).catch(() => undefined);
  }
  return answer;
}

async function recentOf({ path, shopName, openedAt }: RecentFile) {
  const isThere = await stat(path).then(
    (found) => found.isFile(),
    () => false,
  );
  return { id: keyOf(path), fileName: basename(path), folder: dirname(path), shopName, openedAt, isThere };
}

async function saveAs(room: ShopRoom, handle: string, fileName: string): Promise<SaveAsAnswer> {
  const { desk, own, tools, settings } = room;
  const { folder, shop } = desk.find(handle);
  try {
    const path = tools.dialogs ? await tools.dialogs.saveShop(fileName, folder) : await own.place(fileName);
    if (path === null) return { status: "cancelled" };
    const open = await desk.saveAs(handle, path);
    const savedAt = new Date(tools.now()).toISOString();
    await settings
      .opened({ path: open.file.path, shopName: shop.name, openedAt: savedAt })
      .catch(() => undefined);
    return { status: "saved", version: open.version, savedAt, fileName: open.fileName, folder: open.folder };
  } catch (error) {
    return { status: "failed", code: troubleOf(error).code, sentence: notSavedWords(fileName, error) };
  }
}

import type { Host } from "../../electron/contract.ts";
import type { Answer } from "../../electron/contract/answer.ts";
import type { OpenAnswer, Opened } from "../../electron/contract/shop-messages.ts";
import { downloadFile } from "./download.ts";
import type { Notes } from "./notes.ts";
import type { Saving } from "./saving.ts";

/** Opening, saving and leaving shop files. What is not saved is sent first; a shop that cannot be opened leaves the old one. */
export interface ShopFile {
  readonly open: () => Promise<void>;
  readonly openRecent: (id: string) => Promise<void>;
  readonly openDemo: () => Promise<void>;
  readonly openUpload: (file: File) => Promise<void>;
  readonly newShop: (works: NewWorks) => Promise<void>;
  readonly save: () => Promise<void>;
  readonly overwrite: () => Promise<void>;
  readonly saveAs: (fileName: string) => Promise<void>;
  readonly reload: () => Promise<void>;
  readonly recover: (choice: "keep" | "drop") => Promise<void>;
  readonly download: () => Promise<void>;
}

export interface NewWorks {
  readonly name: string;
  readonly timeZone: string;
  readonly currency: string;
  readonly display: { readonly length: "mm" | "in"; readonly mass: "kg" | "lb" };
}

interface ShopFileOptions {
  readonly host: Host;
  readonly opened: Opened;
  readonly saving: Saving;
  readonly notes: Notes;
  /** another shop takes the place of this one */
  readonly onOpened: (opened: Opened) => void;
  /** asks for a file where the door has no dialog of its own */
  readonly chooseFile: () => Promise<File | null>;
}

export function createShopFile(options: ShopFileOptions): ShopFile {
  const { host, saving, notes } = options;
  const { handle } = options.opened;

  async function take(asked: Promise<Answer<OpenAnswer>>): Promise<void> {
    const answer = await asked;
    if (!answer.ok) return notes.alarm(answer.trouble.sentence);
    if (answer.value.status === "opened") return options.onOpened(answer.value);
    if (answer.value.status === "unreadable") notes.alarm(unreadableSentence(answer.value));
  }

  async function upload(file: File | null): Promise<void> {
    if (!file) return;
    await take(host.call("openUpload", { fileName: file.name, text: await file.text() }));
  }

  /** Leaves the shop only when what was edited is on its way. */
  const leaving = async (asked: () => Promise<Answer<OpenAnswer>>): Promise<void> => {
    await saving.flush();
    await take(asked());
  };

  return {
    open: async () => {
      await saving.flush();
      const answer = await host.call("openDialog", {});
      if (answer.ok && answer.value.status === "no-dialog") return upload(await options.chooseFile());
      await take(Promise.resolve(answer));
    },
    openRecent: (id) => leaving(() => host.call("openRecent", { id })),
    openDemo: () => leaving(() => host.call("openDemo", {})),
    openUpload: async (file) => {
      await saving.flush();
      await upload(file);
    },
    newShop: (works) => leaving(() => host.call("newShop", works)),
    save: () => saving.save(false),
    overwrite: () => saving.save(true),
    saveAs: async (fileName) => {
      await saving.flush();
      const answer = await host.call("saveAs", { handle, fileName });
      if (!answer.ok) return notes.alarm(answer.trouble.sentence);
      if (answer.value.status === "failed") return notes.alarm(answer.value.sentence);
      if (answer.value.status === "saved")
        notes.tell(`Saved as ${answer.value.fileName} in ${answer.value.folder}.`);
      saving.dismissConflict();
    },
    reload: () => take(host.call("reload", { handle })),
    recover: (choice) => take(host.call("recover", { handle, choice })),
    download: async () => {
      await saving.flush();
      const answer = await host.call("shopText", { handle });
      if (!answer.ok) return notes.alarm(answer.trouble.sentence);
      downloadFile(answer.value.fileName, answer.value.text, "application/json");
    },
  };
}

/** Why a file could not be opened, in a sentence. */
export function unreadableSentence({
  fileName,
  findings,
}: {
  readonly fileName: string;
  readonly findings: readonly { readonly sentence: string }[];
}): string {
  return `${fileName} could not be opened. ${findings[0]?.sentence ?? "It is no shop file."}`;
}

import { basename } from "node:path";
import type { OpenAnswer, Opened, Recovery, SaveAnswer } from "../contract/shop-messages.ts";
import { isWithin } from "../store/beside-shop.ts";
import { copyMeshes } from "../store/mesh-files.ts";
import { OpenShop } from "../store/open-shop.ts";
import { fitted, linesOf } from "../store/recovery.ts";
import { ShopFile, truePath } from "../store/shop-file.ts";
import { recoveryWords } from "../store/shop-words.ts";
import { type FileOnDesk, type Found, openFile } from "./open-file.ts";
import { backupsOf, beginJournal, journalsOf, type Places } from "./shop-places.ts";

/** One shop on the desk. */
interface Seat extends Pick<FileOnDesk, "findings" | "notes" | "found"> {
  readonly open: OpenShop;
}

/** The handle names nothing that is open. */
export class GoneError extends Error {}

/** The shops that are open in this process. A file that is open already is shared, not read again. */
export class ShopDesk {
  private readonly places: Places;
  private readonly demoFolder: string;
  private readonly seats = new Map<string, Seat>();
  private turn: Promise<unknown> = Promise.resolve();

  constructor(places: Places, demoFolder: string) {
    this.places = places;
    this.demoFolder = demoFolder;
  }

  /** One opening at a time, so that two windows that ask at once share the shop. */
  open(path: string): Promise<OpenAnswer> {
    return this.inTurn(() => this.openNow(path));
  }

  find(handle: string): OpenShop {
    return this.seat(handle).open;
  }

  /** Reads the file again; edits that are not in it stay in a journal that is set aside. */
  reload(handle: string): Promise<OpenAnswer> {
    return this.inTurn(async () => {
      const { open } = this.seat(handle);
      this.seats.delete(handle);
      await open.letGo();
      if (!open.isSaved) await journalsOf(this.places, open.file.path).setAside(open.journal.path);
      return this.openNow(open.file.path);
    });
  }

  /** Puts the edits found on the shop, or sets them aside. */
  async recover(handle: string, choice: "keep" | "drop"): Promise<OpenAnswer> {
    const seat = this.seat(handle);
    const skipped = seat.found && choice === "keep" ? await putBack(seat.open, seat.found) : 0;
    for (const { path } of seat.found?.journals ?? []) {
      await journalsOf(this.places, seat.open.file.path).setAside(path);
    }
    const note = `${skipped} of the edits found had no place any more and were left out.`;
    const notes = skipped > 0 ? [...seat.notes, note] : seat.notes;
    return this.answer(this.sit({ ...seat, notes, found: null }));
  }

  /** The shop goes on in another file; the one before stays as it was saved last. */
  async saveAs(handle: string, given: string): Promise<OpenShop> {
    const { open } = this.seat(handle);
    const path = await truePath(given);
    const seated = this.seatOf(path);
    if (seated && seated.open !== open) throw Object.assign(new Error("open here"), { code: "EBUSY" });
    const { text, version, shop } = open;
    await copyMeshes(shop, open.file.path, path);
    const file = await ShopFile.create(path, text, backupsOf(this.places, path));
    await open.moveTo(file, await beginJournal(this.places, file), version);
    return open;
  }

  async close(handle: string): Promise<SaveAnswer> {
    const { open } = this.seat(handle);
    const answer = await open.save(false);
    this.seats.delete(handle);
    await open.letGo();
    return answer;
  }

  async closeAll(): Promise<void> {
    for (const handle of Array.from(this.seats.keys())) await this.close(handle);
  }

  private async openNow(given: string): Promise<OpenAnswer> {
    const path = await truePath(given);
    const seated = this.seatOf(path);
    if (seated) return this.answer(seated);
    const onDesk = await openFile(path, this.places);
    if (!("shop" in onDesk)) {
      return { status: "unreadable", fileName: basename(path), findings: onDesk.findings };
    }
    const { shop, file, findings, notes, found } = onDesk;
    const journal = await beginJournal(this.places, file);
    const open = new OpenShop({ shop, file, journal, now: this.places.now });
    return this.answer(this.sit({ open, findings, notes, found }));
  }

  private answer({ open, findings, notes, found }: Seat): Opened {
    return {
      status: "opened",
      handle: open.handle,
      fileName: open.fileName,
      folder: open.folder,
      shop: open.shop,
      findings: [...findings],
      version: open.version,
      stamp: open.stamp,
      isDemo: isWithin(this.demoFolder, open.file.path),
      notes: [...notes],
      recovery: found ? recoveryOf(open.fileName, found) : null,
    };
  }

  private seatOf(path: string): Seat | undefined {
    return [...this.seats.values()].find(({ open }) => open.file.path === path);
  }

  private sit(seat: Seat): Seat {
    this.seats.set(seat.open.handle, seat);
    return seat;
  }

  private seat(handle: string): Seat {
    const seat = this.seats.get(handle);
    if (!seat) throw new GoneError(handle);
    return seat;
  }

  private inTurn<Value>(act: () => Promise<Value>): Promise<Value> {
    const done = this.turn.then(act);
    this.turn = done.catch(() => undefined);
    return done;
  }
}

/** Commits what still fits and says how many edits do not. */
async function putBack(open: OpenShop, { edits }: Found): Promise<number> {
  const { changes, skipped } = fitted(open.shop, edits.changes);
  if (changes.length > 0) await open.commit("recovery", open.version, changes);
  return skipped;
}

function recoveryOf(fileName: string, { edits }: Found): Recovery {
  const { changes, lastAt, followsOn } = edits;
  return {
    edits: changes.length,
    lastAt,
    lines: linesOf(changes),
    fits: followsOn,
    sentence: recoveryWords(fileName, changes.length, followsOn),
  };
}

import { type Accessor, createSignal, onCleanup, type Setter } from "solid-js";
import type { Host } from "../../electron/contract.ts";
import type { WatchAnswer } from "../../electron/contract/shop-messages.ts";
import type { Change } from "../../core/shop/change.ts";
import { applyChanges } from "../../core/shop/change-many.ts";
import type { Shop } from "../../core/shop/shop.ts";

/** Where the edits are: on their way, in the journal and the file, or in trouble that a person must settle. */
export type SavedState =
  | { readonly kind: "saved"; readonly at: string | null }
  | { readonly kind: "writing" }
  | { readonly kind: "trouble"; readonly sentence: string };

/** A file that is not as this window left it, and what can be done. */
export interface Conflict {
  readonly reason: "changed" | "removed";
  readonly sentence: string;
}

export interface Saving {
  readonly state: Accessor<SavedState>;
  readonly conflict: Accessor<Conflict | null>;
  /** takes edits in the order in which they were made, each with the shop that it gave */
  readonly push: (changes: readonly Change[], after: Shop) => void;
  /** sends what waits now; resolves when nothing waits any more */
  readonly flush: () => Promise<void>;
  /** writes the file now; knowingly over another's work only when asked */
  readonly save: (overwrite: boolean) => Promise<void>;
  readonly dismissConflict: () => void;
}

interface SavingOptions {
  readonly host: Host;
  readonly handle: string;
  readonly version: number;
  readonly stamp: number;
  /** the shop as the host has it at that version */
  readonly shop: Shop;
  /** another window has edited too: the shop with its edits below those that wait here */
  readonly onRebased: (shop: Shop) => void;
  /** the edits sent do not fit what the host has: open the shop again */
  readonly onLost: (sentence: string) => void;
}

/** An edit that the host does not have yet, and the shop after it. */
interface Waiting {
  readonly changes: readonly Change[];
  readonly after: Shop;
}

const TORN = "Another window has changed this shop while a large edit was being written.";

/** Typing rests so long before it is sent. */
const REST_MS = 200;
/** As many edits as one message may carry; far below the limit of the body. */
const MOST_AT_ONCE = 20_000;
/** After a failed call the next try waits so long. */
const RETRY_MS = 2000;

/** Sends edits to the host one message after the other, keeps the mark of what is saved, and listens for other windows. */
export function createSaving(options: SavingOptions): Saving {
  const sender = new Sender(options);
  void listen(sender, options);
  // What was typed last is sent before the page goes.
  const send = (): void => void sender.flush();
  window.addEventListener("pagehide", send);
  onCleanup(() => {
    window.removeEventListener("pagehide", send);
    sender.end();
  });
  return {
    state: sender.state,
    conflict: sender.conflict,
    push: (changes, after) => sender.push({ changes, after }),
    flush: () => sender.flush(),
    save: (overwrite) => sender.save(overwrite),
    dismissConflict: () => void sender.setConflict(null),
  };
}

/** What waits to be sent, and what the host has. */
class Sender {
  readonly state: Accessor<SavedState>;
  readonly conflict: Accessor<Conflict | null>;
  readonly setConflict: Setter<Conflict | null>;
  /** tells the host which edits are of this window */
  readonly client = crypto.randomUUID();
  version: number;
  isOpen = true;
  private readonly setState: Setter<SavedState>;
  private readonly options: SavingOptions;
  private queue: Waiting[] = [];
  private base: Shop;
  private sending: Promise<void> | null = null;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(options: SavingOptions) {
    this.options = options;
    this.version = options.version;
    this.base = options.shop;
    [this.state, this.setState] = createSignal<SavedState>({ kind: "saved", at: null });
    [this.conflict, this.setConflict] = createSignal<Conflict | null>(null);
  }

  end(): void {
    this.isOpen = false;
    clearTimeout(this.timer);
  }

  push(entry: Waiting): void {
    this.queue.push(entry);
    if (this.state().kind !== "trouble") this.setState({ kind: "writing" });
    this.flushIn(REST_MS);
  }

  async flush(): Promise<void> {
    clearTimeout(this.timer);
    this.sending ??= this.send().finally(() => {
      this.sending = null;
    });
    await this.sending;
  }

  async save(overwrite: boolean): Promise<void> {
    await this.flush();
    const { host, handle } = this.options;
    const answer = await host.call("save", { handle, overwrite });
    if (!answer.ok) return this.trouble(answer.trouble.sentence);
    if (answer.value.status === "conflict") return void this.setConflict(answer.value);
    if (answer.value.status === "failed") return this.trouble(answer.value.sentence);
    this.setConflict(null);
    this.setState({ kind: "saved", at: answer.value.savedAt });
  }

  take(news: WatchAnswer): void {
    const isQuiet = this.queue.length === 0 && this.sending === null;
    if (isQuiet && news.version > this.version) {
      this.version = news.version;
      this.rebase(news.changes);
    }
    if (news.file === "changed" || news.file === "removed") {
      const sentence = news.sentence ?? "The shop file is not as it was saved.";
      this.setConflict({ reason: news.file, sentence });
    }
    if (news.sentence !== null) return this.trouble(news.sentence);
    if (!isQuiet) return;
    const isSaved = news.savedVersion >= this.version;
    this.setState(isSaved ? { kind: "saved", at: news.savedAt } : { kind: "writing" });
  }

  private async send(): Promise<void> {
    let goesOn = true;
    while (this.isOpen && goesOn && this.queue.length > 0)
      goesOn = await this.sendBatch(firstBatch(this.queue));
  }

  /** True where the next batch may be sent. */
  private async sendBatch(batch: readonly Waiting[]): Promise<boolean> {
    const { host, handle } = this.options;
    const changes = batch.flatMap((entry) => entry.changes);
    for (let start = 0; start < changes.length; start += MOST_AT_ONCE) {
      const part = changes.slice(start, start + MOST_AT_ONCE);
      const baseVersion = this.version;
      const answer = await host.call("commit", { handle, client: this.client, baseVersion, changes: part });
      if (!answer.ok) return this.tryLater(answer.trouble.sentence);
      if (answer.value.status === "misfit") return this.lose(answer.value.sentence);
      this.version = answer.value.version;
      if (answer.value.status === "behind") {
        return start > 0 ? this.lose(TORN) : this.rebase(answer.value.changes);
      }
      if (answer.value.warning !== null) this.trouble(answer.value.warning);
    }
    this.base = batch.at(-1)?.after ?? this.base;
    this.queue = this.queue.slice(batch.length);
    return true;
  }

  /** Puts another window's edits below those that wait here. */
  private rebase(foreign: readonly Change[]): boolean {
    if (foreign.length === 0) return true;
    try {
      this.base = applyChanges(this.base, foreign).shop;
      let shop = this.base;
      this.queue = this.queue.map(({ changes }) => {
        shop = applyChanges(shop, changes).shop;
        return { changes, after: shop };
      });
      this.options.onRebased(shop);
      return true;
    } catch {
      return this.lose("Another window has changed this shop in the same places.");
    }
  }

  private flushIn(waitMs: number): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.flush(), waitMs);
  }

  private trouble(sentence: string): void {
    this.setState({ kind: "trouble", sentence });
  }

  private tryLater(sentence: string): false {
    this.trouble(sentence);
    this.flushIn(RETRY_MS);
    return false;
  }

  private lose(sentence: string): false {
    this.queue = [];
    this.trouble(sentence);
    this.options.onLost(sentence);
    return false;
  }
}

/** Whole edits from the front, up to what one message may carry, but at least one. */
function firstBatch(queue: readonly Waiting[]): Waiting[] {
  let changes = 0;
  return queue.filter((entry, place) => {
    changes += entry.changes.length;
    return place === 0 || changes <= MOST_AT_ONCE;
  });
}

/** Asks again and again what is new about the shop; each question waits at the host until there is an answer. */
async function listen(sender: Sender, { host, handle, stamp }: SavingOptions): Promise<void> {
  let seen = stamp;
  while (sender.isOpen) {
    const answer = await host.call("watch", {
      handle,
      client: sender.client,
      stamp: seen,
      version: sender.version,
    });
    if (!sender.isOpen) return;
    if (answer.ok) {
      seen = answer.value.stamp;
      sender.take(answer.value);
    } else await new Promise((resolve) => setTimeout(resolve, RETRY_MS));
  }
}

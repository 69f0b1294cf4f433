import { type Accessor, createSignal } from "solid-js";
import type { Answer } from "../../electron/contract/answer.ts";
import type { OpenAnswer, Opened } from "../../electron/contract/shop-messages.ts";
import { unreadableSentence } from "./shop-file.ts";

/** Which shop is open now; null: none could be opened. */
export interface Session {
  readonly opened: Accessor<Opened | null>;
  /** why there is none, in a sentence */
  readonly trouble: Accessor<string | null>;
  /** takes the answer to a request to open something; a failure leaves what is open */
  readonly take: (answer: Answer<OpenAnswer>) => void;
}

export function createSession(first: Answer<OpenAnswer>): Session {
  const [opened, setOpened] = createSignal<Opened | null>(null);
  const [trouble, setTrouble] = createSignal<string | null>(null);
  const take = (answer: Answer<OpenAnswer>): void => {
    if (!answer.ok) return void setTrouble(answer.trouble.sentence);
    if (answer.value.status === "opened") setOpened(answer.value);
    setTrouble(answer.value.status === "unreadable" ? unreadableSentence(answer.value) : null);
  };
  take(first);
  return { opened, trouble, take };
}

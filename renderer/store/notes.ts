import { type Accessor, createSignal, onCleanup } from "solid-js";

export interface Note {
  readonly id: number;
  readonly sentence: string;
  readonly tone: "plain" | "alarm";
}

/** Short notes in the corner of the screen, read out by assistive technology. */
export interface Notes {
  readonly notes: Accessor<readonly Note[]>;
  /** goes away by itself */
  readonly tell: (sentence: string) => void;
  /** stays until it is closed */
  readonly alarm: (sentence: string) => void;
  readonly close: (id: number) => void;
}

const SHOWN_MS = 6000;
const MOST_SHOWN = 4;

export function createNotes(): Notes {
  const [notes, setNotes] = createSignal<readonly Note[]>([]);
  const timers = new Set<ReturnType<typeof setTimeout>>();
  let last = 0;
  const close = (id: number): void => void setNotes((before) => before.filter((note) => note.id !== id));
  const show = (sentence: string, tone: Note["tone"]): number => {
    last += 1;
    const note = { id: last, sentence, tone };
    setNotes((before) => [...before.filter((other) => other.sentence !== sentence), note].slice(-MOST_SHOWN));
    return note.id;
  };
  onCleanup(() => {
    for (const timer of timers) clearTimeout(timer);
  });
  return {
    notes,
    close,
    alarm: (sentence) => void show(sentence, "alarm"),
    tell: (sentence) => {
      const id = show(sentence, "plain");
      timers.add(setTimeout(() => close(id), SHOWN_MS));
    },
  };
}

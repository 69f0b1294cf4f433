import type { Change } from "../../core/shop/change.ts";
import { applyChanges } from "../../core/shop/change-many.ts";
import type { Shop } from "../../core/shop/shop.ts";

/** What a step does outside of the shop document, such as to the accepted plan. */
export interface Along {
  readonly again: () => void;
  readonly back: () => void;
}

/** One step that can be undone: what a person did at once. */
export interface Step {
  /** in words, after "Undo": "paste of 12 orders" */
  readonly label: string;
  readonly changes: readonly Change[];
  /** leads back, in the order in which it is to be applied */
  readonly inverses: readonly Change[];
  /** steps of the same typing, close in time, are one step; null: always a step of its own */
  readonly typing: string | null;
  readonly atMs: number;
  /** null: the step changes the shop document alone */
  readonly along: Along | null;
}

/** Everything done and undone since the shop was opened. It is a value: an edit gives a new one. */
export interface History {
  readonly done: readonly Step[];
  readonly undone: readonly Step[];
}

export const NO_HISTORY: History = { done: [], undone: [] };

/** More steps than anybody takes back; older ones are forgotten so that memory has an end. */
const MOST_STEPS = 500;
/** Two keystrokes further apart than this are two steps. */
const TYPING_MS = 1500;

export interface Edit {
  readonly label: string;
  readonly changes: readonly Change[];
  readonly typing: string | null;
  readonly atMs: number;
  readonly along: Along | null;
}

export interface Edited {
  readonly shop: Shop;
  readonly history: History;
  /** what was done to the shop, in order: goes to the journal */
  readonly changes: readonly Change[];
}

/** Applies an edit and remembers it. Example: two edits with typing "O-1/note" half a second apart are undone at once. */
export function edit(shop: Shop, history: History, made: Edit): Edited {
  const { shop: next, inverses } = applyChanges(shop, made.changes);
  const step: Step = { ...made, inverses };
  const last = history.done.at(-1);
  const isSameTyping =
    last !== undefined &&
    history.undone.length === 0 &&
    made.typing !== null &&
    last.typing === made.typing &&
    made.atMs - last.atMs < TYPING_MS;
  const done = isSameTyping ? [...history.done.slice(0, -1), joined(last, step)] : [...history.done, step];
  return { shop: next, history: { done: done.slice(-MOST_STEPS), undone: [] }, changes: made.changes };
}

/** Takes the last step back; null where there is none. */
export function undo(shop: Shop, { done, undone }: History): Edited | null {
  const step = done.at(-1);
  if (!step) return null;
  const { shop: next } = applyChanges(shop, step.inverses);
  return {
    shop: next,
    history: { done: done.slice(0, -1), undone: [...undone, step] },
    changes: step.inverses,
  };
}

/** Does again what was undone last; null where there is nothing. */
export function redo(shop: Shop, { done, undone }: History): Edited | null {
  const step = undone.at(-1);
  if (!step) return null;
  const { shop: next } = applyChanges(shop, step.changes);
  return {
    shop: next,
    history: { done: [...done, step], undone: undone.slice(0, -1) },
    changes: step.changes,
  };
}

function joined(first: Step, second: Step): Step {
  return {
    ...second,
    changes: [...first.changes, ...second.changes],
    inverses: [...second.inverses, ...first.inverses],
  };
}

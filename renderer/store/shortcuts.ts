import { type Accessor, createSignal, onCleanup } from "solid-js";

/** One thing that the keyboard does. */
export interface Shortcut {
  /** as shown: "Ctrl+Shift+Z", "Alt+1", "?", "F1" */
  readonly keys: string;
  readonly label: string;
  /** heading in the help: "Everywhere", "Orders" */
  readonly group: string;
  /** absent: it is handled where the focus is, and only listed */
  readonly run?: () => void;
  /** true: also while a text field has the focus */
  readonly inFields?: boolean;
}

/** All shortcuts that hold now. A page adds its own while it is open: shortcuts.add([...]) in its body. */
export interface Shortcuts {
  readonly all: Accessor<readonly Shortcut[]>;
  /** until the caller's root is cleaned up */
  readonly add: (shortcuts: readonly Shortcut[]) => void;
}

export function createShortcuts(): Shortcuts {
  const [all, setAll] = createSignal<readonly Shortcut[]>([]);
  const onKey = (event: KeyboardEvent): void => {
    if (event.defaultPrevented || event.isComposing) return;
    const found = all().find((shortcut) => shortcut.run && isPressed(shortcut.keys, event));
    if (!found?.run || (isTextField(event.target) && !found.inFields) || hasDialog()) return;
    event.preventDefault();
    // What has the focus must not hear the key too: a menu that opened under the dialog which it opens would never end.
    event.stopImmediatePropagation();
    found.run();
  };
  document.addEventListener("keydown", onKey);
  onCleanup(() => document.removeEventListener("keydown", onKey));
  return {
    all,
    add: (shortcuts) => {
      setAll((before) => [...before, ...shortcuts]);
      onCleanup(() => setAll((before) => before.filter((shortcut) => !shortcuts.includes(shortcut))));
    },
  };
}

/** The keys of a shortcut one by one. Examples: "Ctrl+Shift+Z" gives three, "+" gives the plus sign alone. */
export function keysOf(keys: string): string[] {
  return keys.split(/\+(?=.)/);
}

/** True where the event is the keys. "Ctrl" stands for the Command key too. Example: "Ctrl+Shift+Z". */
function isPressed(keys: string, event: KeyboardEvent): boolean {
  const parts = keysOf(keys);
  const key = parts.at(-1) ?? "";
  const isSign = key.length === 1 && !/[A-Z0-9]/.test(key);
  if (parts.includes("Ctrl") !== (event.ctrlKey || event.metaKey) || parts.includes("Alt") !== event.altKey)
    return false;
  // Which keys need Shift for a sign such as "?" depends on the keyboard.
  if (!isSign && parts.includes("Shift") !== event.shiftKey) return false;
  return event.key.toLowerCase() === key.toLowerCase() || (/^\d$/.test(key) && event.code === `Digit${key}`);
}

/** True for what has an undo and keys of its own. */
function isTextField(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    (target.isContentEditable ||
      target.matches("textarea, select, input:not([type=checkbox], [type=radio], [type=range])"))
  );
}

function hasDialog(): boolean {
  return document.querySelector("[role=dialog], [role=alertdialog]") !== null;
}

import { type Accessor, createEffect, createSignal, on, onCleanup } from "solid-js";
import type { Host } from "../../electron/contract.ts";
import { DEFAULT_PREFERENCES, type Preferences } from "../../electron/contract/preferences.ts";

/** How this person likes the window: theme, units, language of numbers, and small things that pages remember. */
export interface Prefs {
  readonly prefs: Accessor<Preferences>;
  readonly set: (part: Partial<Preferences>) => void;
  /** something small that a page remembers, such as the width of a panel; null: nothing yet */
  readonly remembered: (key: string) => string | null;
  readonly remember: (key: string, value: string) => void;
}

const REST_MS = 400;
/** As the contract has it. */
const MOST_CHARS = 2000;

/** Reads the preferences; where there are none, those the program starts with. */
export async function readPrefs(host: Host): Promise<Preferences> {
  const answer = await host.call("readPreferences", {});
  return answer.ok ? answer.value.preferences : DEFAULT_PREFERENCES;
}

/** The store of preferences. They are kept shortly after each change; that they could not be kept hinders nobody. */
export function createPrefs(host: Host, first: Preferences): Prefs {
  const [prefs, setPrefs] = createSignal(first);
  let timer: ReturnType<typeof setTimeout> | undefined;
  createEffect(
    on(
      prefs,
      (preferences) => {
        clearTimeout(timer);
        timer = setTimeout(() => void host.call("writePreferences", { preferences }), REST_MS);
      },
      { defer: true },
    ),
  );
  createEffect(() => {
    document.documentElement.dataset["theme"] = prefs().theme;
  });
  onCleanup(() => clearTimeout(timer));
  return {
    prefs,
    set: (part) => void setPrefs((before) => ({ ...before, ...part })),
    remembered: (key) => prefs().screen[key] ?? null,
    remember: (key, value) => {
      if (value.length > MOST_CHARS || prefs().screen[key] === value) return;
      setPrefs((before) => ({ ...before, screen: { ...before.screen, [key]: value } }));
    },
  };
}

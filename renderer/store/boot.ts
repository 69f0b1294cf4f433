import type { Host } from "../../electron/contract.ts";
import type { Answer } from "../../electron/contract/answer.ts";
import type { Preferences } from "../../electron/contract/preferences.ts";
import type { OpenAnswer } from "../../electron/contract/shop-messages.ts";
import { readPrefs } from "./prefs.ts";

export interface Booted {
  readonly preferences: Preferences;
  readonly opening: Answer<OpenAnswer>;
}

/** What is needed before anything can be shown: the preferences and the shop that opens first, asked for at once. */
export async function boot(host: Host): Promise<Booted> {
  const [preferences, opening] = await Promise.all([readPrefs(host), host.call("openFirst", {})]);
  return { preferences, opening };
}

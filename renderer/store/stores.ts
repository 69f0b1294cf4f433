import { type Accessor, createContext, useContext } from "solid-js";
import type { Host } from "../../electron/contract.ts";
import type { Format } from "../format/format.ts";
import type { Notes } from "./notes.ts";
import type { PlanStore } from "./plan-store.ts";
import type { Prefs } from "./prefs.ts";
import type { Route } from "./route.ts";
import type { Selection } from "./selection.ts";
import type { Shortcuts } from "./shortcuts.ts";
import type { ShopStore } from "./shop-store.ts";
import type { ShopFile } from "./shop-file.ts";

/** Everything a page may need; `useStores()` gives it anywhere below the app. */
export interface Stores {
  readonly host: Host;
  /** the open shop: read with shop.shop(), edit with shop.apply(label, changes) */
  readonly shop: ShopStore;
  /** the accepted plan, a new one that waits for a decision, and planning itself */
  readonly plan: PlanStore;
  /** opening, saving and leaving shop files */
  readonly file: ShopFile;
  readonly prefs: Prefs;
  /** how values are written and read: format().money(12.5) */
  readonly format: Accessor<Format>;
  readonly route: Route;
  readonly selection: Selection;
  readonly notes: Notes;
  readonly shortcuts: Shortcuts;
}

const StoresContext = createContext<Stores>();

export const StoresProvider = StoresContext.Provider;

/** The stores of the open shop. A page destructures none of the accessors' values: read them where they are shown. */
export function useStores(): Stores {
  const stores = useContext(StoresContext);
  if (!stores) throw new Error("useStores is called outside the app");
  return stores;
}

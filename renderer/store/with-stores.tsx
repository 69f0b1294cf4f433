import { createMemo, type JSX, onCleanup } from "solid-js";
import type { Host } from "../../electron/contract.ts";
import type { Opened } from "../../electron/contract/shop-messages.ts";
import { PAGES } from "../pages/page-list.ts";
import { startPlanning, warmUpPlanning } from "../worker/plan-client.ts";
import { chooseFile } from "./download.ts";
import { createFormat } from "./live-format.ts";
import { createNotes } from "./notes.ts";
import { createPlanStore } from "./plan-store.ts";
import type { Prefs } from "./prefs.ts";
import { createRoute } from "./route.ts";
import { createSelection } from "./selection.ts";
import type { Session } from "./session.ts";
import { createShopFile } from "./shop-file.ts";
import { createShopStore } from "./shop-store.ts";
import { createShortcuts } from "./shortcuts.ts";
import type { Stores } from "./stores.ts";

interface WithStoresProps {
  readonly host: Host;
  readonly opened: Opened;
  readonly prefs: Prefs;
  readonly session: Session;
  readonly children: (stores: Stores) => JSX.Element;
}

const WARM_UP_MS = 2500;

/** Makes the stores of one open shop; another shop gets new ones. */
export function WithStores(props: WithStoresProps): JSX.Element {
  // Planning is made ready once the first page stands, so that it does not slow the start.
  const timer = setTimeout(warmUpPlanning, WARM_UP_MS);
  onCleanup(() => clearTimeout(timer));
  return props.children(createStores(props.host, props.opened, props.prefs, props.session));
}

function createStores(host: Host, opened: Opened, prefs: Prefs, session: Session): Stores {
  const notes = createNotes();
  const shop = createShopStore({ host, opened, now: () => performance.now(), tell: notes.tell, onLost });
  function onLost(sentence: string): void {
    notes.alarm(`${sentence} The shop is opened again as it is now; what did not fit is set aside.`);
    void host.call("reload", { handle: opened.handle }).then((answer) => session.take(answer));
  }
  const { tell, alarm } = notes;
  const plan = createPlanStore({
    host,
    handle: opened.handle,
    shop: shop.shop,
    start: startPlanning,
    remember: (label, along) => shop.apply(label, [], { along }),
    tell,
    alarm,
  });
  const year = createMemo(() => plan.plan()?.plannedFrom.slice(0, 4) ?? commonYear(opened));
  const file = createShopFile({
    host,
    opened,
    saving: shop.saving,
    notes,
    onOpened: (next) => session.take({ ok: true, value: next }),
    chooseFile: () => chooseFile(".json,application/json"),
  });
  return {
    host,
    shop,
    plan,
    file,
    prefs,
    notes,
    format: createFormat(shop.shop, prefs, year),
    route: createRoute(PAGES[0]?.id ?? ""),
    selection: createSelection(),
    shortcuts: createShortcuts(),
  };
}

/** The year in which most of the shop lies: dates of it are shown without. */
function commonYear({ shop }: Opened): string {
  return shop.orders[0]?.dueAt.slice(0, 4) ?? "none";
}

import { cleanup, render } from "@solidjs/testing-library";
import type { Component } from "solid-js";
import { afterEach } from "vitest";
import { DEFAULT_PREFERENCES } from "../../electron/contract/preferences.ts";
import type { PlanDocument } from "../../core/plan/plan-document.ts";
import type { Shop } from "../../core/shop/shop.ts";
import type { PageEntry } from "../../renderer/pages/page-list.ts";
import { createPrefs } from "../../renderer/store/prefs.ts";
import { createSession } from "../../renderer/store/session.ts";
import { type Stores, StoresProvider } from "../../renderer/store/stores.ts";
import { WithStores } from "../../renderer/store/with-stores.tsx";
import { fakeHost } from "./fake-host.ts";

afterEach(cleanup);

/** A page on a shop in memory, with a plan where one is given. */
export function renderPage(
  Page: Component<{ page: PageEntry }>,
  shop: Shop,
  plan: PlanDocument | null = null,
): { readonly stores: Stores; readonly container: HTMLElement } {
  const fake = fakeHost(shop);
  fake.answerNext("readPlan", { ok: true, value: { plan } });
  const entry: PageEntry = {
    id: "page",
    title: "Page",
    question: "What is asked?",
    load: async () => ({ default: Page }),
  };
  let stores: Stores | undefined;
  const { container } = render(() => (
    <WithStores
      host={fake.host}
      opened={fake.opened}
      prefs={createPrefs(fake.host, DEFAULT_PREFERENCES)}
      session={createSession({ ok: true, value: fake.opened })}
    >
      {(made) => {
        stores = made;
        return (
          <StoresProvider value={made}>
            <Page page={entry} />
          </StoresProvider>
        );
      }}
    </WithStores>
  ));
  if (!stores) throw new Error("no stores were made");
  return { stores, container };
}

import { createResource, type JSX, Match, Show, Switch } from "solid-js";
import type { Host } from "../electron/contract.ts";
import { Frame } from "./components/frame/frame.tsx";
import { StartPage } from "./components/frame/start-page.tsx";
import { boot } from "./store/boot.ts";
import { createPrefs } from "./store/prefs.ts";
import { createSession } from "./store/session.ts";
import { StoresProvider } from "./store/stores.ts";
import { WithStores } from "./store/with-stores.tsx";

/** The screen: the shop that opens first, its stores, and the frame round the pages. */
export function App(props: { readonly host: Host }): JSX.Element {
  const [booted] = createResource(() => boot(props.host));
  return (
    <Show when={booted()} fallback={<p class="unseen">Opening the shop</p>}>
      {(first) => {
        const session = createSession(first().opening);
        const prefs = createPrefs(props.host, first().preferences);
        return (
          <Switch>
            <Match when={session.opened()} keyed>
              {(opened) => (
                <WithStores host={props.host} opened={opened} prefs={prefs} session={session}>
                  {(stores) => (
                    <StoresProvider value={stores}>
                      <Frame />
                    </StoresProvider>
                  )}
                </WithStores>
              )}
            </Match>
            <Match when={session.opened() === null}>
              <StartPage host={props.host} session={session} />
            </Match>
          </Switch>
        );
      }}
    </Show>
  );
}

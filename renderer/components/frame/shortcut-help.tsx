import { createMemo, For, type JSX } from "solid-js";
import { groupBy } from "../../store/group-by.ts";
import { keysOf } from "../../store/shortcuts.ts";
import { useStores } from "../../store/stores.ts";
import { Dialog } from "../dialog.tsx";

/** All keys that hold on the open page, by what they are for. */
export function ShortcutHelp(props: { readonly isOpen: boolean; readonly onClose: () => void }): JSX.Element {
  const { shortcuts } = useStores();
  const groups = createMemo(() => [...groupBy(shortcuts.all(), ({ group }) => group)]);
  return (
    <Dialog title="Keys" isOpen={props.isOpen} onClose={() => props.onClose()} size="wide">
      <div class="key-groups">
        <For each={groups()}>
          {([group, entries]) => (
            <section>
              <h3>{group}</h3>
              <dl class="pairs">
                <For each={entries}>
                  {(entry) => (
                    <>
                      <dt>
                        <For each={keysOf(entry.keys)}>{(key) => <kbd>{key}</kbd>}</For>
                      </dt>
                      <dd>{entry.label}</dd>
                    </>
                  )}
                </For>
              </dl>
            </section>
          )}
        </For>
      </div>
    </Dialog>
  );
}

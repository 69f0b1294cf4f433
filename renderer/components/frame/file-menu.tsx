import { createResource, createSignal, type JSX, Show } from "solid-js";
import type { Recent } from "../../../electron/contract/shop-messages.ts";
import { useStores } from "../../store/stores.ts";
import { Menu, type MenuEntry } from "../menu.tsx";
import { NewWorksDialog } from "./new-works-dialog.tsx";
import { SaveAsDialog } from "./save-as-dialog.tsx";

const MOST_RECENT = 6;

/** The menu of the shop file: new, open, recent, save, save as, download. */
export function FileMenu(): JSX.Element {
  const { file, host, shop } = useStores();
  const [asks, setAsks] = createSignal<"new" | "save-as" | null>(null);
  const [recent] = createResource(async () => {
    const answer = await host.call("listRecent", {});
    return answer.ok ? answer.value.recent : [];
  });
  const others = (): readonly Recent[] =>
    (recent() ?? [])
      .filter((entry) => entry.isThere && entry.fileName !== shop.opened.fileName)
      .slice(0, MOST_RECENT);
  const entries = (): MenuEntry[] => [
    { label: "New works", onSelect: () => setAsks("new") },
    { label: "Open a shop file", keys: "Ctrl+O", onSelect: () => void file.open() },
    { label: "Open the demo shop", onSelect: () => void file.openDemo() },
    ...others().map((entry, place) => ({
      label: `${entry.shopName.slice(0, 40)} (${entry.fileName})`,
      startsGroup: place === 0,
      onSelect: () => void file.openRecent(entry.id),
    })),
    { label: "Save now", keys: "Ctrl+S", startsGroup: true, onSelect: () => void file.save() },
    { label: "Save as", onSelect: () => setAsks("save-as") },
    { label: "Download a copy", onSelect: () => void file.download() },
  ];
  return (
    <>
      <Menu label="Shop file" icon="file" look="plain" signOnly entries={entries()} />
      <Show when={asks() === "new"}>
        <NewWorksDialog onClose={() => setAsks(null)} />
      </Show>
      <Show when={asks() === "save-as"}>
        <SaveAsDialog onClose={() => setAsks(null)} />
      </Show>
    </>
  );
}

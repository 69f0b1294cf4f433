import { PAGES } from "../../pages/page-list.ts";
import type { Shortcut } from "../../store/shortcuts.ts";
import { useStores } from "../../store/stores.ts";

const GROUP = "Everywhere";

/** The keys that hold on every page. */
export function addFrameShortcuts(open: { readonly help: () => void; readonly plan: () => void }): void {
  const { shop, file, route, shortcuts } = useStores();
  const pages = PAGES.map(
    (page, place): Shortcut => ({
      keys: `Alt+${place + 1}`,
      label: `Page ${page.title}`,
      group: GROUP,
      inFields: true,
      run: () => route.go(page.id),
    }),
  );
  shortcuts.add([
    { keys: "Ctrl+Z", label: "Undo", group: GROUP, run: shop.undo },
    { keys: "Ctrl+Shift+Z", label: "Redo", group: GROUP, run: shop.redo },
    { keys: "Ctrl+Y", label: "Redo", group: GROUP, run: shop.redo },
    {
      keys: "Ctrl+S",
      label: "Save the shop file now",
      group: GROUP,
      inFields: true,
      run: () => void file.save(),
    },
    { keys: "Ctrl+O", label: "Open a shop file", group: GROUP, inFields: true, run: () => void file.open() },
    { keys: "Ctrl+Enter", label: "Plan", group: GROUP, run: open.plan },
    { keys: "F1", label: "This list of keys", group: GROUP, inFields: true, run: open.help },
    { keys: "?", label: "This list of keys", group: GROUP, run: open.help },
    ...pages,
  ]);
}

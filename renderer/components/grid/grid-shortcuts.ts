import type { Shortcut, Shortcuts } from "../../store/shortcuts.ts";

const GROUP = "In a list";

/** The keys of a grid, for the list of keys; the grid itself handles them. */
const GRID_KEYS: readonly Shortcut[] = [
  { keys: "F2", label: "Edit the cell (Enter too, or just type)", group: GROUP },
  { keys: "Escape", label: "Leave the cell as it was", group: GROUP },
  { keys: "Tab", label: "While editing: take it and go right", group: GROUP },
  { keys: "Shift+Arrow keys", label: "Choose more cells", group: GROUP },
  { keys: "Shift+Space", label: "Choose the whole line", group: GROUP },
  { keys: "Ctrl+Space", label: "Choose the whole column", group: GROUP },
  { keys: "Ctrl+A", label: "Choose everything", group: GROUP },
  { keys: "Ctrl+C", label: "Copy the chosen cells", group: GROUP },
  { keys: "Ctrl+V", label: "Paste, with new lines where there are not enough", group: GROUP },
  { keys: "Ctrl+D", label: "Fill down", group: GROUP },
  { keys: "Delete", label: "Clear the chosen cells", group: GROUP },
  { keys: "Insert", label: "New line below", group: GROUP },
  { keys: "Ctrl+Shift+D", label: "Duplicate the chosen lines", group: GROUP },
  { keys: "Ctrl+Delete", label: "Delete the chosen lines", group: GROUP },
  { keys: "Ctrl+Home", label: "First cell (Ctrl+End: last cell)", group: GROUP },
  { keys: "Arrow up", label: "From the first line: to the heads; Enter sorts, F2 sifts", group: GROUP },
];

/** Lists the keys once, however many grids a page has. */
export function addGridShortcuts(shortcuts: Shortcuts): void {
  if (shortcuts.all().includes(GRID_KEYS[0] as Shortcut)) return;
  shortcuts.add(GRID_KEYS);
}

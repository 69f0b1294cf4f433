import { DropdownMenu } from "@kobalte/core/dropdown-menu";
import { For, type JSX, Show } from "solid-js";
import { Icon, type IconName } from "./icon.tsx";

export interface MenuEntry {
  readonly label: string;
  readonly onSelect: () => void;
  /** the keys that do the same, shown behind it */
  readonly keys?: string;
  readonly disabled?: boolean;
  /** true: a line above it */
  readonly startsGroup?: boolean;
}

interface MenuProps {
  readonly label: string;
  readonly entries: readonly MenuEntry[];
  readonly icon?: IconName;
  readonly look?: "main" | "plain";
  /** true: the sign alone is shown, the label is for assistive technology */
  readonly signOnly?: boolean;
}

/** A button that opens a list of things to do. */
export function Menu(props: MenuProps): JSX.Element {
  return (
    <DropdownMenu>
      <DropdownMenu.Trigger
        class="button"
        data-look={props.look}
        aria-label={props.signOnly ? props.label : undefined}
        title={props.signOnly ? props.label : undefined}
      >
        {props.icon && <Icon name={props.icon} />}
        <Show when={!props.signOnly}>
          {props.label}
          <Icon name="down" />
        </Show>
      </DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content class="menu">
          <For each={props.entries}>
            {(entry) => (
              <>
                <Show when={entry.startsGroup}>
                  <DropdownMenu.Separator class="menu-rule" />
                </Show>
                <DropdownMenu.Item
                  class="menu-item"
                  disabled={entry.disabled ?? false}
                  onSelect={() => entry.onSelect()}
                >
                  <span class="name">{entry.label}</span>
                  <Show when={entry.keys}>
                    <kbd>{entry.keys}</kbd>
                  </Show>
                </DropdownMenu.Item>
              </>
            )}
          </For>
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu>
  );
}

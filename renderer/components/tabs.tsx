import { Tabs as Root } from "@kobalte/core/tabs";
import { For, type JSX } from "solid-js";

export interface Tab {
  readonly id: string;
  readonly title: string;
  readonly content: () => JSX.Element;
}

interface TabsProps {
  readonly label: string;
  readonly tabs: readonly Tab[];
  readonly value?: string;
  readonly onChange?: (id: string) => void;
}

/** Several views of one thing, one shown at a time. */
export function Tabs(props: TabsProps): JSX.Element {
  return (
    <Root
      class="tabs"
      {...(props.value === undefined ? {} : { value: props.value })}
      onChange={(id: string) => props.onChange?.(id)}
    >
      <Root.List class="tab-list" aria-label={props.label}>
        <For each={props.tabs}>
          {(tab) => (
            <Root.Trigger class="tab" value={tab.id}>
              {tab.title}
            </Root.Trigger>
          )}
        </For>
      </Root.List>
      <For each={props.tabs}>
        {(tab) => (
          <Root.Content class="tab-panel" value={tab.id}>
            {tab.content()}
          </Root.Content>
        )}
      </For>
    </Root>
  );
}

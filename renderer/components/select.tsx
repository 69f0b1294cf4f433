import { createUniqueId, For, type JSX } from "solid-js";

export interface Choice {
  readonly value: string;
  readonly label: string;
}

interface SelectProps {
  readonly label: string;
  readonly choices: readonly Choice[];
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** true: the label is for assistive technology alone */
  readonly hideLabel?: boolean;
  readonly disabled?: boolean;
}

/** One of several choices: the browser's own list, which every hand, keyboard and reader knows. */
export function Select(props: SelectProps): JSX.Element {
  const id = createUniqueId();
  return (
    <div class="field">
      <label for={id} class={props.hideLabel ? "unseen" : ""}>
        {props.label}
      </label>
      <select
        id={id}
        class="input select"
        disabled={props.disabled}
        onChange={(event) => props.onChange(event.currentTarget.value)}
      >
        <For each={props.choices}>
          {(choice) => (
            <option value={choice.value} selected={choice.value === props.value}>
              {choice.label}
            </option>
          )}
        </For>
      </select>
    </div>
  );
}

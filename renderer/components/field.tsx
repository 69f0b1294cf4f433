import { createUniqueId, type JSX, Show, splitProps } from "solid-js";

interface FieldProps extends JSX.InputHTMLAttributes<HTMLInputElement> {
  readonly label: string;
  /** shown behind the field: "mm" */
  readonly unit?: string | undefined;
  readonly hint?: string | undefined;
  /** what is wrong and what to do; null: nothing */
  readonly fault?: string | null | undefined;
}

/** A labelled field of one line. Its fault is a sentence below it and read out with it. */
export function Field(props: FieldProps): JSX.Element {
  const [own, rest] = splitProps(props, ["label", "unit", "hint", "fault"]);
  const id = createUniqueId();
  return (
    <div class="field">
      <label for={id}>{own.label}</label>
      <span class="input-with-unit">
        <input
          id={id}
          class="input"
          aria-invalid={own.fault ? true : undefined}
          aria-describedby={`${id}-more`}
          {...rest}
        />
        <Show when={own.unit}>
          <span class="quiet">{own.unit}</span>
        </Show>
      </span>
      <span id={`${id}-more`}>
        <Show when={own.hint && !own.fault}>
          <span class="field-hint">{own.hint}</span>
        </Show>
        <Show when={own.fault}>
          <span class="field-fault">{own.fault}</span>
        </Show>
      </span>
    </div>
  );
}

interface CheckProps {
  readonly label: string;
  readonly checked: boolean;
  readonly onChange: (isChecked: boolean) => void;
  readonly disabled?: boolean;
}

/** A box to tick with its words behind it. */
export function Check(props: CheckProps): JSX.Element {
  return (
    <label class="check">
      <input
        type="checkbox"
        checked={props.checked}
        disabled={props.disabled}
        onChange={(event) => props.onChange(event.currentTarget.checked)}
      />
      <span>{props.label}</span>
    </label>
  );
}

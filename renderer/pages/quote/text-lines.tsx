import { createUniqueId, type JSX } from "solid-js";

interface TextLinesProps {
  readonly label: string;
  readonly value: string;
  readonly onInput: (text: string) => void;
}

/** A labelled field of several lines. */
export function TextLines(props: TextLinesProps): JSX.Element {
  const id = createUniqueId();
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <textarea
        id={id}
        class="input"
        rows="2"
        dir="auto"
        value={props.value}
        onInput={(event) => props.onInput(event.currentTarget.value)}
      />
    </div>
  );
}

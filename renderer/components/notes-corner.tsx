import { For, type JSX } from "solid-js";
import type { Notes } from "../store/notes.ts";
import { Button } from "./button.tsx";

/** Short notes in the corner; read out when they come. */
export function NotesCorner(props: { readonly notes: Notes }): JSX.Element {
  return (
    <div class="toasts" role="log" aria-live="polite" aria-label="Notes">
      <For each={props.notes.notes()}>
        {(note) => (
          <div class="toast" data-tone={note.tone}>
            <span>{note.sentence}</span>
            <Button
              look="plain"
              icon="close"
              aria-label="Close this note"
              onClick={() => props.notes.close(note.id)}
            />
          </div>
        )}
      </For>
    </div>
  );
}

import { type JSX, Show } from "solid-js";
import type { Host } from "../../../electron/contract.ts";
import { chooseFile } from "../../store/download.ts";
import type { Session } from "../../store/session.ts";
import { Button } from "../button.tsx";
import { EmptyState } from "../empty-state.tsx";

/** What is shown where no shop could be opened: why, and the ways on. */
export function StartPage(props: { readonly host: Host; readonly session: Session }): JSX.Element {
  const open = async (): Promise<void> => {
    const answer = await props.host.call("openDialog", {});
    if (!answer.ok || answer.value.status !== "no-dialog") return props.session.take(answer);
    const file = await chooseFile(".json,application/json");
    if (!file) return;
    props.session.take(await props.host.call("openUpload", { fileName: file.name, text: await file.text() }));
  };
  return (
    <main>
      <EmptyState
        title="No shop is open"
        actions={
          <>
            <Button look="main" onClick={() => void open()}>
              Open a shop file
            </Button>
            <Button onClick={() => void props.host.call("openDemo", {}).then(props.session.take)}>
              Open the demo shop
            </Button>
          </>
        }
      >
        <Show
          when={props.session.trouble()}
          fallback="Choose a shop file, or look round in the demo shop first."
        >
          {(sentence) => (
            <span class="bad" role="alert">
              {sentence()}
            </span>
          )}
        </Show>
      </EmptyState>
    </main>
  );
}

import { For, type JSX, Show } from "solid-js";
import { useStores } from "../../store/stores.ts";
import { Button } from "../button.tsx";
import { Dialog } from "../dialog.tsx";

/** After a crash: edits were found that never reached the file. Somebody decides; until then nothing is lost. */
export function RecoveryDialog(): JSX.Element {
  const { file, format, shop } = useStores();
  return (
    <Show when={shop.opened.recovery}>
      {(found) => (
        <Dialog
          title="Edits were found that are not in the file"
          isOpen
          mustDecide
          onClose={() => undefined}
          foot={
            <>
              <Button onClick={() => void file.recover("drop")}>Open without them</Button>
              <Button look="main" onClick={() => void file.recover("keep")}>
                Put them back
              </Button>
            </>
          }
        >
          <p>{found().sentence}</p>
          <p class="quiet">
            {found().edits} edits, the last of them {format().dateTime(found().lastAt)}
          </p>
          <ul>
            <For each={found().lines}>{(line) => <li>{line}</li>}</For>
          </ul>
        </Dialog>
      )}
    </Show>
  );
}
